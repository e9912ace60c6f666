// Parses `--set path=value`.
import type { Fault } from "#foundation/fault.ts";
import type { Path } from "#scenario/values/finding.ts";

/** Shifts or scales the value at a path; `text` is the move as written. */
export type Move =
  | { readonly kind: "shift"; readonly amount: number; readonly unit: string; readonly text: string }
  | { readonly kind: "factor"; readonly factor: number; readonly text: string };

/** A new value as YAML, `indent` characters after the start; a move of the old value; or its removal. */
type Change =
  { readonly kind: "value"; readonly text: string; readonly indent: number } | Move | { readonly kind: "removal" };

export interface Setting {
  /** `*` matches every entry of a list or mapping. */
  readonly path: Path;
  readonly change: Change;
}

const expected = "`path=value` such as `stations.left.steps.cool=8 s`";

function wrongForm(message: string): Fault {
  return { code: "set-form", message, expected, remedy: `Write ${expected}.` };
}

export const emptySetting = wrongForm("Nothing stands after the equals sign.");

const step = /^(?:\.?([^.[\]]+)|\[(\d+)\])/u;

/** Parses `stations[0].cavities=2` into a path and a change. */
export function parseSetting(text: string): Setting | Fault {
  const equals = text.indexOf("=");
  if (equals < 0) return wrongForm(`"${text}" has no equals sign.`);
  const path = parsePath(text.slice(0, equals).trim());
  if (path === undefined) return wrongForm(`"${text.slice(0, equals)}" is not a path.`);
  const change = parseChange(text.slice(equals + 1), equals + 1);
  return "kind" in change ? { path, change } : change;
}

const digits = String.raw`(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`;
const percentMove = new RegExp(String.raw`^([+-]${digits})\s*(?:%|percent)$`, "u");
const shiftMove = new RegExp(String.raw`^([+-]${digits})\s*(.*)$`, "u");
const factorMove = new RegExp(String.raw`^\*\s*(${digits})$`, "u");

function parseChange(written: string, indent: number): Change | Fault {
  const text = written.trim();
  if (text === "") return emptySetting;
  if (/^(?:null|~|\[\s*\])$/u.test(text)) return { kind: "removal" };
  const [, percent] = percentMove.exec(text) ?? [];
  if (percent !== undefined) return { kind: "factor", factor: (100 + Number(percent)) / 100, text };
  const [, amount, unit = ""] = shiftMove.exec(text) ?? [];
  if (amount !== undefined) return { kind: "shift", amount: Number(amount), unit, text };
  if (!text.startsWith("*")) return { kind: "value", text: written, indent };
  const [, factor] = factorMove.exec(text) ?? [];
  if (factor !== undefined) return { kind: "factor", factor: Number(factor), text };
  const form = "a factor such as `*0.9`";
  return { code: "set-form", message: `"${text}" is not a factor.`, expected: form, remedy: `Write ${form}.` };
}

function parsePath(text: string): Path | undefined {
  const path: (string | number)[] = [];
  let rest = text;
  while (rest !== "") {
    const [whole, key, index] = step.exec(rest) ?? [];
    if (whole === undefined || (path.length === 0 && (key === undefined || whole.startsWith(".")))) return undefined;
    path.push(key === undefined ? Number(index) : key.trim());
    rest = rest.slice(whole.length);
    if (rest !== "" && !/^[.[]/u.test(rest)) return undefined;
  }
  return path.length === 0 ? undefined : path;
}

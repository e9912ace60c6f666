// What `--set path=value` asks for, taken apart.
import type { Fault } from "#foundation/fault.ts";
import type { Path } from "#scenario/values/finding.ts";

export interface Setting {
  readonly path: Path;
  readonly value: string;
  /** Characters before the value. */
  readonly indent: number;
}

const expected = "`path=value` such as `stations.left.steps.cool=8 s`";

export const emptySetting: Fault = {
  code: "set-form",
  message: "Nothing stands after the equals sign.",
  expected,
  remedy: `Write ${expected}.`,
};

const step = /^(?:\.?([^.[\]]+)|\[(\d+)\])/u;

/** Takes `stations[0].cavities=2` apart into a path and the text of a YAML value. */
export function parseSetting(text: string): Setting | Fault {
  const equals = text.indexOf("=");
  if (equals < 0)
    return { code: "set-form", message: `"${text}" has no equals sign.`, expected, remedy: `Write ${expected}.` };
  const path = parsePath(text.slice(0, equals).trim());
  if (path === undefined) {
    return {
      code: "set-form",
      message: `"${text.slice(0, equals)}" is no path.`,
      expected,
      remedy: `Write ${expected}.`,
    };
  }
  if (text.slice(equals + 1).trim() === "") return emptySetting;
  return { path, value: text.slice(equals + 1), indent: equals + 1 };
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

// Parses `--variant "NAME: path=value; path=value"`.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { settingsInShort } from "./runName.ts";

export interface Variant {
  readonly name: string;
  readonly set: readonly string[];
  /** As it was written. */
  readonly text: string;
  /** Where its settings come from, as issues name it; --variant where absent. */
  readonly option?: string;
}

export const variantIssueCodes = {
  "variant-form": ["a --variant has no settings", "Write `NAME: path=value`; separate several settings by `;`."],
  "variant-name": [
    "two values of --variant have one name",
    "Give each a name of its own; separate several settings of one variant by `;`.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** The name ends at the first colon; without a name the settings in short are the name. */
export function parseVariant(text: string): Variant {
  const [, given = "", settings = ""] = /^(?:([^:=]*):)?(.*)$/su.exec(text) ?? [];
  const set = splitSettings(settings);
  const short = text.includes("=") ? settingsInShort(set) : text;
  return { name: given.trim() === "" ? short : given.trim(), set, text };
}

/** Splits at semicolons outside brackets and quotes, so that a value may be any YAML. */
function splitSettings(text: string): readonly string[] {
  const pieces = text.match(/(?:"(?:[^"\\]|\\.)*"|'[^']*'|\{[^{}]*(?:\{[^{}]*\}[^{}]*)*\}|\[[^\]]*\]|[^;])+/gsu) ?? [];
  return pieces.map((piece) => piece.trim()).filter((piece) => piece !== "");
}

export function variantIssues(variants: readonly Variant[]): readonly Issue[] {
  const names = variants.map(({ name }) => name);
  return variants.flatMap(({ name, set, text }, i) => [
    ...(set.length === 0 ? [issueOf("variant-form", "The variant has no settings.", text)] : []),
    ...(names.indexOf(name) < i ? [issueOf("variant-name", `Two variants are called "${name}".`, text)] : []),
  ]);
}

function issueOf(code: keyof typeof variantIssueCodes, message: string, value: string): Issue {
  const [, remedy] = variantIssueCodes[code];
  const expected = "a name of its own, a colon and settings, such as `8 s: stations.*.steps.cool=8 s`";
  return { code, severity: "error", fate: "file", option: "--variant", path: "", message, value, expected, remedy };
}

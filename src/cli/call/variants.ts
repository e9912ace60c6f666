// Parses `--variant "NAME: path=value; path=value"`.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { settingsInShort } from "./runName.ts";

export interface Variant {
  readonly name: string;
  readonly set: readonly string[];
  /** As it was written. */
  readonly text: string;
}

export const variantIssueCodes = {
  "variant-form": ["a --variant has no settings", "Write `NAME: path=value`; separate several settings by `;`."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** The name ends at the first colon; without a name the settings in short are the name. */
export function parseVariant(text: string): Variant {
  const [, given = "", settings = ""] = /^(?:([^:=]*):)?(.*)$/su.exec(text) ?? [];
  const set = splitSettings(settings);
  return { name: given.trim() === "" ? settingsInShort(set) : given.trim(), set, text };
}

/** Splits at semicolons outside brackets and quotes, so that a value may be any YAML. */
function splitSettings(text: string): readonly string[] {
  const pieces = text.match(/(?:"(?:[^"\\]|\\.)*"|'[^']*'|\{[^{}]*(?:\{[^{}]*\}[^{}]*)*\}|\[[^\]]*\]|[^;])+/gsu) ?? [];
  return pieces.map((piece) => piece.trim()).filter((piece) => piece !== "");
}

export function variantIssues(variants: readonly Variant[]): readonly Issue[] {
  return variants
    .filter(({ set }) => set.length === 0)
    .map(({ text }) => ({
      code: "variant-form",
      severity: "error",
      fate: "file",
      option: "--variant",
      path: "",
      message: "The variant has no settings.",
      value: text,
      expected: "a name, a colon and settings, such as `8 s: stations.*.steps.cool=8 s`",
      remedy: "Write at least one `path=value` after the colon; separate several by `;`.",
    }));
}

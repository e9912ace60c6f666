// Reads the content of a text by the description of the keys; returns all findings and all readable values.
import type * as z from "zod/mini";
import type { DistributionReading } from "#scenario/distributions/distributionReading.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Finding } from "#scenario/values/finding.ts";
import { glossary, type Written } from "#scenario/keys/glossary.ts";
import { absence, wrongType } from "#scenario/values/leaf.ts";
import { containers, isMapping } from "#scenario/values/key.ts";
import { readLeniently } from "#scenario/values/lenient.ts";
import { unknownKey } from "#scenario/keys/unknownKey.ts";

/** What could be read: as Written, but any part may be absent. */
export type Draft<Whole> = Whole extends DistributionReading | Distribution
  ? Whole
  : Whole extends readonly (infer Item)[]
    ? readonly (Draft<Item> | undefined)[]
    : Whole extends object
      ? { readonly [Key in keyof Whole]?: Draft<Exclude<Whole[Key], undefined>> | undefined }
      : Whole;

export interface Reading {
  readonly draft: Draft<Written>;
  readonly findings: readonly Finding[];
}

export function readGlossary(content: unknown): Reading {
  return readKeys<Written>(glossary, content, unknownKey);
}

/** The same for the keys of another kind of file; `strange` words a key that is not known where it stands. */
export function readKeys<Whole extends object>(
  keys: z.core.$ZodType<Whole>,
  content: unknown,
  strange: typeof unknownKey,
): { readonly draft: Draft<Whole>; readonly findings: readonly Finding[] } {
  const { value, issues } = readLeniently(keys, content);
  // What stands where a mapping or list was wanted is left in the value as it was written, and so is a list without end.
  for (const issue of issues) {
    if (issue.code === "invalid_type" || issue.code === "too_big") forget(value, issue.path ?? []);
  }
  const draft = (isMapping(content) ? value : {}) as Draft<Whole>;
  return { draft, findings: issues.flatMap((issue) => findingsOf(issue, strange)) };
}

type RawIssue = z.core.$ZodRawIssue;

function forget(whole: unknown, path: readonly PropertyKey[]): void {
  const last = path.at(-1);
  const parent = path
    .slice(0, -1)
    .reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown> | undefined)?.[key], whole);
  if (last !== undefined && typeof parent === "object" && parent !== null) {
    (parent as Record<PropertyKey, unknown>)[last] = undefined;
  }
}

function findingsOf(issue: RawIssue, strange: typeof unknownKey): readonly Finding[] {
  const path = (issue.path ?? []).map((key) => (typeof key === "number" ? key : String(key)));
  if (issue.code === "custom")
    return [named({ ...(issue.params as { readonly fault: Omit<Finding, "path"> }).fault, path })];
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => strange(key, path, issue.inst));
  const schema = (issue.schema ?? issue.inst) as z.core.$ZodType | undefined;
  const expected = (schema && containers.get(schema)?.expected) ?? "another value";
  if (issue.code === "too_big") {
    const remedy = `Keep at most ${issue.maximum} entries.`;
    const message = `Here are ${countOf(issue.input)} entries, more than any cell has.`;
    return [{ code: "list-too-long", message, expected, remedy, path, at: "key" }];
  }
  if (issue.code === "too_small") {
    return [{ code: "list-empty", message: "The list is empty.", expected, remedy: `Write ${expected}.`, path }];
  }
  const absent = issue.input === undefined || issue.input === null;
  return [named({ ...(absent ? absence(issue.input, expected) : wrongType(issue.input, expected)), path })];
}

function countOf(input: unknown): number {
  return Object.keys(input as object).length;
}

/** A key that is not there cannot be pointed at, so it is named. */
function named(finding: Finding): Finding {
  const key = finding.path.at(-1);
  if (finding.code !== "missing" || key === undefined) return finding;
  return { ...finding, message: `\`${key}\` is missing.`, remedy: `Add \`${key}\`: ${finding.expected ?? "a value"}.` };
}

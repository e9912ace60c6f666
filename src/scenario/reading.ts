// Runs the glossary over what a text holds and keeps both: everything that was wrong and everything that could be read.
import * as z from "zod/mini";
import type { Fault } from "#foundation/fault.ts";
import type { LawReading } from "./law.ts";
import type { Distribution } from "#engine/distribution.ts";
import type { Finding } from "./finding.ts";
import { glossary, type Written } from "./glossary.ts";
import { absence, wrongType } from "./leaf.ts";
import { containers } from "./key.ts";
import { unknownKey } from "./unknownKey.ts";

/** What could be read: as Written, but any part may be absent. */
export type Draft<Whole> = Whole extends LawReading | Distribution
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
  // The public way to parse gives either a value or faults; the checks across keys need what could be read beside what could not.
  const payload = glossary._zod.run({ value: content, issues: [] }, { async: false });
  if (payload instanceof Promise) return { draft: {}, findings: [] };
  const findings = payload.issues.flatMap(findingsOf);
  for (const issue of payload.issues) if (isContainerIssue(issue)) forget(payload.value, issue.path ?? []);
  const draft =
    typeof payload.value === "object" && payload.value !== null && !Array.isArray(payload.value) ? payload.value : {};
  return {
    draft: findings.some((finding) => finding.path.length === 0 && finding.at !== "key") ? {} : draft,
    findings,
  };
}

type RawIssue = z.core.$ZodRawIssue;

/** What stands where a mapping or list was wanted is left in the value as it was. */
function isContainerIssue(issue: RawIssue): boolean {
  return issue.code === "invalid_type";
}

function forget(whole: unknown, path: readonly PropertyKey[]): void {
  const last = path.at(-1);
  const parent = path
    .slice(0, -1)
    .reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown> | undefined)?.[key], whole);
  if (last !== undefined && typeof parent === "object" && parent !== null) {
    (parent as Record<PropertyKey, unknown>)[last] = undefined;
  }
}

function findingsOf(issue: RawIssue): readonly Finding[] {
  const path = (issue.path ?? []).map((key) => (typeof key === "number" ? key : String(key)));
  if (issue.code === "custom") return [named({ ...(issue.params as { readonly fault: Fault }).fault, path })];
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => unknownKey(key, path, issue.inst));
  const schema = issue.inst as z.core.$ZodType | undefined;
  const expected = (schema && containers.get(schema)?.expected) ?? "another value";
  if (issue.code === "too_small") {
    return [{ code: "list-empty", message: "The list is empty.", expected, remedy: `Write ${expected}.`, path }];
  }
  const absent = issue.input === undefined || issue.input === null;
  return [named({ ...(absent ? absence(issue.input, expected) : wrongType(issue.input, expected)), path })];
}

/** A key that is not there cannot be pointed at, so it is named. */
function named(finding: Finding): Finding {
  const key = finding.path.at(-1);
  if (finding.code !== "missing" || key === undefined) return finding;
  return { ...finding, message: `\`${key}\` is missing.`, remedy: `Add \`${key}\`: ${finding.expected ?? "a value"}.` };
}

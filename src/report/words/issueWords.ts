// The words of an issue: its place, what is wrong, and what to do, for a terminal and for a page.
import type { Issue } from "#foundation/issue.ts";
import { plainText } from "#foundation/plainText.ts";

export interface IssueWords extends Pick<Issue, "severity" | "code"> {
  /** `file:line:column`, which editors jump to, or the option of the call. */
  readonly place: string;
  readonly message: string;
  /** Such as `found` and the value; only those that there are. */
  readonly details: readonly (readonly [label: string, words: string])[];
}

/** Long values are cut; their beginning identifies them. */
const longestValue = 200;

export function issueWords(issue: Issue): IssueWords {
  const { severity, code, value } = issue;
  const details = [
    ["at", issue.path],
    ["found", value === undefined ? "" : plainText(value, longestValue)],
    ["expected", issue.expected ?? ""],
    ["remedy", issue.remedy],
  ] as const;
  const shown = details.filter(([, words]) => words !== "").map(([label, words]) => [label, plainText(words)] as const);
  return { place: placeOf(issue), severity, message: plainText(issue.message), code, details: shown };
}

function placeOf({ place, option }: Issue): string {
  if (option !== undefined) return plainText(option, longestValue);
  return place === undefined ? "blowcell" : `${plainText(place.file)}:${place.line}:${place.column}`;
}

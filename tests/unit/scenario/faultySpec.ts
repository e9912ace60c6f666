// The description of a faulty scenario, and its text made from a valid one.
import type { IssueCode } from "#scenario/reading/issueCodes.ts";

interface ExpectedIssue {
  readonly code: IssueCode;
  readonly path: string;
  /** Parts of the message and of the remedy. */
  readonly says: string;
  readonly remedy: string;
  /** `file` where absent. */
  readonly fate?: "file" | "cell";
  /** `error` where absent. */
  readonly severity?: "error" | "hint";
}

export interface FaultySpec {
  readonly name: string;
  /** Texts of the valid scenario and their replacements; `¦` marks the place of an issue. */
  readonly edits: readonly (readonly [from: string, to: string])[];
  /** In the order of the marks. */
  readonly found: readonly ExpectedIssue[];
  /** True if the JSON Schema also refuses it; absent for a text that does not parse. */
  readonly shape?: boolean;
}

export interface MarkedText {
  readonly text: string;
  readonly places: readonly { readonly line: number; readonly column: number }[];
}

/** A faulty text and the places of its marks. */
export function markedText(good: string, edits: FaultySpec["edits"]): MarkedText {
  let marked = good;
  for (const [from, to] of edits) {
    if (!marked.includes(from)) throw new Error(`Not in the good text: ${from}`);
    marked = marked.replace(from, () => to);
  }
  const pieces = marked.split("¦");
  const places = pieces.slice(0, -1).map((_, index) => {
    const lines = pieces
      .slice(0, index + 1)
      .join("")
      .split("\n");
    return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
  });
  return { text: pieces.join(""), places };
}

// A finding about the user's input: place, value, expectation and remedy; collected, never thrown.

export type Severity = "error" | "warning" | "hint";

/** The place of a finding in a text; line and column count from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** What a code means, without a full stop, and what to do in general; each issue says it for its own case. */
export type IssueMeaning = readonly [meaning: string, remedy: string];

export interface Issue {
  /** Stable, lower-case, hyphenated; listed in the README. */
  readonly code: string;
  readonly severity: Severity;
  /** Absent where the finding belongs to no place in a text. */
  readonly place?: Place;
  /** The option of the call that gave the value, such as `--length`; it stands for the place. */
  readonly option?: string;
  /** Path in the scenario as --set takes it, such as `stations.left.steps.cool`; "" for the whole file. */
  readonly path: string;
  /** What is wrong, one plain sentence without the place. */
  readonly message: string;
  /** The offending value as it was written. */
  readonly value?: string;
  /** What would have been accepted. */
  readonly expected?: string;
  /** What to do about it. */
  readonly remedy: string;
  /**
   * `file`: the text is wrong or contradicts itself (exit code 2).
   * `cell`: well-formed, but such a cell cannot work (exit code 1).
   */
  readonly fate: "file" | "cell";
}

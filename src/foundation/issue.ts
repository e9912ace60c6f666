// What a user got wrong: one finding with its place, the value, what was expected and the remedy; collected, never thrown.

export type Severity = "error" | "warning" | "hint";

/** Where in a text a finding sits; line and column count from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

export interface Issue {
  /** Stable, lower-case, hyphenated; listed in the README. */
  readonly code: string;
  readonly severity: Severity;
  /** Absent where the finding belongs to no place in a text. */
  readonly place?: Place;
  /** The option of the call that gave the value, such as `--length`; it stands for the place. */
  readonly option?: string;
  /** Path in the scenario as a user would give it to --set, such as `stations.left.steps.cool`; "" for the whole file. */
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

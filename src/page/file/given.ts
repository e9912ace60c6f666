// What the command puts into the page: the scenario files as they are.

export interface GivenScenario {
  /** The file's name without folder and ending. */
  readonly name: string;
  /** The file's name in issues. */
  readonly file: string;
  readonly text: string;
  /** Texts of files that the scenario names, such as a column of measured times, by name. */
  readonly beside: Readonly<Record<string, string>>;
  /** Changes by the call, each as `path=value`. */
  readonly set: readonly string[];
}

export interface Given {
  readonly version: string;
  readonly scenarios: readonly GivenScenario[];
}

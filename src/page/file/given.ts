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

export interface GivenLesson {
  /** The file's name without folder and ending. */
  readonly name: string;
  /** The file's name in issues. */
  readonly file: string;
  readonly title: string;
  readonly text: string;
  /** Texts of the scenarios that the lesson names, by their way from its folder. */
  readonly beside: Readonly<Record<string, string>>;
}

/** The shipped lessons, and the scenarios of the drills by file; made by the build. */
export interface Course {
  readonly lessons: readonly GivenLesson[];
  readonly cells: Readonly<Record<string, string>>;
}

export interface Given {
  readonly version: string;
  readonly scenarios: readonly GivenScenario[];
  /** Lessons of the call, beside the shipped ones. */
  readonly lessons: readonly GivenLesson[];
}

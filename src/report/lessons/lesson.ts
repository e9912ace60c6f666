// A lesson as it was read: the cells that run, the moments and values that are found in their records, and the texts.
import type { StateKind } from "#cell/words/stateNames.ts";
import type { CellResource } from "#cell/words/cellTable.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** What a spell of a record must be; what is absent may be anything. */
export interface SpellPattern {
  /** Name of a cell of the lesson. */
  readonly cell: string;
  readonly resource?: string;
  readonly of?: CellResource["kind"];
  readonly state?: string;
  readonly kind?: StateKind;
  readonly station?: string;
  readonly shot?: number;
  /** Seconds: the spell lasts this long or longer. */
  readonly lasts?: number;
}

/** The spell with this number among those that fit and begin at or after the moment `after`. */
export interface MomentSpec extends SpellPattern {
  readonly occurrence: number;
  readonly after?: string;
}

export type MomentMeasure =
  "start" | "duration" | "resource" | "state" | "next" | "startedBy" | "freedBy" | "hang" | "sag" | "timeAtHeat";
export type PatternMeasure = "count" | "mean" | "shortest" | "longest" | "total" | "share";
export type CellMeasure = "secondsPerShot" | "shotsPerHour" | "partsPerHour" | "idealSecondsPerShot" | "pace";
export type PairMeasure = "ratio" | "shareOf" | "difference";

/** How a value is found. */
export type ValueSpec =
  | { readonly by: MomentMeasure; readonly moment: string }
  | { readonly by: "between"; readonly moments: readonly [string, string] }
  | { readonly by: PatternMeasure; readonly pattern: SpellPattern }
  | { readonly by: CellMeasure; readonly cell: string }
  | { readonly by: PairMeasure; readonly values: readonly [string, string] };

/** A choice is right by what the value is, or shows a value itself and is right where that is the value asked for. */
export type ChoiceSpec =
  | { readonly text: string; readonly is: string; readonly because: string }
  | { readonly text: string; readonly from?: number; readonly below?: number; readonly because: string }
  | { readonly value: string; readonly because: string };

export interface QuestionSpec {
  readonly ask: string;
  /** The value that decides. */
  readonly by: string;
  readonly choices: readonly ChoiceSpec[];
}

/** One prediction: the chart ends at `at` until the trainee has chosen; then it goes on to the end of `until`. */
export interface StageSpec {
  readonly from?: string;
  readonly at: string;
  readonly until: string;
  readonly look: string;
  readonly predict: QuestionSpec;
  readonly reveal: string;
  readonly explain: string;
}

export interface Lesson {
  /** The file's name without folder and ending. */
  readonly name: string;
  readonly title: string;
  /** What the trainee can say afterwards. */
  readonly goal: string;
  readonly cells: ReadonlyMap<string, Scenario>;
  readonly moments: ReadonlyMap<string, MomentSpec>;
  readonly values: ReadonlyMap<string, ValueSpec>;
  readonly stages: readonly StageSpec[];
  readonly question: QuestionSpec;
}

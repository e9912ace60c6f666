// What a report is made of: for each scenario its study, a look at single shots, and the text that it was read from.
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import type { FirstShots } from "#analysis/study/firstShots.ts";
import type { Study } from "#analysis/study/study.ts";
import type { Issue } from "#foundation/issue.ts";

export interface ReportedScenario {
  readonly study: Study;
  readonly shots: FirstShots;
  /** The scenario as it was read, and what options of the call changed of it. */
  readonly text: string;
  readonly settings: readonly { readonly option: string; readonly text: string }[];
  /** Warnings and hints that came with the reading. */
  readonly issues: readonly Issue[];
}

/** Where on a page the sections of one scenario stand. */
export interface Placing {
  /** Keeps its sections apart from those of other scenarios. */
  readonly id: string;
  /** Ends each heading: which scenario it is about, empty where there is one only. */
  readonly of: string;
}

export interface ReportInput {
  readonly version: string;
  /** The base of a comparison first. */
  readonly scenarios: readonly ReportedScenario[];
  /** Empty where nothing is compared. */
  readonly comparison: readonly ComparisonRow[];
}

// The input of a report: of each scenario its study, a few shots and its text.
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import type { FirstShots } from "#analysis/study/firstShots.ts";
import type { Payback } from "#analysis/study/payback.ts";
import type { Study } from "#analysis/study/study.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Issue } from "#foundation/issue.ts";

export interface ReportedScenario {
  readonly study: Study;
  readonly shots: FirstShots;
  /** The text of the scenario file, and the options of the call that changed it. */
  readonly text: string;
  readonly settings: readonly { readonly option: string; readonly text: string }[];
  /** Warnings and hints of the reading. */
  readonly issues: readonly Issue[];
}

/** Id and heading suffix of the sections of one scenario. */
export interface Placing {
  /** Distinguishes its sections from those of other scenarios. */
  readonly id: string;
  /** The end of each heading: the scenario's name, empty where there is only one. */
  readonly of: string;
  /** In which its texts and tables are shown. */
  readonly units: UnitSystem;
}

export interface ReportInput {
  readonly version: string;
  /** The base of a comparison first. */
  readonly scenarios: readonly ReportedScenario[];
  /** Empty where nothing is compared. */
  readonly comparison: readonly ComparisonRow[];
  readonly paybacks?: readonly Payback[];
  /** Of texts and tables; SI where absent. */
  readonly units?: UnitSystem;
}

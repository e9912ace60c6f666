// What is known of a changed cell without a run: its issues, its ideal cycle, and its scenario for the runs.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import type { Issue } from "#foundation/issue.ts";
import { paceSentence } from "#report/answers/checkAnswer.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { readGiven, type Tried } from "./readGiven.ts";

export interface Trial {
  /** Undefined where any issue is an error. */
  readonly cell: { readonly scenario: Scenario; readonly sentence: string } | undefined;
  readonly issues: readonly Issue[];
}

export function openTrial(tried: Tried): Trial {
  const { scenario, issues } = readGiven(tried);
  if (!scenario) return { cell: undefined, issues };
  return { cell: { scenario, sentence: paceSentence({ scenario, ideal: idealCycle(scenario) }) }, issues };
}

// The beginning of a run, as a trial of how long the whole takes.
import { slowestTurn } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { planOf } from "#analysis/ideal/planOf.ts";

/** Seconds; with a calendar a week at least, which has its nights and days off. */
const week = 7 * 24 * 3600;

/** Seconds of so many turns of all stations, at most those of the run. */
export function trialSpan(scenario: Scenario, turns: number): number {
  const turn = slowestTurn(planOf(scenario)) / TICKS_PER_SECOND;
  return Math.min(scenario.run.length, Math.max(turns * turn, scenario.calendar ? week : 1));
}

export function runTrial(scenario: Scenario, span: number): void {
  const plan = planOf(scenario);
  // The plan does not depend on the length of the run.
  const tried = { ...plan, scenario: { ...scenario, run: { ...scenario.run, length: span } } };
  runCell(tried, { replication: 1, warmup: 0, keepsShots: false });
}

// What the changes need of the study of the cell as it is.
import { invariant } from "#foundation/invariant.ts";
import type { BottleneckResource } from "#analysis/bottleneck/bottleneck.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import type { CostStudy } from "#analysis/indicators/costStudy.ts";
import { CELL, type MeasureValue } from "#analysis/replication/measures.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { settledWarmup } from "#cell/run/settledWarmup.ts";

export interface Base {
  readonly scenario: Scenario;
  readonly replications: number;
  readonly measures: readonly {
    readonly resource: string;
    readonly measure: string;
    readonly values: readonly (number | null)[];
    readonly interval: Interval;
  }[];
  readonly bottleneck: readonly BottleneckResource[];
  readonly stops: readonly { readonly resource: string; readonly stop: string; readonly hours: Interval }[];
  readonly costs: CostStudy | null;
  readonly ideal: IdealCycle;
}

const secondsPerHour = 3600;

/** Hours that count in one replication. */
export function observedHours(scenario: Scenario): number {
  return (scenario.run.length - settledWarmup(scenario)) / secondsPerHour;
}

/** From an hour to the unit of the changes: with a calendar the whole run, else an hour. */
export function goodFactor(scenario: Scenario): number {
  return scenario.calendar === undefined ? 1 : observedHours(scenario);
}

/** Parts in the unit of the changes, in the order of the replications. */
export function valuesOf(
  { scenario, measures }: Pick<Base, "scenario" | "measures">,
  wanted: string,
): readonly number[] {
  const found = measures.find(({ resource, measure }) => resource === CELL && measure === wanted);
  invariant(found, "every run counts its parts", { scenario: scenario.name, wanted });
  return found.values.map((value) => (value ?? 0) * goodFactor(scenario));
}

/** Of the cell in one replication; 0 where it has none. */
export function measuresOfCell(measures: readonly MeasureValue[], wanted: string): number {
  return measures.find(({ resource, measure }) => resource === CELL && measure === wanted)?.value ?? 0;
}

export function meanOf({ measures }: Pick<Base, "measures">, wanted: string): number {
  return measures.find(({ resource, measure }) => resource === CELL && measure === wanted)?.interval.mean ?? 0;
}

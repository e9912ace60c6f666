// What the changes need of the study of the cell as it is.
import { invariant } from "#foundation/invariant.ts";
import type { BottleneckResource } from "#analysis/bottleneck/bottleneck.ts";
import type { CostStudy } from "#analysis/indicators/costStudy.ts";
import { CELL } from "#analysis/replication/measures.ts";
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
}

const secondsPerHour = 3600;

/** Hours that count in one replication. */
export function observedHours(scenario: Scenario): number {
  return (scenario.run.length - settledWarmup(scenario)) / secondsPerHour;
}

/** Good parts in the unit of the changes: with a calendar of the whole run, else of an hour. */
export function goodFactor(scenario: Scenario): number {
  return scenario.calendar === undefined ? 1 : observedHours(scenario);
}

/** In the order of the replications. */
export function goodPartsOf({ scenario, measures }: Pick<Base, "scenario" | "measures">): readonly number[] {
  const found = measures.find(({ resource, measure }) => resource === CELL && measure === "good parts per hour");
  invariant(found, "every run counts good parts", { scenario: scenario.name });
  return found.values.map((value) => (value ?? 0) * goodFactor(scenario));
}

export function meanOf({ measures }: Pick<Base, "measures">, wanted: string): number {
  return measures.find(({ resource, measure }) => resource === CELL && measure === wanted)?.interval.mean ?? 0;
}

// What the choice keeps of one replication: the measure that decides, output, costs, and whether the need was met.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { COST_AN_HOUR, COST_MEASURE, costMeasures, costStudy, type CostStudy } from "#analysis/indicators/costStudy.ts";
import { CELL, type MeasureValue } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { observedSeconds, productMeasures } from "#analysis/study/totals.ts";
import { stationWindows, type StationWindow } from "#analysis/window/stationWindow.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Criterion } from "./criterion.ts";

export interface Need {
  readonly parts: number;
  /** Seconds of one replication. */
  readonly within: number;
  /** The least chance of a run that makes them. */
  readonly chance: number;
}

export interface Observation {
  readonly value: number;
  readonly goodParts: number;
  /** Null where the scenario gives no costs. */
  readonly costPerHour: number | null;
  readonly costPerThousand: number | null;
  /** Null without a need. */
  readonly met: boolean | null;
  /** For the stops that are too rare in these runs. */
  readonly stops: Pick<ReplicationAnswer, "stops" | "exposures">;
}

const secondsPerHour = 3600;

/** A replication without costs of the window, such as drive energy, takes the throughput of this answer. */
export function costWindows(scenario: Scenario, answer: ReplicationAnswer): readonly StationWindow[] {
  if (!scenario.costs) return [];
  const melt = valueOf(answer.measures, "melt per hour") ?? 0;
  const rejects = valueOf(answer.measures, "reject share");
  return stationWindows(scenario, idealCycle(scenario), melt > 0 ? melt / secondsPerHour : undefined, rejects);
}

/** Every measure that throughput.csv and cost.csv have, of one replication. */
export function measuresOf(
  scenario: Scenario,
  answer: ReplicationAnswer,
  windows: readonly StationWindow[],
): readonly MeasureValue[] {
  const costs = costStudy(scenario, [answer], windows);
  return [
    ...answer.measures,
    ...productMeasures(scenario, [answer]).flatMap(({ measures }) => measures),
    ...costMeasures(costs).flatMap(({ measures }) => measures),
    ...itemMeasures(costs),
  ];
}

/** The items of cost.csv: `resin per hour`, `resin per 1,000 good parts`. */
function itemMeasures(costs: CostStudy | null): readonly MeasureValue[] {
  return (costs?.rows ?? []).flatMap(({ item, perHour, perThousand }) => {
    const base = { resource: CELL, unit: costs?.currency ?? "" };
    const each = { ...base, measure: `${item} per hour`, value: perHour.mean };
    return perThousand === null
      ? [each]
      : [each, { ...base, measure: `${item} per 1,000 good parts`, value: perThousand.mean }];
  });
}

/** Undefined where the replication has no value of the criterion, such as a cost per part without parts. */
export function observationOf(
  { run }: Scenario,
  answer: ReplicationAnswer,
  measures: readonly MeasureValue[],
  { criterion, need }: { readonly criterion: Criterion; readonly need: Need | null },
): Observation | undefined {
  const value = valueOf(measures, criterion.measure, criterion.resource);
  const goodParts = valueOf(measures, "good parts per hour") ?? 0;
  if (value === undefined) return undefined;
  const { stops, exposures } = answer;
  return {
    value,
    goodParts,
    costPerHour: valueOf(measures, COST_AN_HOUR) ?? null,
    costPerThousand: valueOf(measures, COST_MEASURE) ?? null,
    // A count of parts comes back from a rate with a rounding error.
    met: need && Math.round(goodParts * (observedSeconds(run) / secondsPerHour)) >= need.parts,
    stops: { ...(stops ? { stops } : {}), ...(exposures ? { exposures } : {}) },
  };
}

function valueOf(measures: readonly MeasureValue[], measure: string, resource = CELL): number | undefined {
  return measures.find((each) => each.resource === resource && each.measure === measure)?.value;
}

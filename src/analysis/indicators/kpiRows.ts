// The indicators of the cell and of each station over the replications, from state times and counted parts.
import { mean } from "simple-statistics";
import { settledWarmup } from "#cell/run/settledWarmup.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { kpiSpecs, plannedKpiSpecs, type KpiInput, type KpiSpec } from "./kpi.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { undisturbedOf, planOf } from "#analysis/ideal/planOf.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { timeElements, type TimeElements } from "./timeElements.ts";

export interface KpiRow extends Pick<KpiSpec, "formula" | "unit"> {
  /** `cell` or a station. */
  readonly resource: string;
  readonly kpi: string;
  readonly value: Interval;
}

type Observed = Pick<ReplicationAnswer, "measures" | "elementTimes">;

const secondsPerHour = 3600;

/** The cell first, then its stations. An indicator without a value in any replication is left out. */
export function kpiRows(scenario: Scenario, answers: readonly Observed[], ideal: IdealCycle): readonly KpiRow[] {
  const seconds = scenario.run.length - settledWarmup(scenario);
  const specs = scenario.calendar ? plannedKpiSpecs : kpiSpecs;
  return workUnits(scenario, ideal).flatMap(({ station, PRI }) => {
    const resource = station ?? CELL;
    const inputs = answers.map((answer): KpiInput => ({
      ...elementsOf(station, answer),
      PRI,
      PQ: counted(answer, resource, "parts per hour", seconds),
      GQ: counted(answer, resource, "good parts per hour", seconds),
    }));
    return specs.flatMap((spec) => rowOf(resource, spec, inputs));
  });
}

function workUnits(
  scenario: Scenario,
  ideal: IdealCycle,
): readonly { readonly station: string | null; readonly PRI: number }[] {
  const turns = turnsOf(scenario);
  return [
    { station: null, PRI: cellRunTime(scenario, ideal) },
    ...scenario.stations.map(({ name, cavities }, k) => ({ station: name, PRI: (turns[k] ?? 0) / cavities })),
  ];
}

function rowOf(resource: string, spec: KpiSpec, inputs: readonly KpiInput[]): readonly KpiRow[] {
  const values = inputs.map(spec.value).filter((value) => Number.isFinite(value));
  if (values.length === 0) return [];
  const { name, formula, unit } = spec;
  return [{ resource, kpi: name, formula, unit, value: meanInterval(values) }];
}

function counted({ measures }: Observed, resource: string, measure: string, seconds: number): number {
  const perHour = measures.find((each) => each.resource === resource && each.measure === measure)?.value ?? 0;
  return (perHour * seconds) / secondsPerHour;
}

/**
 * The cell as a work unit produces while any part of it works, operators included. Only a stop, a set-up, a break or the end of a
 * work shift of the whole cell interrupts it. A wait of one resource for another is no down time of the cell, but lowers its
 * effectiveness. Where every step takes its mean time, effectiveness cannot exceed 1.
 */
export function cellElements(answer: Pick<Observed, "elementTimes">): TimeElements {
  return elementsOf(null, answer);
}

/** A station's own states: its waits for screw, valve or crew are lost time. */
function elementsOf(unit: string | null, { elementTimes }: Pick<Observed, "elementTimes">): TimeElements {
  return timeElements(elementTimes.filter(({ station }) => station === unit));
}

/** Ideal seconds a shot over the parts of a shot; with different molds the mean over the shots of the ideal period. */
export function cellRunTime({ stations }: Scenario, { schedule, secondsPerShot }: IdealCycle): number {
  const cavities = new Map(stations.map((station) => [station.name, station.cavities]));
  const shots = new Map(
    schedule
      .filter(({ station }) => station !== "")
      .map(({ station, shot }) => [JSON.stringify([station, shot]), cavities.get(station) ?? 0]),
  );
  const parts = shots.size > 0 ? [...shots.values()] : [...cavities.values()];
  return secondsPerShot / mean(parts);
}

/** One turn of each station without waits: all steps of its own process at mean times. */
function turnsOf(scenario: Scenario): readonly number[] {
  const { program, stationProcess } = planOf(undisturbedOf(scenario));
  return stationProcess.map((process, k) => {
    const steps = program.rows.filter((row) => row.process === process);
    const ticks = steps.map(({ draw }) => (draw?.samplers[k] ?? draw?.samplers[0])?.meanTicks ?? 0);
    return ticks.reduce((sum, each) => sum + each, 0) / TICKS_PER_SECOND;
  });
}

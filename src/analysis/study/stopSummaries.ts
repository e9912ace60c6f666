// Each kind of stop over the replications: count, duration, and time between stops.
import { settledWarmup } from "#cell/run/settledWarmup.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { ReplicationAnswer, StopCount } from "#analysis/replication/replicationAnswer.ts";

export interface StopSummary {
  readonly resource: string;
  readonly stop: string;
  /** In one replication. */
  readonly count: Interval;
  readonly hours: Interval;
  /** Hours outside this stop for each one that began, over all replications; null where none began. */
  readonly meanBetween: number | null;
  /** Hours from the beginning of a stop to its end, over all that ended; null where none ended. */
  readonly meanRepair: number | null;
  /** What its repair waits for; null where it does not wait. */
  readonly waitsFor: string | null;
  /** Hours from the beginning of a stop to the beginning of its repair, over all repairs; null where none began. */
  readonly meanWait: number | null;
}

const secondsPerHour = 3600;

/** In the order of the scenario, also stops that never occurred. */
export function stopSummaries(
  scenario: Scenario,
  answers: readonly Pick<ReplicationAnswer, "stops">[],
): readonly StopSummary[] {
  const observed = answers.length * (scenario.run.length - settledWarmup(scenario));
  return (scenario.stops ?? []).map((stop) => {
    const { resource, name } = stop;
    const counts = answers.map(({ stops = [] }) =>
      stops.find((each) => each.resource === resource && each.stop === name),
    );
    const values = (of: (count: StopCount) => number): readonly number[] =>
      counts.map((count) => (count === undefined ? 0 : of(count)));
    const sum = (of: (count: StopCount) => number): number => values(of).reduce((total, each) => total + each, 0);
    const [began, ended, repairs] = [
      sum(({ count }) => count),
      sum((count) => count.ended),
      sum((count) => count.repairs),
    ];
    return {
      resource,
      stop: name,
      count: meanInterval(values(({ count }) => count)),
      hours: meanInterval(values(({ seconds }) => seconds / secondsPerHour)),
      // Pooled, because a replication without a stop still counts with its time.
      meanBetween: began === 0 ? null : (observed - sum(({ seconds }) => seconds)) / secondsPerHour / began,
      meanRepair: ended === 0 ? null : sum(({ endedSeconds }) => endedSeconds) / secondsPerHour / ended,
      waitsFor: awaited(stop, scenario),
      meanWait: repairs === 0 ? null : sum(({ waitSeconds }) => waitSeconds) / secondsPerHour / repairs,
    };
  });
}

function awaited({ by, shift }: StopSpec, { calendar }: Scenario): string | null {
  if (by === "itself") return shift === "in" && calendar ? "a shift" : null;
  if (!calendar) return "an operator";
  return shift === "in" ? "an operator on shift" : "an operator, off shift the one on call";
}

// The stops that occur too seldom in a study for the spread of its replications to show what they cost.
import { distributionMean } from "#engine/distributions/moments.ts";
import { settledWarmup } from "#cell/run/settledWarmup.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

/** With fewer in all replications, the spread of the replications does not show what a stop costs. */
const leastSeen = 10;
/** With fewer in one replication, replications differ mostly by how many stops they hold. */
const leastEach = 3;
/** A Poisson number with a smaller mean is too skewed for the interval of a mean. */
const leastExpected = 30;

/** From this mean number in all replications on, their spread alone gives the interval. */
export function oftenEnough(replications: number): number {
  return Math.max(leastExpected, leastEach * replications);
}

export interface ExpectedStop {
  readonly stop: StopSpec;
  /** Its number in the scenario. */
  readonly index: number;
  /** Stops that began in all replications, and the mean number from the clock of the stop. */
  readonly seen: number;
  readonly expected: number;
}

/** Of every stop whose clock is known, in the order of the scenario. */
export function expectedStops(
  { stops = [] }: Scenario,
  answers: readonly Pick<ReplicationAnswer, "stops" | "exposures">[],
): readonly ExpectedStop[] {
  return stops.flatMap((stop, index) => {
    const clocks = answers.map(({ exposures }) => exposures?.[index]?.clock ?? null);
    if (clocks.length === 0 || clocks.includes(null)) return [];
    const counts = answers.map(
      (answer) =>
        answer.stops?.find(({ resource, stop: name }) => resource === stop.resource && name === stop.name)?.count ?? 0,
    );
    return [{ stop, index, seen: sum(counts), expected: sum(clocks.map(Number)) / between(stop) }];
  });
}

/** Mean interval between two stops on the clock of the stop. */
export function between({ comes }: StopSpec): number {
  return comes.by === "cycles" ? comes.cycles : distributionMean(comes.between);
}

interface FewStops {
  readonly name: string;
  /** The fewest of one resource in all replications. */
  readonly seen: number;
}

export interface RareStops {
  readonly stops: readonly FewStops[];
  /** Length of a replication, s, with which all of them occur often enough; null where a clock did not run. */
  readonly length: number | null;
  /** Whether the intervals take the known rate of all of them into account. */
  readonly isControlled: boolean;
  /** Whether the replications together hold enough of each. */
  readonly isSeen: boolean;
}

/** Null where every stop occurs often enough. */
export function rareStops(
  scenario: Scenario,
  answers: readonly Pick<ReplicationAnswer, "stops" | "exposures">[],
  controlled: ReadonlySet<number>,
): RareStops | null {
  const few = expectedStops(scenario, answers).filter(
    ({ seen, expected }) => seen < leastSeen || expected < leastEach * answers.length,
  );
  if (few.length === 0) return null;
  const names = [...new Set(few.map(({ stop }) => stop.name))];
  const warmup = settledWarmup(scenario);
  const observed = scenario.run.length - warmup;
  const wanted = Math.max(leastSeen, leastEach * answers.length);
  const factor = Math.max(...few.map(({ expected }) => wanted / expected));
  return {
    stops: names.map((name) => ({
      name,
      seen: Math.min(...few.filter(({ stop }) => stop.name === name).map(({ seen }) => seen)),
    })),
    // Whole hours: one must be able to read and to set it.
    length: Number.isFinite(factor) ? wholeHours(warmup + observed * Math.max(1, factor)) : null,
    isSeen: few.every(({ seen }) => seen >= leastSeen),
    isControlled: few.every(({ index }) => controlled.has(index)),
  };
}

const secondsPerHour = 3600;
const wholeHours = (seconds: number): number => Math.ceil(seconds / secondsPerHour) * secondsPerHour;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

// Control variates for rare stops: the repair time of a stop has a known mean, so an interval need not wait for many stops.
import { distributionMean, distributionQuantile } from "#engine/distributions/moments.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { settledWarmup } from "#cell/run/settledWarmup.ts";
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import { meanInterval, widened } from "#analysis/statistics/interval.ts";
import { errorOf, type Controlled, type ControlTerm } from "./controlled.ts";
import { between, expectedStops, oftenEnough } from "./rareStops.ts";
import type { MeasureSummary } from "./summarizeMeasures.ts";

/** Each stop costs runs of its own, so only those count that vary the output most. */
const mostStops = 5;
/** Runs with the stop at a high rate, the first replications again. */
const mostRuns = 10;
/** With fewer stops in these runs, what a stop costs is not known. */
const leastStops = 3;
/** Measures in seconds a shot grow without limit where a resource is down all the time; their inverse does not. */
const inverted: ReadonlySet<string> = new Set(["seconds per shot", "cycle time"]);

/** One stop over the replications, and over the runs in which it comes often. */
interface Control {
  readonly stop: StopSpec;
  readonly index: number;
  readonly shares: readonly number[];
  readonly runs: readonly {
    readonly replication: number;
    readonly share: number;
    readonly answer: ReplicationAnswer;
  }[];
  readonly spread: number;
  /** Mean number in all replications, and number in the runs. */
  readonly expected: number;
  readonly seen: number;
}

/** The stops that are controlled: rare ones in their steady state, without a calendar. */
export function controlledStops(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly number[] {
  if (scenario.calendar || scenario.changes || answers.length < 2) return [];
  return expectedStops(scenario, answers)
    .filter(({ stop, expected }) => stop.start === "running" && expected > 0 && expected < oftenEnough(answers.length))
    .map(({ stop, index, expected }) => ({ index, variance: expected * secondMoment(stop.repair) }))
    .filter(({ variance }) => variance > 0)
    .toSorted((one, other) => other.variance - one.variance)
    .slice(0, mostStops)
    .map(({ index }) => index)
    .toSorted((one, other) => one - other);
}

/** The runs that measure the effect of each controlled stop. */
export function controlTasks(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly ReplicationTask[] {
  const runs = Math.min(answers.length, mostRuns);
  return controlledStops(scenario, answers).flatMap((frequent) =>
    Array.from({ length: runs }, (_, i): ReplicationTask => ({ replication: i + 1, scale: null, frequent })),
  );
}

/**
 * The mean of Y − Σ b C, with C the share of time in repair less its mean at the rate of the stop, so that C has the mean 0. The
 * half width is t √(s²/n + Σ (σ² (e² + (a b)²) + r²)). σ is the known standard deviation of the mean of C, e the standard error of b,
 * a the allowance for an effect that changes with the rate, and r the standard error from what single stops cost beyond b C. The
 * slope b, e and r come from runs with the stop at a high rate.
 * Source: Lavenberg and Welch, Management Science 27 (1981) 322, for control variates (from memory). The slope from other runs and
 * the added terms are our own, settled by the measured coverage.
 */
export class StopControl {
  readonly #controls: readonly Control[];

  constructor(
    scenario: Scenario,
    answers: readonly ReplicationAnswer[],
    answersWith: (frequent: number) => readonly ReplicationAnswer[],
  ) {
    this.#controls = controlledStops(scenario, answers).flatMap((index) => {
      const control = controlOf(scenario, index, answers, answersWith(index));
      return control ? [control] : [];
    });
  }

  /** Numbers of the stops in the scenario. */
  get stops(): ReadonlySet<number> {
    return new Set(this.#controls.map(({ index }) => index));
  }

  /** The summary with its control; the same where no stop is controlled, or a replication has no value. */
  apply(summary: MeasureSummary): MeasureSummary {
    const controlled = this.#controlled(summary);
    if (!controlled) return summary;
    const interval = widened(meanInterval(controlled.values), errorOf(controlled.terms));
    return { ...summary, controlled, interval: { ...interval, sd: summary.interval.sd } };
  }

  #controlled({ resource, measure, values: found }: MeasureSummary): Controlled | undefined {
    const values = found.filter((value) => value !== null);
    if (this.#controls.length === 0 || values.length < found.length) return undefined;
    const isInverted = inverted.has(measure);
    const turn = (value: number): number => (isInverted ? 1 / value : value);
    const rates = values.map(turn);
    const terms = this.#controls.map((control) =>
      termOf(control, rates, (answer) => {
        const row = answer.measures.find((each) => each.resource === resource && each.measure === measure);
        return row === undefined ? undefined : turn(row.value);
      }),
    );
    const adjusted = rates.map((rate, i) =>
      terms.reduce((sum, { slope }, k) => sum - slope * this.#controls[k]!.shares[i]!, rate),
    );
    if (isInverted && adjusted.some((rate) => rate <= 0)) return undefined;
    const scale = isInverted ? -1 / (mean(adjusted) * mean(adjusted)) : 1;
    return {
      values: adjusted.map(turn),
      terms: terms.map(({ slope, error, rest, ...term }) => ({
        ...term,
        slope: slope * scale,
        error: Math.abs(error * scale),
        rest: Math.abs(rest * scale),
      })),
    };
  }
}

function controlOf(
  scenario: Scenario,
  index: number,
  answers: readonly ReplicationAnswer[],
  runs: readonly ReplicationAnswer[],
): Control | undefined {
  const stop = scenario.stops![index]!;
  const observed = scenario.run.length - settledWarmup(scenario);
  const target = distributionMean(stop.repair) / between(stop);
  const shareOf = ({ exposures }: ReplicationAnswer): number => {
    const { repairSeconds, clock } = exposures![index]!;
    return (repairSeconds - clock! * target) / observed;
  };
  const [found] = expectedStops(scenario, runs).filter((each) => each.index === index);
  if (!found || found.seen < leastStops) return undefined;
  const expected = answers.reduce((sum, { exposures }) => sum + exposures![index]!.clock!, 0) / between(stop);
  return {
    stop,
    index,
    shares: answers.map(shareOf),
    runs: runs.map((answer) => ({ replication: answer.task.replication, share: shareOf(answer), answer })),
    expected,
    seen: found.seen,
    spread: Math.sqrt(expected * secondMoment(stop.repair)) / (answers.length * observed),
  };
}

/** The slope between the runs with and without the high rate, paired by common random numbers: a ratio of means. */
function termOf(
  { stop, shares, runs, spread, expected, seen }: Control,
  rates: readonly number[],
  rateOf: (answer: ReplicationAnswer) => number | undefined,
): ControlTerm {
  const pairs = runs.flatMap(({ replication, share, answer }) => {
    const rate = rateOf(answer);
    const [before, shareBefore] = [rates[replication - 1], shares[replication - 1]];
    if (rate === undefined || before === undefined || shareBefore === undefined) return [];
    return [{ rise: rate - before, more: share - shareBefore }];
  });
  const more = pairs.reduce((sum, pair) => sum + pair.more, 0);
  const slope = more > 0 ? pairs.reduce((sum, { rise }) => sum + rise, 0) / more : 0;
  const rests = pairs.map((pair) => pair.rise - slope * pair.more);
  const squares = rests.length > 1 ? rests.length * meanInterval(rests).sd! * meanInterval(rests).sd! : 0;
  return {
    stop: `${stop.name} of ${stop.resource}`,
    slope,
    error: more > 0 ? Math.sqrt(squares) / more : 0,
    spread,
    rest: Math.sqrt((squares * expected) / seen) / rates.length,
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const points = 500;

/** Mean square, from equally likely quantiles. */
function secondMoment(distribution: Distribution): number {
  const quantile = distributionQuantile(distribution);
  return mean(Array.from({ length: points }, (_, i) => quantile((i + 0.5) / points)).map((value) => value * value));
}

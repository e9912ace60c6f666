// How much longer a step may take before output falls by 1 %: a bisection on paired runs, in each replication.
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { BottleneckResource } from "./bottleneck.ts";
import { slackTargets, type SlackTarget } from "./slackTargets.ts";

/** The share of good parts whose loss ends the slack. */
const SLACK_LOSS = 0.01;
/** Enough for an interval; each one costs about ten runs a step. */
const mostPairs = 5;
/** A bracket is narrow enough at this part of its upper end, or at this many seconds. */
const NARROW_SHARE = 0.005;
const NARROW_SECONDS = 0.002;
/** Part of a turn of all stations with which the search begins; it ends at a whole turn. */
const FIRST_STEP = 0.01;

/** One step in one replication: output at `low` is above the limit, at `high` it is not; null until that is found. */
interface Bracket {
  readonly target: SlackTarget;
  readonly replication: number;
  /** Good parts per hour of the cell as it is. */
  readonly base: number;
  readonly low: number;
  readonly high: number | null;
}

export interface SlackTest {
  readonly brackets: readonly Bracket[];
  /** Seconds of one turn of all stations at mean times. */
  readonly turn: number;
}

export interface TestedSlack extends Pick<SlackTarget, "step" | "role" | "task" | "resources"> {
  /** Seconds by which the step may grow in each of its runs; null where output did not fall up to `atLeast`. */
  readonly seconds: Interval | null;
  /** Output fell by less than 1 % up to here in every pair. */
  readonly atLeast: number;
  readonly pairs: number;
}

/** What the test needs of a study. */
export interface SlackSubject {
  readonly scenario: Scenario;
  readonly ideal: IdealCycle;
  readonly bottleneck: readonly BottleneckResource[];
  readonly measures: readonly {
    readonly resource: string;
    readonly measure: string;
    readonly values: readonly (number | null)[];
  }[];
}

export function beginSlackTest({ scenario, ideal, bottleneck, measures }: SlackSubject): SlackTest {
  const output = measures.find(({ resource, measure }) => resource === CELL && measure === "good parts per hour");
  const bases = (output?.values ?? []).flatMap((base, i) => (base ? [{ base, replication: i + 1 }] : []));
  const brackets = slackTargets(bottleneck).flatMap((target) =>
    bases.slice(0, mostPairs).map((pair): Bracket => ({ target, ...pair, low: 0, high: null })),
  );
  return { brackets, turn: ideal.secondsPerShot * scenario.stations.length };
}

/** One run for every bracket that is still open; none when the test is finished. */
export function nextSlackRuns(test: SlackTest): readonly ReplicationTask[] {
  return openOf(test).map((bracket) => ({
    replication: bracket.replication,
    scale: { steps: bracket.target.members, factor: 1, longerBy: nextTry(bracket, test) },
  }));
}

/** The answers in the order of `nextSlackRuns`. */
export function withSlackAnswers(test: SlackTest, answers: readonly ReplicationAnswer[]): SlackTest {
  const open = openOf(test);
  const brackets = test.brackets.map((bracket) => {
    const place = open.indexOf(bracket);
    if (place === -1) return bracket;
    const tried = nextTry(bracket, test);
    const hasFallen = goodParts(answers[place]) <= (1 - SLACK_LOSS) * bracket.base;
    return hasFallen ? { ...bracket, high: tried } : { ...bracket, low: tried };
  });
  return { ...test, brackets };
}

/** The least slack first; what never fell comes last. */
export function concludeSlackTest({ brackets }: SlackTest): readonly TestedSlack[] {
  const targets = [...new Set(brackets.map(({ target }) => target))];
  const found = targets.map((target): TestedSlack => {
    const own = brackets.filter((bracket) => bracket.target === target);
    const lows = own.map(({ low }) => low);
    const middles = own.map(({ low, high }) => (low + (high ?? low)) / 2);
    const { members: _, ...step } = target;
    const isFound = own.every(({ high }) => high !== null);
    return {
      ...step,
      seconds: isFound ? meanInterval(middles) : null,
      atLeast: lows.reduce((least, low) => Math.min(least, low), Infinity),
      pairs: own.length,
    };
  });
  const rank = ({ seconds }: TestedSlack): number => seconds?.mean ?? Number.MAX_VALUE;
  return found.toSorted((one, other) => rank(one) - rank(other) || one.atLeast - other.atLeast);
}

function openOf(test: SlackTest): readonly Bracket[] {
  return test.brackets.filter(({ low, high }) =>
    high === null ? low < test.turn : high - low > Math.max(NARROW_SECONDS, NARROW_SHARE * high),
  );
}

/** Doubles until output has fallen, then halves the bracket; whole milliseconds are enough. */
function nextTry({ low, high }: Bracket, { turn }: SlackTest): number {
  const tried = high === null ? Math.min(turn, low === 0 ? FIRST_STEP * turn : 2 * low) : (low + high) / 2;
  return Math.ceil(tried * 1000) / 1000;
}

function goodParts(answer: ReplicationAnswer | undefined): number {
  const row = answer?.measures.find(({ resource, measure }) => resource === CELL && measure === "good parts per hour");
  return row?.value ?? 0;
}

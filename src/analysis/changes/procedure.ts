// The procedure of the changes: from the answers so far to the replications still wanted, then to the results.
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import { pairedDifference, type PairedDifference } from "#analysis/statistics/pairedDifference.ts";
import { goodFactor, measuresOfCell, valuesOf, type Base } from "./base.ts";
import { affordable } from "./effort.ts";
import { leversOf, type Lever, type Vary } from "./levers.ts";
import { rankOf } from "./prospects.ts";

/** `few`: within the effort that a run may take; `full`: every lever in all replications of the run. */
export type ChangesDepth = "few" | "full";

/** Does not depend on where the replications run. */
export interface ChangesState {
  readonly base: Base;
  readonly trials: readonly Trial[];
  /** Levers that were not run, since that would take too long. */
  readonly left: readonly Lever[];
  readonly afford: number;
}

export interface Trial {
  readonly lever: Lever;
  /** In the order of the replications. */
  readonly answers: readonly ReplicationAnswer[];
}

/** Replications to run of one lever, by its place among the trials. */
export interface Wanted {
  readonly trial: number;
  readonly tasks: readonly ReplicationTask[];
}

/** Fewer give intervals that are too wide to rank anything. */
const leastPairs = 4;
/** A cell of long replications has at least so many changes. */
const leastTrials = 3;

export function beginChanges(base: Base, vary: Vary, depth: ChangesDepth): ChangesState {
  const levers = leversOf(base.scenario, vary).toSorted((one, other) => rankOf(other, base) - rankOf(one, base));
  const afford = depth === "full" ? Infinity : affordable(base);
  const first = Math.min(leastPairs, base.replications);
  const count = Math.max(leastTrials, Math.floor(afford / first));
  const trials = levers.slice(0, count).map((lever): Trial => ({ lever, answers: [] }));
  return { base, trials, left: levers.slice(count), afford };
}

/**
 * None when the changes are finished. Every lever has a few replications first. All of them follow where that is short; else those
 * levers have more, at most twice as many at a time, whose gain may be none or whose rank is open.
 */
export function changesWanted(state: ChangesState): readonly Wanted[] {
  const { base, trials, afford } = state;
  const all = base.replications;
  const isShort = all * trials.length <= afford;
  const first = isShort ? all : Math.min(leastPairs, all);
  const missing = trials.flatMap((trial, place) => tasksUpTo(trial, place, first));
  if (missing.length > 0) return missing;
  const made = trials.reduce((sum, { answers }) => sum + answers.length, 0);
  return withinReach(
    openTrials(state).flatMap((place) => {
      const trial = trials[place]!;
      return tasksUpTo(trial, place, Math.min(all, 2 * trial.answers.length));
    }),
    afford - made,
  );
}

/** A cell that comes to rest has no more replications. */
function tasksUpTo({ answers }: Trial, trial: number, count: number): readonly Wanted[] {
  const from = answers.length;
  if (from >= count || isStuck(answers)) return [];
  const tasks = Array.from({ length: count - from }, (_, i): ReplicationTask => ({
    replication: from + i + 1,
    scale: null,
    brief: true,
  }));
  return [{ trial, tasks }];
}

function withinReach(wanted: readonly Wanted[], most: number): readonly Wanted[] {
  let left = most;
  return wanted.filter(({ tasks }) => {
    left -= tasks.length;
    return left >= 0;
  });
}

/** Places of the trials whose interval includes 0 or meets that of a neighbor, the largest gain first. */
function openTrials({ base, trials }: ChangesState): readonly number[] {
  const ranked = trials
    .flatMap((trial, place) => (isStuck(trial.answers) ? [] : [{ place, gain: gainOf(trial, base, trials.length) }]))
    .toSorted((one, other) => other.gain.mean - one.gain.mean);
  const halfOf = ({ simultaneousHalfWidth }: PairedDifference): number => simultaneousHalfWidth ?? 0;
  const meets = (one: PairedDifference, other: PairedDifference | undefined): boolean =>
    other !== undefined && Math.abs(one.mean - other.mean) < halfOf(one) + halfOf(other);
  return ranked
    .filter(({ gain }, i) => {
      const isOpen = halfOf(gain) > 0 && Math.abs(gain.mean) <= halfOf(gain);
      return isOpen || meets(gain, ranked[i - 1]?.gain) || meets(gain, ranked[i + 1]?.gain);
    })
    .map(({ place }) => place);
}

export function withTrialAnswers(
  state: ChangesState,
  trial: number,
  answers: readonly ReplicationAnswer[],
): ChangesState {
  return {
    ...state,
    trials: state.trials.map((each, i) => (i === trial ? { ...each, answers: [...each.answers, ...answers] } : each)),
  };
}

export function isStuck(answers: readonly ReplicationAnswer[]): boolean {
  return answers.some(({ standstill }) => standstill !== null);
}

/** Changed cell − cell, in the replications that both have. */
export function gainOf({ answers }: Trial, base: Base, comparisons: number): PairedDifference {
  const changed = goodValues(answers, base);
  return pairedDifference(changed, valuesOf(base, "good parts per hour").slice(0, changed.length), { comparisons });
}

export function goodValues(answers: readonly ReplicationAnswer[], { scenario }: Base): readonly number[] {
  return answers.map(({ measures }) => measuresOfCell(measures, "good parts per hour") * goodFactor(scenario));
}

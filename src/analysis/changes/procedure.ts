// The procedure of the changes: from the answers so far to the replications still wanted, then to the results.
import type { ReplicationAnswer, ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import { pairedDifference, type PairedDifference } from "#analysis/statistics/pairedDifference.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { goodFactor, measuresOfCell, valuesOf, type Base } from "./base.ts";
import { allowance, leastPairs, type Allowance, type ChangesDepth } from "./effort.ts";
import { leversOf, type Lever, type Vary } from "./levers.ts";
import { rankOf } from "./prospects.ts";

/** Does not depend on where the replications run. */
export interface ChangesState {
  readonly base: Base;
  readonly allowance: Allowance;
  readonly trials: readonly Trial[];
  /** Levers that were not run, since that would take too long. */
  readonly left: readonly Lever[];
}

export interface Trial {
  /** Null: the cell itself, where the changed cells run for a shorter time than the study. */
  readonly lever: Lever | null;
  readonly scenario: Scenario;
  /** In the order of the replications. */
  readonly answers: readonly ReplicationAnswer[];
}

/** A changed cell that has run. */
export interface ChangedTrial extends Trial {
  readonly lever: Lever;
}

/** Replications to run of one trial, by its place among them. */
export interface Wanted {
  readonly trial: number;
  readonly tasks: readonly ReplicationTask[];
}

export function beginChanges(base: Base, vary: Vary, depth: ChangesDepth): ChangesState {
  const allowed = allowance(base, depth);
  const { run, isShort, replications } = allowed;
  const levers = leversOf({ ...base.scenario, run }, vary).toSorted(
    (one, other) => rankOf(other, base) - rankOf(one, base),
  );
  const own: Trial = { lever: null, scenario: { ...base.scenario, run }, answers: [] };
  const count = Math.max(1, Math.floor(replications / Math.min(leastPairs, run.replications)) - (isShort ? 1 : 0));
  const changed = levers.slice(0, count).map((lever): Trial => ({ lever, scenario: lever.scenario, answers: [] }));
  return { base, allowance: allowed, trials: [...(isShort ? [own] : []), ...changed], left: levers.slice(count) };
}

/** The changed cells that have run and did not come to rest. */
export function changedTrials({ trials }: ChangesState): readonly ChangedTrial[] {
  return trials.flatMap(({ lever, ...trial }) =>
    lever === null || trial.answers.length === 0 || isStuck(trial.answers) ? [] : [{ lever, ...trial }],
  );
}

/** A measure of the cell as it is in the replications that the changed cells have, in the unit of the changes. */
export function valuesBefore({ base, trials }: ChangesState, measure: string): readonly number[] {
  const own = trials.find(({ lever }) => lever === null);
  return own === undefined ? valuesOf(base, measure) : valuesIn(own.answers, measure, base);
}

/** The same of a changed cell. */
export function valuesIn(
  answers: readonly ReplicationAnswer[],
  measure: string,
  { scenario }: Base,
): readonly number[] {
  return answers.map(({ measures }) => measuresOfCell(measures, measure) * goodFactor(scenario));
}

/**
 * None when the changes are finished. Every lever has a few replications first. All of them follow where that is short; else those
 * levers have more, at most twice as many at a time, whose gain may be none or whose rank is open.
 */
export function changesWanted(state: ChangesState): readonly Wanted[] {
  const { trials, allowance: allowed } = state;
  const all = allowed.run.replications;
  const first = all * trials.length <= allowed.replications ? all : Math.min(leastPairs, all);
  const missing = trials.flatMap((trial, place) => tasksUpTo(trial, place, first));
  if (missing.length > 0) return missing;
  const made = trials.reduce((sum, { answers }) => sum + answers.length, 0);
  return withinReach(
    openTrials(state).flatMap((place) => {
      const trial = trials[place]!;
      return tasksUpTo(trial, place, Math.min(all, 2 * trial.answers.length));
    }),
    allowed.replications - made,
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
function openTrials(state: ChangesState): readonly number[] {
  const changed = changedTrials(state);
  const places = new Map(state.trials.map(({ lever }, place) => [lever, place]));
  const ranked = changed
    .map((trial) => ({ place: places.get(trial.lever)!, gain: gainOf(trial, state, changed.length) }))
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

function isStuck(answers: readonly ReplicationAnswer[]): boolean {
  return answers.some(({ standstill }) => standstill !== null);
}

/** Changed cell − cell, good parts in the replications that both have. */
export function gainOf({ answers }: ChangedTrial, state: ChangesState, comparisons: number): PairedDifference {
  const changed = valuesIn(answers, good, state.base);
  return pairedDifference(changed, valuesBefore(state, good).slice(0, changed.length), { comparisons });
}

export const good = "good parts per hour";

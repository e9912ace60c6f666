// The results of the changes: each gain with its interval, its cost and what sets the pace then.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { areComparable, costStudy, type CostStudy } from "#analysis/indicators/costStudy.ts";
import { resourceGroups, stepGroups } from "#analysis/bottleneck/resourceGroups.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";

import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Change, Changes } from "./changes.ts";
import { boundOf } from "./prospects.ts";
import {
  changedTrials,
  gainOf,
  good,
  valuesBefore,
  valuesIn,
  type ChangedTrial,
  type ChangesState,
  type Trial,
} from "./procedure.ts";
import type { Lever } from "./levers.ts";

/** `given` is the run as the text has it, so that the options say what the run found by itself. */
export function concludeChanges(state: ChangesState, given: Scenario["run"]): Changes {
  const { base, left } = state;
  const isShown = ({ wish }: Lever): boolean => wish.cause?.kind !== "all";
  const run = changedTrials(state).filter(({ lever }) => isShown(lever));
  const rows = run.map((trial) => changeOf(trial, state, run.length, given));
  return {
    unit: base.scenario.calendar === undefined ? "good parts per hour" : "good parts in the run",
    currency: base.costs?.currency ?? null,
    seconds: state.allowance.run.length,
    rows: rows.toSorted((one, other) => other.gain.mean - one.gain.mean),
    notRun: left.filter(isShown).map((lever) => ({ name: lever.wish.name, atMost: boundOf(lever, base) })),
  };
}

function changeOf(trial: ChangedTrial, state: ChangesState, comparisons: number, given: Scenario["run"]): Change {
  const { lever, answers, scenario } = trial;
  const { simultaneousHalfWidth, correlation: _, ...gain } = gainOf(trial, state, comparisons);
  const before = meanInterval(valuesBefore(state, good).slice(0, answers.length)).mean;
  return {
    name: lever.wish.name,
    settings: lever.settings,
    options: optionsOf(lever.settings, state.allowance.run, given, answers.length),
    good: meanInterval(valuesIn(answers, good, state.base)).mean,
    gain,
    simultaneousHalfWidth,
    relativeGain: before === 0 ? null : gain.mean / before,
    costPerThousand: costDifference(trial, state),
    paceSetter: paceSetter(scenario, answers),
    verdict: verdictOf(gain.mean, simultaneousHalfWidth),
  };
}

function verdictOf(gain: number, halfWidth: number | null): Change["verdict"] {
  if (halfWidth === null) return gain === 0 ? "no difference seen" : "one pair, no interval";
  if (Math.abs(gain) <= halfWidth) return "no difference seen";
  return gain > 0 ? "more" : "less";
}

/** A run by itself would look for another warm-up, and add replications for a wanted precision. */
function optionsOf(
  settings: readonly string[],
  run: Scenario["run"],
  given: Scenario["run"],
  replications: number,
): string {
  const own = run.warmup === given.warmup ? [] : [`run.warmup=${run.warmup} s`];
  return [
    ...[...settings, ...own].map((each) => `--set "${each}"`),
    ...(run.length === given.length ? [] : [`--length "${run.length} s"`]),
    ...(replications === given.replications ? [] : [`--replications ${replications}`]),
    ...(given.precision === undefined ? [] : [`--precision "1000 %"`]),
  ].join(" ");
}

function costDifference(trial: ChangedTrial, state: ChangesState): Interval | null {
  const own = state.trials.find(({ lever }) => lever === null);
  const before = own === undefined ? state.base.costs : costsOf(own);
  const after = before && costsOf(trial);
  return before && after && areComparable(before, after) ? pairsOf(before, after) : null;
}

function costsOf({ scenario, answers }: Trial): CostStudy | null {
  return scenario.costs === undefined ? null : costStudy(scenario, answers, windowsOf(scenario, answers));
}

function pairsOf(base: CostStudy, changed: CostStudy): Interval | null {
  const pairs = changed.perThousandOf.flatMap((value, i) => {
    const before = base.perThousandOf[i] ?? null;
    return value === null || before === null ? [] : [[value, before] as const];
  });
  if (pairs.length === 0) return null;
  const {
    simultaneousHalfWidth: _half,
    correlation: _correlation,
    ...difference
  } = pairedDifference(
    pairs.map(([value]) => value),
    pairs.map(([, before]) => before),
  );
  return difference;
}

/** Air and energy of a part come from the window at the melt rate of the changed cell. */
function windowsOf(scenario: Scenario, answers: readonly ReplicationAnswer[]): ReturnType<typeof stationWindows> {
  const means = (wanted: string): number | undefined => {
    const values = answers.flatMap(({ measures }) =>
      measures.filter(({ resource, measure }) => resource === CELL && measure === wanted).map(({ value }) => value),
    );
    return values.length === 0 ? undefined : meanInterval(values).mean;
  };
  const melt = means("melt per hour") ?? 0;
  const hasRejects = scenario.quality !== undefined || scenario.maxInMold !== undefined;
  const rate = melt > 0 ? melt / secondsPerHour : undefined;
  return stationWindows(scenario, idealCycle(scenario), rate, hasRejects ? means("reject share") : undefined);
}

const secondsPerHour = 3600;

/** The group with the largest share of the critical path. */
function paceSetter(scenario: Scenario, answers: readonly ReplicationAnswer[]): Change["paceSetter"] {
  const shares = new Map<string, number>();
  for (const { group, places } of stepGroups(scenario, answers[0]?.criticalShares ?? [], true)) {
    const sum = answers.flatMap(({ criticalShares }) => places.map((place) => criticalShares[place]?.share ?? 0));
    shares.set(
      group,
      sum.reduce((total, share) => total + share, shares.get(group) ?? 0),
    );
  }
  const [first] = [...shares].toSorted(([, one], [, other]) => other - one);
  if (first === undefined) return null;
  const [group] = first;
  return { group, resources: inReadingOrder(resourceGroups(scenario).get(group) ?? [], (name) => name) };
}

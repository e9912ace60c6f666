// The parts lost by cause: the cell without the cause against the cell, and what remains of the difference to the ideal cycle.
import { meanInterval } from "#analysis/statistics/interval.ts";
import { valuesOf, type Base } from "./base.ts";
import { idealParts, plannedTime } from "./idealParts.ts";
import type { Lost, LostKind, LostRow } from "./lost.ts";
import { changedTrials, good, valuesBefore, valuesIn, type ChangedTrial, type ChangesState } from "./procedure.ts";

/** A row before its share is known. */
type Found = Omit<LostRow, "share">;

/** Null where the cell has nothing that could lose parts but times that vary. */
export function concludeLost(state: ChangesState): Lost | null {
  const { base, left } = state;
  const { scenario } = base;
  const causes = changedTrials(state).filter(({ lever }) => lever.wish.cause !== undefined);
  const rejects = rejectRows(base);
  const notRun = left.flatMap(({ wish }) => (wish.cause && wish.cause.kind !== "all" ? [wish.cause.name] : []));
  if (causes.length + rejects.length + notRun.length === 0 && scenario.calendar === undefined) return null;
  const plannedSeconds = plannedTime(scenario);
  const ideal = idealParts(base);
  const rare = rareRows(base);
  const made = meanOf(valuesOf(base, good)) - rare.reduce((sum, { parts }) => sum + parts, 0);
  const rows = [
    ...[...causeRows(causes, state), ...rejects, ...rare].toSorted(bySize),
    ...restRows({ causes, notRun, rejects }, state, ideal),
  ];
  const lost = ideal - made;
  return {
    unit: scenario.calendar === undefined ? "parts per hour" : "parts in the run",
    plannedSeconds,
    ideal,
    made,
    rows: rows.map((row) => ({ ...row, share: lost === 0 ? null : row.parts / lost })),
    notRun,
  };
}

/** The causes that were run, those that were not, and the rejects. */
interface Parted {
  readonly causes: readonly ChangedTrial[];
  readonly notRun: readonly string[];
  readonly rejects: readonly Found[];
}

const bySize = (one: Found, other: Found): number => other.parts - one.parts;

/** Parts that leave the molds count here, so that rejects are counted once, by their reasons. */
const removed = "parts per hour";

function gainsOf({ answers }: ChangedTrial, state: ChangesState): readonly number[] {
  const before = valuesBefore(state, removed);
  return valuesIn(answers, removed, state.base).map((after, i) => after - before[i]!);
}

function causeRows(causes: readonly ChangedTrial[], state: ChangesState): readonly Found[] {
  return causes.flatMap((trial) => {
    const { name, kind } = trial.lever.wish.cause!;
    return kind === "all" ? [] : [rowOf(name, kind, gainsOf(trial, state))];
  });
}

function rowOf(cause: string, kind: LostKind, values: readonly number[]): Found {
  const { mean, halfWidth } = meanInterval(values);
  return { cause, kind, parts: mean, halfWidth };
}

/** Control variates take the known rate of rare stops into the mean; the causes lose what occurred. */
function rareRows({ measures }: Base): readonly Found[] {
  const { values, interval } = measures.find(({ resource, measure }) => resource === "cell" && measure === good)!;
  const parts = meanOf(values.map((value) => value ?? 0)) - interval.mean;
  return parts === 0 ? [] : [{ cause: "rare stops at their known rate", kind: "rare", parts, halfWidth: null }];
}

const prefix = "rejects: ";

function rejectRows(base: Base): readonly Found[] {
  const measures = base.measures.map(({ measure, resource }) => ({ measure, resource }));
  const reasons = measures.filter(({ measure, resource }) => resource === "cell" && measure.startsWith(prefix));
  return reasons.map(({ measure }) => rowOf(measure, "reject", valuesOf(base, measure)));
}

/**
 * The cell without all causes lacks the ideal cycle by what varies and waits. What all causes lose together and one by one differs.
 * With servers after the molds some parts are on their way.
 */
function restRows({ causes, notRun, rejects }: Parted, state: ChangesState, ideal: number): readonly Found[] {
  const { base } = state;
  const before = valuesBefore(state, removed);
  const parts = meanOf(valuesOf(base, removed));
  const single = causes.filter(({ lever }) => lever.wish.cause!.kind !== "all");
  const whole = causes.find(({ lever }) => lever.wish.cause!.kind === "all");
  // Without such a run the causes count as if each acted alone.
  const apart = single.map((trial) => gainsOf(trial, state));
  const all = whole === undefined ? sumOf(apart, before.length) : gainsOf(whole, state);
  const steady = all.map((gain, i) => ideal - before[i]! - gain);
  const variation = ideal - parts - meanOf(all);
  const together = sumOf(apart, all.length).map((gain, i) => all[i]! - gain);
  const rejected = rejects.reduce((sum, row) => sum + row.parts, 0);
  const onTheWay = parts - rejected - meanOf(valuesOf(base, good));
  const { halfWidth } = meanInterval(steady);
  return [
    { cause: "varying times and waits", kind: "variation", parts: variation, halfWidth },
    ...(single.length > 1 ? [togetherRow(together, meanOf(all), apart, notRun)] : []),
    ...(base.scenario.takeaway === undefined
      ? []
      : [{ cause: "parts on their way", kind: "takeaway", parts: onTheWay, halfWidth: null } as const]),
  ];
}

function togetherRow(
  values: readonly number[],
  all: number,
  apart: readonly (readonly number[])[],
  notRun: readonly string[],
): Found {
  const { halfWidth } = meanInterval(values);
  const parts = apart.reduce((rest, gains) => rest - meanOf(gains), all);
  return { cause: [...notRun, "causes acting together"].join(", "), kind: "together", parts, halfWidth };
}

const meanOf = (values: readonly number[]): number => meanInterval(values).mean;

/** Replication by replication, as far as all have them and at most so many. */
function sumOf(gains: readonly (readonly number[])[], most: number): readonly number[] {
  const count = gains.reduce((least, each) => Math.min(least, each.length), most);
  return Array.from({ length: count }, (_, i) => gains.reduce((sum, each) => sum + each[i]!, 0));
}

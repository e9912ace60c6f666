// What each change gives an order: its chance, its cost and the parts that still lack, in runs with the same random numbers.
import type { Interval } from "#analysis/statistics/interval.ts";
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";
import type { Order } from "./order.ts";
import { efforts, type NamedSettings } from "./orderLeverEffort.ts";
import type { OrderLever } from "./orderLevers.ts";
import type { DueChance, OrderStudy } from "./orderStudy.ts";

export interface LeverRow extends NamedSettings {
  readonly due: DueChance;
  /** Share of the same runs that are on time without the change. */
  readonly before: number;
  /** Seconds from the start by which half of the runs are done. */
  readonly median: number;
  /** Good parts that lack at the due date in the run that the wanted chance just leaves out; null where they are not counted. */
  readonly missing: number | null;
  /** Cost of the order with the change − without it; null where rates are not given. */
  readonly cost: Interval | null;
}

export interface OrderLevers {
  /** The cheapest first. */
  readonly rows: readonly LeverRow[];
  /** By which the rows are sorted. */
  readonly by: "cost of the order" | "effort";
  readonly currency: string | null;
  /** Runs of each change. */
  readonly replications: number;
  /** Parts that lack without any change, at the wanted chance. */
  readonly missing: number | null;
}

export interface ChangedOrder {
  readonly lever: OrderLever;
  readonly study: OrderStudy;
}

/** `base` may have more runs than the changes: its first ones are compared. */
export function concludeLevers(base: OrderStudy, changed: readonly ChangedOrder[]): OrderLevers {
  const rows = changed.flatMap(({ lever, study }): LeverRow[] => {
    const { name, effort, settings, order } = lever;
    const { due, finish } = study;
    if (due === null) return [];
    const before = shareOnTime(base.finish.slice(0, finish.length), base.order.due ?? Infinity);
    const median = study.times.find(({ share }) => share === 0.5)?.seconds ?? NaN;
    return [
      { name, effort, settings, due, before, median, missing: missingParts(study, order), cost: costOf(base, study) },
    ];
  });
  const isPriced = rows.length > 0 && rows.every(({ cost }) => cost !== null);
  return {
    rows: rows.toSorted((one, other) => (isPriced ? costRank(one, other) : 0) || effortRank(one, other)),
    by: isPriced ? "cost of the order" : "effort",
    currency: isPriced ? (base.scenario.costs?.currency ?? null) : null,
    replications: Math.max(0, ...changed.map(({ study }) => study.replications)),
    missing: missingParts(base, base.order),
  };
}

const costRank = (one: LeverRow, other: LeverRow): number => (one.cost?.mean ?? 0) - (other.cost?.mean ?? 0);
const effortRank = (one: LeverRow, other: LeverRow): number =>
  efforts.indexOf(one.effort) - efforts.indexOf(other.effort);

function shareOnTime(finish: readonly number[], due: number): number {
  return finish.filter((seconds) => seconds <= due).length / finish.length;
}

function costOf(base: OrderStudy, changed: OrderStudy): Interval | null {
  const [before, after] = [base, changed].map(({ uses }) => uses.find(({ quantity }) => quantity === "cost")?.values);
  if (before === undefined || after === undefined) return null;
  const {
    simultaneousHalfWidth: _,
    correlation: __,
    ...difference
  } = pairedDifference(after, before.slice(0, after.length));
  return difference;
}

/** In the run at the edge of the wanted share: as many runs make more as are wanted. */
export function missingParts({ goodAtDue }: OrderStudy, { campaigns, chance }: Order): number | null {
  if (goodAtDue === null) return null;
  const wanted = campaigns.flatMap(({ quantities }) => quantities).reduce((sum, { quantity }) => sum + quantity, 0);
  const made = goodAtDue.values.toSorted((one, other) => one - other);
  const edge = made.length - Math.ceil(chance * made.length);
  return Math.max(0, wanted - made[Math.max(0, edge)]!);
}

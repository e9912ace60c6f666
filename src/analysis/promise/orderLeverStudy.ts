// What each change gives an order: its chance, its cost and the parts that still lack, in runs with the same random numbers.
import type { Interval } from "#analysis/statistics/interval.ts";
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";
import type { Order } from "./order.ts";
import { efforts, type NamedSettings } from "./orderLeverEffort.ts";
import type { OrderLever } from "./orderLevers.ts";
import type { DueChance, OrderStudy } from "./orderStudy.ts";

export interface LeverRow extends NamedSettings {
  readonly due: DueChance;
  /** Seconds from the start by which half of the runs are done. */
  readonly median: number;
  /** Good parts that lack at the due date for the wanted chance, in the runs that all changes have; null where they are not counted. */
  readonly missing: number | null;
  /** Cost of the order with the change − without it in the runs that both have; null without rates, and where fewer parts are made. */
  readonly cost: Interval | null;
}

export interface OrderLevers {
  /** The cheapest first. */
  readonly rows: readonly LeverRow[];
  /** By which the rows are sorted. */
  readonly by: "cost of the order" | "effort";
  readonly currency: string | null;
  /** Share of the runs of the order as it is that are on time. */
  readonly before: number | null;
  /** The same without any change. */
  readonly missing: number | null;
}

export interface ChangedOrder {
  readonly lever: OrderLever;
  readonly study: OrderStudy;
}

/** `base` may have more runs than the changes: its first ones are compared. */
export function concludeLevers(base: OrderStudy, changed: readonly ChangedOrder[]): OrderLevers {
  const common = Math.min(base.replications, ...changed.map(({ study }) => study.replications));
  const rows = changed.flatMap(({ lever, study }): LeverRow[] => {
    const { name, effort, settings } = lever;
    const { due } = study;
    if (due === null) return [];
    const median = study.times.find(({ share }) => share === 0.5)?.seconds ?? NaN;
    return [{ name, effort, settings, due, median, missing: missingParts(study, common), cost: costOf(base, study) }];
  });
  const isPriced = rows.some(({ cost }) => cost !== null);
  return {
    rows: rows.toSorted((one, other) => (isPriced ? costRank(one, other) : 0) || effortRank(one, other)),
    by: isPriced ? "cost of the order" : "effort",
    currency: isPriced ? (base.scenario.costs?.currency ?? null) : null,
    before: base.due?.share ?? null,
    missing: missingParts(base, common),
  };
}

/** What is made later costs as much then. */
const costRank = (one: LeverRow, other: LeverRow): number => (one.cost?.mean ?? 0) - (other.cost?.mean ?? 0);
const effortRank = (one: LeverRow, other: LeverRow): number =>
  efforts.indexOf(one.effort) - efforts.indexOf(other.effort);

function costOf(base: OrderStudy, changed: OrderStudy): Interval | null {
  const [before, after] = [base, changed].map(({ uses }) => uses.find(({ quantity }) => quantity === "cost")?.values);
  if (before === undefined || after === undefined || partsOf(base.order) !== partsOf(changed.order)) return null;
  const pairs = Math.min(before.length, after.length);
  const {
    simultaneousHalfWidth: _,
    correlation: __,
    ...difference
  } = pairedDifference(after.slice(0, pairs), before.slice(0, pairs));
  return difference;
}

function partsOf({ campaigns }: Order): number {
  return campaigns.flatMap(({ quantities }) => quantities).reduce((sum, { quantity }) => sum + quantity, 0);
}

/** In the run at the edge of the wanted share: as many runs make more as are wanted. */
function missingParts({ goodAtDue, order }: OrderStudy, runs: number): number | null {
  if (goodAtDue === null) return null;
  const made = goodAtDue.values.slice(0, runs).toSorted((one, other) => one - other);
  const edge = made.length - Math.ceil(order.chance * made.length);
  return Math.max(0, partsOf(order) - made[Math.max(0, edge)]!);
}

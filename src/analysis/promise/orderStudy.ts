// The results of an order over its runs: dates, chance, parts at the due date and what is used.
import type { Issue } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import type { QuantileInterval } from "#analysis/statistics/quantileInterval.ts";
import type { SingleRunRange } from "#analysis/statistics/singleRunRange.ts";
import type { Order } from "./order.ts";

/** The time by which a share of the runs is done. */
export interface FinishTime {
  readonly share: number;
  /** Seconds from the start. */
  readonly seconds: number;
  /** 95 % confidence interval, free of any distribution. */
  readonly interval: QuantileInterval;
}

export interface DueChance {
  /** Runs that are done by the due date. */
  readonly onTime: number;
  readonly replications: number;
  readonly share: number;
  /** Confidence of 95 % over all looks together. */
  readonly low: number;
  readonly high: number;
  readonly verdict: "yes" | "no" | "undecided";
  /** Seconds from the time by which the wanted share of runs is done to the due date; below 0: late. */
  readonly slack: number;
}

/** A number of each run: its mean with the interval of the mean, and the range of single runs. */
export interface UseSummary {
  readonly quantity: string;
  readonly unit: string;
  /** By run. */
  readonly values: readonly number[];
  readonly mean: Interval;
  /** 9 of 10 single runs; null for one run. */
  readonly single: SingleRunRange | null;
}

/** A quantity of the order by itself. */
export interface LineSummary {
  readonly product: string | null;
  readonly quantity: number;
  /** Seconds from the start, by run. */
  readonly seconds: readonly number[];
}

export interface OrderStudy {
  readonly order: Order;
  /** Of the first campaign. */
  readonly scenario: Scenario;
  readonly warnings: readonly Issue[];
  readonly replications: number;
  /** Seconds from the start to the last wanted part, by run. */
  readonly finish: readonly number[];
  readonly meanFinish: Interval;
  /** 5, 50, 80 and 95 % of runs. */
  readonly times: readonly FinishTime[];
  readonly lines: readonly LineSummary[];
  /** Null without a due date. */
  readonly due: DueChance | null;
  /** Null without a due date, or where it is far beyond the finish. */
  readonly goodAtDue: UseSummary | null;
  /** Resin, regrind, energy, operator hours, cost up to the finish; only what the inputs give. */
  readonly uses: readonly UseSummary[];
  /** Keys that would give what is left out, such as `costs.energy`. */
  readonly missing: readonly { readonly item: string; readonly keys: readonly string[] }[];
}

export type OrderOutcome =
  | { readonly kind: "found"; readonly study: OrderStudy }
  /** The order can never be done, or the cell stands still. */
  | { readonly kind: "refused"; readonly issues: readonly Issue[] };

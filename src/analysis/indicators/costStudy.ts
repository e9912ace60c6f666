// The cost of an hour and of 1,000 good parts over the replications, item by item, and the keys of items left out.
import { settledWarmup } from "#cell/run/settledWarmup.ts";
import type { CostSpec, Scenario } from "#scenario/scenario.ts";
import { costRules, valueOf, type CostedHour, type CostRule } from "./cost.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { cellElements } from "./kpiRows.ts";
import { CELL, type MeasureValue } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { missingMass } from "#analysis/window/missingMass.ts";
import type { StationWindow } from "#analysis/window/stationWindow.ts";

export interface CostRow {
  readonly item: string;
  readonly perHour: Interval;
  /** Null where no replication made a good part. */
  readonly perThousand: Interval | null;
  /** Of the total of an hour; null where the total is 0. */
  readonly share: number | null;
}

export interface CostStudy {
  readonly currency: string;
  readonly rows: readonly CostRow[];
  /** Its means are the sums of the rows' means, in their order. */
  readonly total: CostRow;
  /** Items left out, with the keys that would give them. */
  readonly missing: readonly { readonly item: string; readonly keys: readonly string[] }[];
  /** In each replication, so that scenarios can be compared pair by pair. */
  readonly perHourOf: readonly number[];
  /** Null where no good part was made. */
  readonly perThousandOf: readonly (number | null)[];
}

export const COST_AN_HOUR = "cost per hour";
export const costAnHourMeaning = "Cost of all items in an hour of the observed time; the unit is the currency.";
export const COST_MEASURE = "cost per 1,000 good parts";
export const costMeasureMeaning =
  "Cost of all items over the good parts, for a thousand of them; the unit is the currency.";

type Observed = Pick<ReplicationAnswer, "measures" | "elementTimes" | "resin">;

const thousand = 1000;

/** Null where the scenario gives no costs. */
export function costStudy(
  scenario: Scenario,
  answers: readonly Observed[],
  windows: readonly StationWindow[],
): CostStudy | null {
  const { costs } = scenario;
  if (!costs) return null;
  const seconds = scenario.run.length - settledWarmup(scenario);
  const hours = answers.map((answer): CostedHour => {
    const planned = cellElements(answer).PBT / seconds;
    return { scenario, windows, measures: answer.measures, resin: answer.resin, planned };
  });
  const found = costRules.map((rule) => ({ rule, values: hours.map((hour) => perHour(rule, costs, hour)) }));
  const items = found.flatMap(({ rule, values }) =>
    values.every((value) => value !== undefined) ? [{ item: rule.item, values }] : [],
  );
  const left = found.filter(({ rule }) => items.every(({ item }) => item !== rule.item)).map(({ rule }) => rule);
  const good = hours.map((hour) => valueOf(hour, "good parts per hour") ?? 0);
  return {
    currency: costs.currency,
    ...tableOf(items, good),
    missing: left
      .filter((rule) => rule.isExtra !== true)
      .map((rule) => ({ item: rule.item, keys: missingKeys(rule, scenario, windows) })),
  };
}

function perHour(rule: CostRule, costs: CostSpec, hour: CostedHour): number | undefined {
  if (rule.isFree?.(hour) === true) return 0;
  const [rate, amount] = [costs[rule.rate], rule.amount(hour)];
  return rate === undefined || amount === undefined ? undefined : rate * amount;
}

interface Item {
  readonly item: string;
  readonly values: readonly number[];
}

function tableOf(
  items: readonly Item[],
  good: readonly number[],
): Pick<CostStudy, "rows" | "total" | "perHourOf" | "perThousandOf"> {
  const sums = good.map((_, i) => items.reduce((sum, { values }) => sum + values[i]!, 0));
  const rows = [...items, { item: "total", values: sums }].map(({ item, values }) => ({
    item,
    perHour: meanInterval(values),
    perThousand: intervalOf(perThousand(values, good)),
  }));
  const means = rows.slice(0, -1);
  const hourly = means.reduce((sum, row) => sum + row.perHour.mean, 0);
  const thousands = means.reduce((sum, row) => sum + (row.perThousand?.mean ?? 0), 0);
  const shared = rows.map((row) => ({ ...row, share: hourly === 0 ? null : row.perHour.mean / hourly }));
  const last = shared.at(-1)!;
  return {
    rows: shared.slice(0, -1),
    // The mean of sums and the sum of means may differ in the last bit; a table must add up to the last digit shown.
    total: {
      ...last,
      share: hourly === 0 ? null : 1,
      perHour: { ...last.perHour, mean: hourly },
      perThousand: last.perThousand && { ...last.perThousand, mean: thousands },
    },
    perHourOf: sums,
    perThousandOf: perThousand(sums, good),
  };
}

function perThousand(values: readonly number[], good: readonly number[]): readonly (number | null)[] {
  return values.map((value, i) => (good[i]! > 0 ? (value / good[i]!) * thousand : null));
}

function intervalOf(values: readonly (number | null)[]): Interval | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : meanInterval(known);
}

/** Paths of the inputs that an item lacks, its rate among them. */
export function missingKeys(
  rule: CostRule,
  scenario: Pick<Scenario, "costs" | "stations">,
  windows: readonly StationWindow[],
): readonly string[] {
  const rate = scenario.costs?.[rule.rate] === undefined ? [`costs.${rule.rate}`] : [];
  const mass = rule.isByMass === true ? missingMass(scenario.stations) : [];
  if (!rule.window) return [...rate, ...mass];
  const { quantity, keys } = rule.window;
  const lacking = windows.flatMap(({ missing }) => missing.filter((row) => row.quantity === quantity));
  const known = windows.length > 0;
  return [...new Set([...rate, ...mass, ...(known ? lacking.flatMap((row) => row.keys) : keys)])];
}

/** The cost of an hour and of 1,000 good parts as measures of each replication. */
export function costMeasures(costs: CostStudy | null): readonly { readonly measures: readonly MeasureValue[] }[] {
  if (!costs || costs.rows.length === 0) return [];
  const { currency: unit, perHourOf, perThousandOf } = costs;
  return perHourOf.map((anHour, i) => {
    const perThousandParts = perThousandOf[i] ?? null;
    return {
      measures: [
        { resource: CELL, measure: COST_AN_HOUR, unit, value: anHour },
        ...(perThousandParts === null
          ? []
          : [{ resource: CELL, measure: COST_MEASURE, unit, value: perThousandParts }]),
      ],
    };
  });
}

/** Whether two totals are sums of the same items in the same currency. */
export function areComparable(one: CostStudy | null, other: CostStudy | null): boolean {
  const itemsOf = (costs: CostStudy | null): string =>
    JSON.stringify(costs && [costs.currency, costs.rows.map(({ item }) => item)]);
  return itemsOf(one) === itemsOf(other);
}

// The table of changes that may make an order fit: what its columns mean, and how the findings fill it.
import type { OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { halfWidth, integer, number, scenarioColumn, text } from "#report/tables/columns.ts";
import { fillTable, type Table, type TableSpec } from "#report/tables/table.ts";

export const promiseLeversSpec: TableSpec = {
  name: "promise-levers",
  meaning:
    "What one change gives an order: its chance of the due date in runs with the same random numbers, the cheapest first. Written where the order does not fit, and with `--levers`.",
  columns: [
    scenarioColumn,
    text("order", "What is ordered"),
    text("change", "The change, in plain words"),
    number("chance_by_due", "Share of the runs with the change that are done by the due date, from 0 to 1"),
    number("chance_low_95", "Low end of the 95 % interval of the chance"),
    number("chance_high_95", "High end of the 95 % interval of the chance"),
    number("chance_without", "Share of the runs without any change that are done by then"),
    number("chance_gained", "chance_by_due − chance_without"),
    text("verdict", "`yes` where the interval lies above the wanted chance, `no` below it, else `undecided`"),
    number("finish_p50_s", "Half of the runs with the change are done by then, from the start of the order", "s"),
    number(
      "missing_parts",
      "Good parts that lack at the due date for the wanted chance, in the first runs that all changes have; empty where they are not counted",
      "parts",
    ),
    number(
      "cost_difference",
      "Cost of the order with the change − without it, below 0: cheaper; empty without rates. What the change itself costs is not in it",
    ),
    halfWidth("cost_half_width_95", "the cost difference"),
    text("currency", "Currency of the cost difference"),
    integer("replications", "Runs with the change"),
    text("settings", "Values of `--set` that make the change, separated by semicolons"),
    text("repeat", "The call that repeats it; options of the call itself come before"),
  ],
};

/** None where no change was run. */
export function promiseLeversTables({ order, scenario }: OrderStudy, levers: OrderLevers | null): readonly Table[] {
  const rows = (levers?.rows ?? []).map(({ due, cost, ...row }) => [
    scenario.name,
    order.name,
    row.name,
    due.share,
    due.low,
    due.high,
    levers!.before,
    levers!.before === null ? null : due.share - levers!.before,
    due.verdict,
    row.median,
    row.missing,
    cost?.mean ?? null,
    cost?.halfWidth ?? null,
    cost && levers!.currency,
    due.replications,
    row.settings.join("; "),
    `blowcell promise FILE ${repeatOptions(row.settings, due.replications)}`,
  ]);
  return rows.length === 0 ? [] : [fillTable(promiseLeversSpec, rows)];
}

/** The options that make a change and its runs, after those of the call. */
export function repeatOptions(settings: readonly string[], replications: number): string {
  return [...settings.map((each) => `--set "${each}"`), `--replications ${replications}`].join(" ");
}

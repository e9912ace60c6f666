// The tables of an order: its dates and what it uses, and the finish of each run.
import type { OrderStudy, UseSummary } from "#analysis/promise/orderStudy.ts";
import { valuesAt } from "#analysis/promise/valuesAt.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { halfWidth, integer, number, scenarioColumn, text, truth, unitColumn } from "#report/tables/columns.ts";
import { fillTable, type Cell, type Table, type TableSpec } from "#report/tables/table.ts";
import { momentWords } from "#report/words/momentWords.ts";

const ofRuns = (share: string): string => `${share} of the runs do not exceed it`;

export const promiseSpec: TableSpec = {
  name: "promise",
  meaning:
    "One quantity of an order over its runs: the hours from the start to its last part, good parts at the due date, and what it uses until its last part. p05 to p95 are the spread from run to run; half_width_95 is the uncertainty of the mean.",
  columns: [
    scenarioColumn,
    text("order", "What is ordered"),
    text("quantity", "`time to finish`, that of one product, `good parts at the due date`, or what is used"),
    unitColumn,
    number("p05", ofRuns("5 %")),
    number("p50", ofRuns("Half")),
    number("p80", ofRuns("80 %")),
    number("p95", ofRuns("95 %")),
    number("mean", "Mean over the runs"),
    halfWidth("half_width_95", "the mean"),
    text("due", "Due date in local wall time, or the time after the start; empty without one and for other quantities"),
    number("chance_by_due", "Share of the runs that are done by the due date, from 0 to 1"),
    number(
      "chance_low_95",
      "Low end of the interval of the chance (Wilson): 95 % confidence over all looks together, or for the runs that --replications asks for",
    ),
    number("chance_high_95", "High end of that interval"),
    number("chance_wanted", "Wanted chance of the due date, from 0 to 1"),
    text("verdict", "`yes` where the interval lies above the wanted chance, `no` below it, else `undecided`"),
    text(
      "date_p50",
      "Local date and time by which half of the runs are done; without a calendar the time after the start",
    ),
    text("date_p80", "The same for 80 % of the runs"),
    text("date_p95", "The same for 95 % of the runs"),
    integer("replications", "Number of runs"),
  ],
};

export const finishSpec: TableSpec = {
  name: "finish",
  meaning: "The finish of the order in one run, and of each of its products where there are several.",
  columns: [
    scenarioColumn,
    text("order", "What is ordered"),
    integer("replication", "Number of the run, from 1"),
    text("product", "Product; empty for the whole order"),
    number("finish_s", "From the start of the order to the last wanted part", "s"),
    text(
      "date",
      "The same as local date and time, to the next whole minute; without a calendar as time after the start",
    ),
    truth("on_time", "Whether it is at or before the due date; empty without one"),
  ],
};

const secondsPerHour = 3600;

export function promiseTables(study: OrderStudy): readonly Table[] {
  return [fillTable(promiseSpec, promiseRows(study)), fillTable(finishSpec, finishRows(study))];
}

function promiseRows(study: OrderStudy): readonly (readonly Cell[])[] {
  const { finish, lines, due, goodAtDue, uses } = study;
  const noChance = [null, null, null, null, null, null] as const;
  const chance = due
    ? [momentWords(study.order.due!, study.scenario), due.share, due.low, due.high, study.order.chance, due.verdict]
    : noChance;
  const others = [...(goodAtDue ? [goodAtDue] : []), ...uses];
  return [
    timeRow(study, "time to finish", finish, chance),
    ...(lines.length > 1
      ? lines.map(({ product, seconds }) => timeRow(study, `time to finish: ${product ?? "parts"}`, seconds, noChance))
      : []),
    ...others.map((use) => [...spreadOf(study, use), ...noChance, null, null, null, study.replications]),
  ];
}

function timeRow(
  study: OrderStudy,
  quantity: string,
  seconds: readonly number[],
  chance: readonly Cell[],
): readonly Cell[] {
  const values = seconds.map((each) => each / secondsPerHour);
  const dates = valuesAt(seconds, [0.5, 0.8, 0.95]).map((each) => momentWords(each, study.scenario));
  return [...spreadOf(study, { quantity, unit: "h", values }), ...chance, ...dates, study.replications];
}

function spreadOf(
  { scenario, order }: OrderStudy,
  { quantity, unit, values }: Pick<UseSummary, "quantity" | "unit" | "values">,
): readonly Cell[] {
  const { mean, halfWidth: half } = meanInterval(values);
  return [scenario.name, order.name, quantity, unit, ...valuesAt(values, [0.05, 0.5, 0.8, 0.95]), mean, half];
}

function finishRows({ scenario, order, finish, lines }: OrderStudy): readonly (readonly Cell[])[] {
  const all = [{ product: null, seconds: finish }, ...(lines.length > 1 ? lines : [])];
  return finish.flatMap((_, i) =>
    all.map(({ product, seconds }) => {
      const at = seconds[i]!;
      const isOnTime = order.due === null ? null : at <= order.due;
      return [scenario.name, order.name, i + 1, product, at, momentWords(at, scenario), isOnTime];
    }),
  );
}

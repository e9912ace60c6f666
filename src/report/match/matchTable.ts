// The table of a match: one row a measure, the log beside the model and the trace-driven run.
import type { Comparison, CycleSpread, LogMatch } from "#analysis/match/logMatch.ts";
import type { Equivalence, Estimate } from "#analysis/statistics/equivalence.ts";
import { number, text, unitColumn } from "#report/tables/columns.ts";
import { fillTable, type Cell, type Table, type TableSpec } from "#report/tables/table.ts";
import { halfWidthOf, unitOf } from "./matchWords.ts";

export const matchSpec: TableSpec = {
  name: "match",
  meaning:
    "One measure of a log beside the model, and beside the model with the log's own step times (traced). A difference is model less log, as a share of the log's value; of `time` and `wait` in shares of the time.",
  columns: [
    text(
      "measure",
      "`throughput`, `cycle`, `cycle quantile`, `step`, `time` (share of time in a state) or `wait` (share of time)",
    ),
    text("resource", "`cell` for the whole cell, else a station or another resource"),
    text("name", "Name of the step or state, or the quantile; empty where the measure has none"),
    unitColumn,
    number("log", "Value in the log"),
    number("log_half_width_95", "Half width of the 95 % confidence interval of the log's value"),
    number("model", "Value of the model"),
    number("model_half_width_95", "Half width of the 95 % confidence interval of the model's value"),
    number("difference", "Model less log, as a share"),
    number("low", "Low end of the 90 % interval of the difference"),
    number("high", "High end of the 90 % interval of the difference"),
    number("p", "The larger p-value of two one-sided t tests; below 0.05 the values agree within the margin"),
    number("margin", "Margin of the difference, as a share"),
    text("verdict", "`agrees` within the margin, `differs` by more, or `undecided`"),
    number("traced", "Value of the model with the log's own step times"),
    number(
      "traced_hours",
      "Hours of the log whose step times these are: all of it, or its first part where it is long",
    ),
    number(
      "traced_difference",
      "The same less the log's value over the part whose times they are, as a share; of the throughput shot by shot",
    ),
    number("traced_low", "Low end of the 90 % interval of that difference"),
    number("traced_high", "High end of the 90 % interval of that difference"),
    number("traced_margin", "Margin of that difference, as a share"),
    text("traced_verdict", "The verdict on that difference"),
  ],
};

export function matchTable(match: LogMatch): Table {
  return fillTable(matchSpec, [
    ...match.comparisons.map((each) => comparisonRow(each, match)),
    ...match.spreads.flatMap(spreadRows),
  ]);
}

function comparisonRow(
  each: Comparison,
  { margin, tracedMargin, traced, hours, tracedHours }: LogMatch,
): readonly Cell[] {
  const isOutput = each.measure === "throughput";
  const ownResult = isOutput ? traced : each.tracedResult;
  const ownMargin = isOutput ? tracedMargin : margin;
  return [
    each.measure,
    each.resource,
    each.name === "" ? null : each.name,
    unitOf(each.measure),
    ...estimateCells(each.log),
    ...estimateCells(each.model),
    ...resultCells(each.result),
    each.result?.p ?? null,
    margin,
    each.result?.agreement ?? "undecided",
    each.traced?.mean ?? null,
    each.traced || ownResult ? (tracedHours ?? hours) : null,
    ...resultCells(ownResult),
    ownMargin,
    ownResult?.agreement ?? "undecided",
  ];
}

function estimateCells(estimate: Estimate | undefined): readonly Cell[] {
  return estimate === undefined ? [null, null] : [estimate.mean, halfWidthOf(estimate)];
}

function resultCells(result: Equivalence | undefined): readonly Cell[] {
  return result === undefined ? [null, null, null] : [result.difference, result.low, result.high];
}

const quantiles = { p05: "5 %", p50: "50 %", p95: "95 %" } as const;

function spreadRows({ station, log, model }: CycleSpread): readonly (readonly Cell[])[] {
  return (["p05", "p50", "p95"] as const).map((each) => {
    const difference = log[each] === 0 ? null : model[each] / log[each] - 1;
    const tag = ["cycle quantile", station, quantiles[each], "s"];
    return [...tag, log[each], null, model[each], null, difference, ...Array.from<Cell>({ length: 12 }).fill(null)];
  });
}

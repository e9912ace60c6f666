// What would make an order fit, on the screen: each change with its chance and its cost, then the call that repeats the first.
import type { LeverRow, OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { grouped, percent, shareWords, withInterval } from "#report/words/digits.ts";
import { repeatOptions } from "#report/tables/asked/repeatOptions.ts";

const mostRows = 10;

export function leverLines(study: OrderStudy, levers: OrderLevers, width: number): readonly string[] {
  const { rows, by, currency } = levers;
  if (rows.length === 0) return ["No change of the scenario is known that could make it fit.", ""];
  const order = by === "effort" ? "the least usual effort first" : "the cheapest first";
  const { heads, asItIs, rows: cells } = leverCells(study, levers);
  return [
    ...wrappedLines(`What would make it fit (same random numbers; ${order}):`, width),
    ...alignedLines([heads, asItIs, ...cells.slice(0, mostRows)], currency === null ? [1, 2] : [1, 2, 3], width),
    ...[...conclusion(study, levers), ...effortNote(levers)].flatMap((line) => wrappedLines(line, width)),
    "",
  ];
}

export interface LeverCells {
  readonly heads: readonly string[];
  readonly asItIs: readonly string[];
  /** In the order of the changes. */
  readonly rows: readonly (readonly string[])[];
}

/** What the table of the changes says, a row each. */
export function leverCells({ due }: OrderStudy, { rows, currency, missing }: OrderLevers): LeverCells {
  const isPriced = currency !== null;
  return {
    heads: ["", "chance", "parts lack", ...(isPriced ? [`${currency} more`] : []), ""],
    asItIs: ["as it is", percent(due?.share ?? 0), partsWords(missing), ...(isPriced ? [""] : []), ""],
    rows: rows.map((row) => cellsOf(row, isPriced)),
  };
}

function cellsOf(row: LeverRow, isPriced: boolean): readonly string[] {
  const { due, cost, missing } = row;
  const price = cost === null ? "" : signed(cost);
  return [row.name, percent(due.share), partsWords(missing), ...(isPriced ? [price] : []), markOf(row)];
}

function partsWords(missing: number | null): string {
  return missing === null ? "" : missing === 0 ? "none" : grouped(missing);
}

/** The interval decides, not the share alone. */
function markOf({ due }: LeverRow): string {
  const fits = due.onTime === due.replications ? "fits, all runs" : "fits";
  return { yes: fits, no: "", undecided: "may fit" }[due.verdict];
}

function signed({ mean, halfWidth }: NonNullable<LeverRow["cost"]>): string {
  return `${mean < 0 ? "−" : "+"}${withInterval({ mean: Math.abs(mean), halfWidth })}`;
}

function conclusion(study: OrderStudy, levers: OrderLevers): readonly string[] {
  const fitting = levers.rows.filter(({ due }) => due.verdict === "yes");
  return fitting.length > 0 ? [repeatWords(fitting)] : notFittingWords(study, levers);
}

/** Where no change fits: what comes next to it. */
export function notFittingWords({ order }: OrderStudy, { rows, missing }: OrderLevers): readonly string[] {
  const open = rows.find(({ due }) => due.verdict === "undecided");
  if (open !== undefined) {
    return [
      `No single change is sure to reach ${shareWords(order.chance)}; open after ${open.due.replications} runs: ${open.name}. More runs decide: ${repeatOptions(open.settings, 4 * open.due.replications)}`,
    ];
  }
  const least = rows.toSorted((one, other) => (one.missing ?? Infinity) - (other.missing ?? Infinity))[0]!;
  if (least.missing === null || least.missing === 0) return [`No single change reaches ${shareWords(order.chance)}.`];
  const without = missing === null ? "" : `, ${grouped(missing)} without a change`;
  return [
    `No single change reaches ${shareWords(order.chance)}. With ${least.name} ${grouped(least.missing)} good parts lack at the due date${without}. Join changes, make fewer parts, or agree a later date.`,
  ];
}

/** Settings of a change that are longer are in the table only. */
const longestRepeat = 100;

function repeatWords(fitting: readonly LeverRow[]): string {
  const calls = fitting.map(({ name, settings, due }) => ({
    name,
    options: repeatOptions(settings, due.replications),
  }));
  const short = calls.find(({ options }) => options.length <= longestRepeat);
  if (short === undefined) return "The settings that repeat each change are in promise-levers.csv.";
  return `Add ${short.options} to repeat "${short.name}"; the others are in promise-levers.csv.`;
}

function effortNote({ by }: OrderLevers): readonly string[] {
  return by === "effort"
    ? ["Give `costs` to sort by the cost of the order."]
    : ["Premiums for overtime, molds and machines are not in the cost difference."];
}

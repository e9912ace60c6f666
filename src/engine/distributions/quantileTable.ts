// Tables of the quantiles of a standard form, built once for each form and shape, whatever the scale of the distributions.
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, NODES, UPPER_TAIL } from "#core/border/numbers.ts";
import { scoreCurve } from "./scoreCurve.ts";
import { standardQuantile, type StandardForm } from "./standardizedDistribution.ts";

/** Shapes come from the user and, in a sweep, in great number: beyond this many tables the oldest is dropped. */
const MOST_TABLES = 256;

const known = new Map<string, Float64Array>();

/** Body, lower tail and upper tail. No draw reads the ends, where a form may have no value, nor the part of the body that the tails cover. */
export function quantileTable(form: StandardForm): Float64Array {
  const name = `${form.kind} ${form.shape}`;
  const earlier = known.get(name);
  if (earlier !== undefined) return earlier;
  for (const oldest of known.keys()) {
    if (known.size < MOST_TABLES) break;
    known.delete(oldest);
  }
  const table = buildTable(form);
  known.set(name, table);
  return table;
}

function buildTable(form: StandardForm): Float64Array {
  const quantile = (p: number): number => standardQuantile(form, p);
  switch (form.kind) {
    case "uniform":
    case "triangular":
      return exactTable(quantile, (p) => quantile(1 - p));
    case "normal":
      return exactTable(quantile, (_, opposite) => -opposite);
    // Smooth over the normal score.
    case "lognormal":
    case "gamma":
    case "exponential":
    case "weibull":
      return quantileTable({ kind: "normal", shape: 0 }).map(scoreCurve(quantile));
  }
}

/** The quantile of p ≤ 1/2, and that of 1 - p, which may follow from the first. */
function exactTable(quantile: (p: number) => number, mirrored: (p: number, opposite: number) => number): Float64Array {
  const table = new Float64Array(3 * NODES);
  const set = (node: number, opposite: number, p: number): void => {
    const value = quantile(p);
    table[opposite] = mirrored(p, value);
    table[node] = value;
  };
  for (let index = CELLS / FINER; index <= CELLS / 2; index++) set(BODY + index, BODY + CELLS - index, index / CELLS);
  for (let index = EXACT_CELLS; index <= CELLS; index++)
    set(LOWER_TAIL + index, UPPER_TAIL + CELLS - index, index / (CELLS * FINER));
  return table;
}

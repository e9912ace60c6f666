// Tables of the quantiles of a standard form, built once for each form and shape, whatever the scale of the distributions.
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, NODES, UPPER_TAIL } from "#core/border/numbers.ts";
import { atScores } from "./atScores.ts";
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
    case "normal":
      return exactTable(quantile, (lower) => -lower);
    case "uniform":
    case "triangular":
      return exactTable(quantile, (_, p) => quantile(1 - p));
    // Smooth over the normal score.
    case "lognormal":
    case "gamma":
    case "exponential":
    case "weibull":
      return atScores(quantileTable({ kind: "normal", shape: 0 }), quantile);
  }
}

/** `mirrored` gives the quantile of 1 - p from that of p and from p. */
function exactTable(quantile: (p: number) => number, mirrored: (lower: number, p: number) => number): Float64Array {
  const table = new Float64Array(3 * NODES);
  for (let index = CELLS / FINER; index <= CELLS / 2; index++) {
    const value = quantile(index / CELLS);
    table[BODY + CELLS - index] = mirrored(value, index / CELLS);
    table[BODY + index] = value;
  }
  for (let index = EXACT_CELLS; index <= CELLS; index++) {
    const value = quantile(index / (CELLS * FINER));
    table[UPPER_TAIL + CELLS - index] = mirrored(value, index / (CELLS * FINER));
    table[LOWER_TAIL + index] = value;
  }
  return table;
}

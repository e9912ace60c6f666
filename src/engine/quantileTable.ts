// Tables of the quantiles of a standard form, built once for each form and shape, whatever the scale of the laws.
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, NODES, UPPER_TAIL } from "#core/numbers.ts";
import { scoreCurve } from "./scoreCurve.ts";
import { standardQuantile, type StandardForm } from "./standardLaw.ts";

/** Shapes come from the user and, in a sweep, in great number: beyond so many tables the oldest is forgotten. */
const MOST_TABLES = 256;

const normal: StandardForm = { kind: "normal", shape: 0 };

const tables = new Map<string, Float64Array>();

export function quantileTable(form: StandardForm): Float64Array {
  const name = `${form.kind} ${form.shape}`;
  const known = tables.get(name);
  if (known !== undefined) return known;
  for (const oldest of tables.keys()) {
    if (tables.size < MOST_TABLES) break;
    tables.delete(oldest);
  }
  const table = buildTable(form);
  tables.set(name, table);
  return table;
}

/** Forms that are smooth over the normal score, and whose quantile costs more than a square root. */
const smoothKinds: ReadonlySet<StandardForm["kind"]> = new Set(["lognormal", "gamma", "exponential", "weibull"]);

function buildTable(form: StandardForm): Float64Array {
  if (form.kind === "normal") return normalTable();
  if (!smoothKinds.has(form.kind)) return tableOf((p) => standardQuantile(form, p));
  const curve = scoreCurve((p) => standardQuantile(form, p));
  const scores = quantileTable(normal);
  return tableOf((_, node) => curve(scores[node]!));
}

/** Nodes that no draw reads stay 0: both ends, where a law may have no value, and what the finer tails cover. */
function tableOf(quantile: (p: number, node: number) => number): Float64Array {
  const table = new Float64Array(3 * NODES);
  for (let index = CELLS / FINER; index <= CELLS - CELLS / FINER; index++) {
    table[BODY + index] = quantile(index / CELLS, BODY + index);
  }
  for (let index = EXACT_CELLS; index <= CELLS; index++) {
    const node = LOWER_TAIL + index;
    table[node] = quantile(index / (CELLS * FINER), node);
  }
  for (let index = CELLS; index >= EXACT_CELLS; index--) {
    const node = UPPER_TAIL + CELLS - index;
    table[node] = quantile(1 - index / (CELLS * FINER), node);
  }
  return table;
}

/** Half of it is the other half with its sign changed. */
function normalTable(): Float64Array {
  const table = new Float64Array(3 * NODES);
  for (let index = CELLS / FINER; index <= CELLS / 2; index++) {
    const value = standardQuantile(normal, index / CELLS);
    table[BODY + CELLS - index] = -value;
    table[BODY + index] = value;
  }
  for (let index = EXACT_CELLS; index <= CELLS; index++) {
    const value = standardQuantile(normal, index / (CELLS * FINER));
    table[UPPER_TAIL + CELLS - index] = -value;
    table[LOWER_TAIL + index] = value;
  }
  return table;
}

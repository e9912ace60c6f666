// Tables of the quantiles of a standard form, built once for each form and shape, whatever the scale of the laws.
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, NODES, UPPER_TAIL } from "#core/numbers.ts";
import { standardQuantile, type StandardForm } from "./standardLaw.ts";

/** Shapes come from the user and, in a sweep, in great number: beyond so many tables the oldest is forgotten. */
const MOST_TABLES = 256;

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

/** Nodes that no draw reads stay 0: both ends, where a law may have no value, and what the finer tails cover. */
function buildTable(form: StandardForm): Float64Array {
  const table = new Float64Array(3 * NODES);
  for (let index = CELLS / FINER; index <= CELLS - CELLS / FINER; index++) {
    table[BODY + index] = standardQuantile(form, index / CELLS);
  }
  for (let index = EXACT_CELLS; index <= CELLS; index++) {
    table[LOWER_TAIL + index] = standardQuantile(form, index / (CELLS * FINER));
    table[UPPER_TAIL + CELLS - index] = standardQuantile(form, 1 - index / (CELLS * FINER));
  }
  return table;
}

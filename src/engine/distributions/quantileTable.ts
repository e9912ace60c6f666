// Tables of the quantiles of a standard form, built once for each form and shape, whatever the scale of the laws.
import { curvePoints } from "./curvePoints.ts";
import { tables } from "./tables.ts";
import { standardQuantile, type StandardForm } from "./standardLaw.ts";

/** Shapes come from the user and, in a sweep, in great number: beyond so many tables the oldest is forgotten. */
const MOST_TABLES = 256;

const known = new Map<string, Float64Array>();

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
  switch (form.kind) {
    case "normal":
      return tables().normal();
    case "uniform":
      return tables().straight();
    case "triangular":
      return tables().triangle(form.shape);
    // Smooth over the normal score.
    case "lognormal":
    case "gamma":
    case "exponential":
    case "weibull":
      return tables().curve(curvePoints((p) => standardQuantile(form, p)));
  }
}

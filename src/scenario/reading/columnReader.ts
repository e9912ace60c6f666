// The values of one column of a CSV file in SI, with findings for the lines that cannot be read.
import { dimensions } from "#foundation/dimension.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import type { ColumnDistribution } from "#scenario/distributions/distributionReading.ts";
import { readQuantity } from "#scenario/values/quantityLeaf.ts";

/** Findings of one column that are listed. */
const mostFaults = 5;

export interface ColumnReader {
  /** Reads the cell of one row; an empty cell is no value. */
  readonly read: (cell: string, line: number) => void;
  readonly values: number[];
  /** Of all that was read; empty cells give a warning. */
  readonly findings: () => readonly Finding[];
}

export function columnReader(distribution: ColumnDistribution, path: Path): ColumnReader {
  const values: number[] = [];
  const findings: Finding[] = [];
  let left = 0;
  let empty = { count: 0, line: 0 };
  const withUnit = unitAdder(distribution);
  const bounds = distribution.positive ? { above: 0 } : {};
  const read = (cell: string, line: number): void => {
    if (cell === "") {
      empty = { count: empty.count + 1, line: empty.count === 0 ? line : empty.line };
      return;
    }
    const reading = readQuantity(withUnit(cell), distribution.dimension, bounds);
    if ("value" in reading) values.push(reading.value);
    else if (findings.length >= mostFaults) left += 1;
    else {
      const place = { file: distribution.file, line, column: 1 };
      const faults = reading.faults.map((fault) => ({ ...fault, ...advice(fault.code, distribution) }));
      findings.push(...faults.map((fault) => ({ ...fault, path, place, value: cell })));
    }
  };
  return {
    read,
    values,
    findings: () => [
      ...findings,
      ...(left > 0 ? [more(left, path)] : []),
      ...(empty.count > 0 ? [emptyCells(empty, distribution, path)] : []),
    ],
  };
}

/** Adds to a plain number the unit that the column gives it. */
export function unitAdder({
  column,
  unit = unitInName(column),
}: Pick<ColumnDistribution, "column" | "unit">): (cell: string) => string {
  return (cell) => (unit !== undefined && /\d\.?$/u.test(cell) ? `${cell} ${unit}` : cell);
}

function emptyCells(
  { count, line }: { readonly count: number; readonly line: number },
  { file, column }: ColumnDistribution,
  path: Path,
): Finding {
  const cells = count === 1 ? "1 cell is empty" : `${count} cells are empty`;
  const rest = count === 1 ? "it is left out" : "they are left out";
  return {
    code: "csv-gaps",
    severity: "warning",
    message: `${cells} in the column "${column}"; ${rest}.`,
    remedy: "Look at this line, the first of them, and fill in the value if it was measured.",
    path,
    place: { file, line, column: 1 },
    value: "",
  };
}

function more(left: number, path: Path): Finding {
  const message = `${left} more values of this column cannot be read.`;
  return { code: "csv-more", message, remedy: "Put the first ones right; the rest are probably alike.", path };
}

function advice(code: string, { dimension, column }: ColumnDistribution): { readonly remedy?: string } {
  if (code !== "unit-missing") return {};
  const { usual } = dimensions[dimension];
  const renamed = `${column}_${usual}`;
  return { remedy: `Say the unit once: add \`unit: ${usual}\` beside \`column\`, or call the column \`${renamed}\`.` };
}

/** `cool_s`, `cool (s)` and `cool [s]` all say seconds. */
function unitInName(column: string): string | undefined {
  const [, bracketed, tail] = /[([]([^)\]]+)[)\]]\s*$|_([^_\s]+)$/u.exec(column) ?? [];
  return bracketed ?? tail;
}

// The values of one column of a CSV file in SI, with a finding for every line that cannot be read.
import { dimensions } from "#foundation/dimension.ts";
import type { CsvRow } from "./csvRows.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import type { ColumnDistribution } from "#scenario/distributions/distributionReading.ts";
import { readQuantity } from "#scenario/values/quantityLeaf.ts";

/** Findings of one column that are listed. */
const mostFaults = 5;

interface ColumnValues {
  readonly values: readonly number[];
  readonly findings: readonly Finding[];
}

export function columnValues(
  rows: readonly CsvRow[],
  column: number,
  distribution: ColumnDistribution,
  path: Path,
): ColumnValues {
  const values: number[] = [];
  const findings: Finding[] = [];
  for (const { cell, text, line } of cellsOf(rows, column, distribution)) {
    const reading = readQuantity(text, distribution.dimension, distribution.positive ? { above: 0 } : {});
    if ("value" in reading) values.push(reading.value);
    else {
      const place = { file: distribution.file, line, column: 1 };
      findings.push(
        ...reading.faults.map((fault) => ({ ...fault, ...advice(fault.code, distribution), path, place, value: cell })),
      );
    }
  }
  return { values, findings: shortened(findings, path) };
}

interface ColumnCell {
  readonly cell: string;
  /** With the unit that the column gives it. */
  readonly text: string;
  readonly line: number;
}

/** The cells of a column that hold something. */
export function cellsOf(
  rows: readonly CsvRow[],
  at: number,
  { column, unit = unitInName(column) }: Pick<ColumnDistribution, "column" | "unit">,
): readonly ColumnCell[] {
  return rows.flatMap(({ cells, line }) => {
    const cell = cells[at] ?? "";
    const text = unit !== undefined && /\d\.?$/u.test(cell) ? `${cell} ${unit}` : cell;
    return cell === "" ? [] : [{ cell, text, line }];
  });
}

function shortened(findings: readonly Finding[], path: Path): readonly Finding[] {
  const rest = findings.length - mostFaults;
  if (rest <= 0) return findings;
  const message = `${rest} more values of this column cannot be read.`;
  const remedy = "Put the first ones right; the rest are probably alike.";
  return [...findings.slice(0, mostFaults), { code: "csv-more", message, remedy, path }];
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

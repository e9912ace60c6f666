// Reads the laws whose measured values stand in a column of a CSV file beside the scenario.
import { parse } from "csv-parse/sync";
import { didYouMean } from "#foundation/didYouMean.ts";
import { dimensions } from "#foundation/dimension.ts";
import type { Finding, Path } from "./finding.ts";
import { isMapping } from "./key.ts";
import type { ColumnLaw } from "./lawReading.ts";
import { readQuantity } from "./quantityLeaf.ts";

export type ReadText = (relativePath: string) => string | undefined;

/** Puts the values in place of every column law of the draft; a column that cannot be read counts as absent. */
export function readColumns<Whole>(
  draft: Whole,
  readText: ReadText | undefined,
): { readonly draft: Whole; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const visit = (value: unknown, path: Path): unknown => {
    if (Array.isArray(value)) return value.map((item, index) => visit(item, [...path, index]));
    if (!isMapping(value)) return value;
    if (value["kind"] === "column")
      return readColumn(value as unknown as ColumnLaw, [...path, "empirical"], readText, findings);
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, visit(each, [...path, key])]));
  };
  return { draft: visit(draft, []) as Whole, findings };
}

function readColumn(law: ColumnLaw, path: Path, readText: ReadText | undefined, findings: Finding[]): unknown {
  const text = readText?.(law.file);
  if (text === undefined) {
    const remedy = "Put the file beside the scenario, or correct its name.";
    findings.push({
      code: "csv-missing",
      message: `The file "${law.file}" cannot be read.`,
      expected: "a CSV file beside the scenario",
      remedy,
      path: [...path, "file"],
    });
    return undefined;
  }
  const rows = parseRows(text, law, path, findings);
  const column = rows === undefined ? undefined : findColumn(rows[0]?.record ?? [], law, path, findings);
  if (rows === undefined || column === undefined) return undefined;
  const values = readValues(rows.slice(1), column, law, path, findings);
  return values === undefined ? undefined : { kind: "empirical", values };
}

interface Row {
  readonly record: readonly string[];
  readonly line: number;
}

function parseRows(text: string, law: ColumnLaw, path: Path, findings: Finding[]): readonly Row[] | undefined {
  const header = /^[^\r\n]*/u.exec(text)?.[0] ?? "";
  // Where commas are decimal, lists are separated by semicolons.
  const delimiter = [";", "\t"].find((mark) => header.includes(mark)) ?? ",";
  try {
    const parsed: unknown = parse(text, {
      bom: true,
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    });
    return (parsed as { readonly record: string[]; readonly info: { readonly lines: number } }[]).map(
      ({ record, info }) => ({ record, line: info.lines }),
    );
  } catch (failure) {
    const line = Number((failure as { readonly lines?: unknown }).lines ?? 1);
    const message = `The CSV text is broken: ${(failure as Error).message.split("\n")[0] ?? ""}.`;
    findings.push({
      code: "csv-broken",
      message,
      remedy: "Check the quotes in this line.",
      path: [...path, "file"],
      place: { file: law.file, line, column: 1 },
      value: "",
    });
    return undefined;
  }
}

function findColumn(header: readonly string[], law: ColumnLaw, path: Path, findings: Finding[]): number | undefined {
  const index = header.indexOf(law.column);
  if (index >= 0) return index;
  const meant = didYouMean(law.column, header);
  const expected = header.length === 0 ? "a header row" : `one of ${header.join(", ")}`;
  const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
  findings.push({
    code: "csv-column",
    message: `"${law.file}" has no column "${law.column}".`,
    expected,
    remedy,
    path: [...path, "column"],
  });
  return undefined;
}

/** Enough to see what is wrong with a column without filling the screen. */
const mostFaults = 5;

function readValues(
  rows: readonly Row[],
  column: number,
  law: ColumnLaw,
  path: Path,
  findings: Finding[],
): readonly number[] | undefined {
  const unit = law.unit ?? unitInName(law.column);
  const faults: Finding[] = [];
  const values: number[] = [];
  for (const { record, line } of rows) {
    const cell = record[column] ?? "";
    if (cell === "") continue;
    const reading = readQuantity(
      unit !== undefined && /\d\.?$/u.test(cell) ? `${cell} ${unit}` : cell,
      law.dimension,
      law.positive ? { above: 0 } : {},
    );
    if ("value" in reading) values.push(reading.value);
    else
      for (const fault of reading.faults)
        faults.push({
          ...fault,
          ...advice(fault.code, law),
          path: [...path, "column"],
          place: { file: law.file, line, column: 1 },
          value: cell,
        });
  }
  if (faults.length > mostFaults) {
    const rest = faults.length - mostFaults;
    faults.splice(mostFaults, rest, {
      code: "csv-more",
      message: `${rest} more values of this column cannot be read.`,
      remedy: "Put the first ones right; the rest are probably alike.",
      path: [...path, "column"],
    });
  }
  findings.push(...faults);
  if (values.length === 0 && faults.length === 0) {
    findings.push({
      code: "csv-empty",
      message: `The column "${law.column}" of "${law.file}" has no values.`,
      expected: "one measured value or more",
      remedy: "Check the file.",
      path: [...path, "column"],
    });
  }
  return faults.length > 0 || values.length === 0 ? undefined : values;
}

function advice(code: string, { dimension, column }: ColumnLaw): { readonly remedy?: string } {
  if (code !== "unit-missing") return {};
  const { usual } = dimensions[dimension];
  return {
    remedy: `Say the unit once: add \`unit: ${usual}\` beside \`column\`, or call the column \`${column}_${usual}\`.`,
  };
}

/** `cool_s`, `cool (s)` and `cool [s]` all say seconds. */
function unitInName(column: string): string | undefined {
  const [, bracketed, tail] = /[([]([^)\]]+)[)\]]\s*$|_([^_\s]+)$/u.exec(column) ?? [];
  return bracketed ?? tail;
}

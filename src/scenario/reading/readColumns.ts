// Reads empirical distributions from columns of CSV files beside the scenario.
import { didYouMean } from "#foundation/didYouMean.ts";
import { columnReader, unitAdder } from "./columnReader.ts";
import { readCsv } from "./readCsv.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import { isMapping } from "#scenario/values/key.ts";
import type { ColumnDistribution } from "#scenario/distributions/distributionReading.ts";
import type { ReadText } from "./readText.ts";

export interface WithColumns<Whole> {
  readonly draft: Whole;
  readonly findings: readonly Finding[];
}

/** Puts the values in place of every column distribution of the draft; a column that cannot be read counts as absent. */
export function readColumns<Whole>(draft: Whole, readText: ReadText | undefined): WithColumns<Whole> {
  const findings: Finding[] = [];
  const visit = (value: unknown, path: Path): unknown => {
    if (Array.isArray(value)) return value.map((item, index) => visit(item, [...path, index]));
    if (!isMapping(value)) return value;
    if (isColumnDistribution(value)) {
      const reading = readColumn(value, [...path, "empirical"], readText);
      findings.push(...reading.findings);
      return "values" in reading ? { kind: "empirical", values: reading.values } : undefined;
    }
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, visit(each, [...path, key])]));
  };
  return { draft: visit(draft, []) as Whole, findings };
}

function isColumnDistribution(value: object): value is ColumnDistribution {
  return "kind" in value && value.kind === "column";
}

/** Without values where the column cannot be read. */
interface ColumnReading {
  readonly values?: readonly number[];
  readonly findings: readonly Finding[];
}

function readColumn(distribution: ColumnDistribution, path: Path, readText: ReadText | undefined): ColumnReading {
  const text = readText?.(distribution.file);
  if (text === undefined) {
    const expected = "a CSV file beside the scenario";
    const remedy = "Put the file beside the scenario, or correct its name.";
    const message = `The file "${distribution.file}" cannot be read.`;
    return { findings: [{ code: "csv-missing", message, expected, remedy, path: [...path, "file"] }] };
  }
  const reader = columnReader(distribution, [...path, "column"]);
  let missing: Finding | undefined;
  const broken = readCsv(text, (names) => {
    const column = names.indexOf(distribution.column);
    if (column < 0) missing = missingColumn(names, distribution, [...path, "column"]);
    return column < 0 ? undefined : (cells, line) => reader.read(cells[column] ?? "", line);
  });
  if (broken) {
    const place = { file: distribution.file, line: broken.line, column: 1 };
    const message = `The CSV text is broken: ${broken.message}.`;
    const remedy = "Check the quotes in this line.";
    return { findings: [{ code: "csv-broken", message, remedy, path: [...path, "file"], place, value: "" }] };
  }
  if (missing) return { findings: [missing] };
  const findings = reader.findings();
  const errors = findings.filter(({ severity }) => severity !== "warning");
  if (errors.length > 0) return { findings: leadsOut(distribution.file) ? errors.map(withoutContent) : findings };
  if (reader.values.length > 0) return { values: reader.values, findings };
  const message = `The column "${distribution.column}" of "${distribution.file}" has no values.`;
  const expected = "one measured value or more";
  return {
    findings: [{ code: "csv-empty", message, expected, remedy: "Check the file.", path: [...path, "column"] }],
  };
}

function missingColumn(names: readonly string[], { file, column }: ColumnDistribution, path: Path): Finding {
  const known = leadsOut(file) ? "a column of that file, which is outside the scenario's folder" : undefined;
  const expected = names.length === 0 ? "a header row" : (known ?? `one of ${names.join(", ")}`);
  const meant = known === undefined ? didYouMean(column, names) : undefined;
  const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
  return { code: "csv-column", message: `"${file}" has no column "${column}".`, expected, remedy, path };
}

/** A scenario from elsewhere may name any file; messages show the content only of files in its own folder and below. */
const leadsOut = (file: string): boolean => /^(?:[/\\]|[a-z]:)|(?:^|[/\\])\.\.(?:[/\\]|$)/iu.test(file);

const withoutContent = (finding: Finding): Finding => ({
  ...finding,
  message: "A value of the column cannot be read; the file is outside the scenario's folder.",
  value: "",
});

/** The values of `{ file, column }` as texts with their units; undefined where they cannot be read. */
export function columnTexts(written: unknown, readText: ReadText | undefined): readonly string[] | undefined {
  if (!isMapping(written)) return undefined;
  const { file, column, unit } = written;
  if (typeof file !== "string" || typeof column !== "string") return undefined;
  const withUnit = unitAdder({ column, ...(typeof unit === "string" ? { unit } : {}) });
  const texts: string[] = [];
  let isFound = false;
  const broken = readCsv(readText?.(file) ?? "", (names) => {
    const at = names.indexOf(column);
    isFound = at >= 0;
    return (cells) => void ((cells[at] ?? "") !== "" && texts.push(withUnit(cells[at]!)));
  });
  return broken === undefined && isFound ? texts : undefined;
}

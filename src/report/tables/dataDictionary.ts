// Writes the data dictionary: every file and column that comes out, in words, from the same description as the files.
import type { ColumnSpec, TableSpec } from "./table.ts";

const opening = `# What comes out

Each run writes CSV files as RFC 4180 describes: UTF-8, a header row, CRLF line ends, decimal points, one value a row.
Numbers carry at most 10 significant digits. An empty cell means that there is nothing to say. Text that a spreadsheet
would take for a formula has an apostrophe before it. All values are in SI units or in the unit that the row names.
`;

// A bar would end the cell of the table early.
const escapeBars = (words: string) => words.replaceAll("|", "\\|");

function describeColumn({ name, type, unit, meaning }: ColumnSpec): string {
  return `| \`${name}\` | ${type} | ${unit ?? ""} | ${escapeBars(meaning)} |`;
}

function describeTable({ name, meaning, columns }: TableSpec): string {
  const rows = columns.map(describeColumn).join("\n");
  return `## ${name}.csv\n\n${meaning}\n\n| column | type | unit | meaning |\n|---|---|---|---|\n${rows}\n`;
}

export function dataDictionary(tables: readonly TableSpec[]): string {
  return [opening, ...tables.map(describeTable)].join("\n");
}

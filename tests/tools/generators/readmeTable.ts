// Writes a table between two marks of a README in the layout of the formatter.

/** The first row holds the headings. */
export function withReadmeTable(readme: string, mark: string, cells: readonly (readonly string[])[]): string {
  const [begin, end] = [`<!-- ${mark} -->`, `<!-- /${mark} -->`];
  const widths = cells[0]!.map((_, column) => Math.max(...cells.map((row) => row[column]!.length)));
  const line = (row: readonly string[]): string => `| ${row.map((cell, i) => cell.padEnd(widths[i]!)).join(" | ")} |`;
  const rule = widths.map((width) => "-".repeat(width));
  const table = [cells[0]!, rule, ...cells.slice(1)].map(line).join("\n");
  const from = readme.indexOf(begin) + begin.length;
  return `${readme.slice(0, from)}\n\n${table}\n\n${readme.slice(readme.indexOf(end))}`;
}

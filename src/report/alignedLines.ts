// Sets rows of words in columns for a terminal, with no lines drawn.

const gap = "  ";

/** Every column as wide as its widest cell; columns from `right` on are set to the right, the last one never padded. */
export function alignedLines(rows: readonly (readonly string[])[], right: readonly number[] = []): readonly string[] {
  const columns = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const widths = Array.from({ length: columns }, (_, column) =>
    rows.reduce((widest, row) => Math.max(widest, widthOf(row[column] ?? "")), 0),
  );
  return rows.map((row) =>
    row
      .map((cell, column) => {
        const padding = " ".repeat((widths[column] ?? 0) - widthOf(cell));
        return right.includes(column) ? padding + cell : cell + padding;
      })
      .join(gap)
      .trimEnd(),
  );
}

/** Letters, not code units: a name may hold any. */
function widthOf(cell: string): number {
  return Array.from(cell).length;
}

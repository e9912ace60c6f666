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

/** Broken between words where a line would be wider; later lines are indented as the first is, and two letters more. */
export function wrappedLines(content: string, width: number): readonly string[] {
  const indent = /^ */.exec(content)?.[0] ?? "";
  const lines: string[] = [];
  let line = indent;
  for (const word of content.trim().split(" ")) {
    const longer = line.trim() === "" ? line + word : `${line} ${word}`;
    if (widthOf(longer) <= width || line.trim() === "") line = longer;
    else {
      lines.push(line);
      line = `${indent}  ${word}`;
    }
  }
  return [...lines, line];
}

/** Letters, not code units: a name may hold any. */
function widthOf(cell: string): number {
  return Array.from(cell).length;
}

/** Cut or padded to exactly so many letters, the last one a blank. */
export function fittedLetters(content: string, width: number): string {
  const letters = Array.from(content);
  const kept = letters.length < width ? content : `${letters.slice(0, width - 2).join("")}~`;
  return kept + " ".repeat(width - widthOf(kept));
}

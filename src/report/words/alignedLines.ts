// Sets rows of words in columns for a terminal, with no lines drawn.

const gap = "  ";

/** No column of words becomes narrower than this. */
const leastWords = 16;

type Rows = readonly (readonly string[])[];

/**
 * Every column as wide as its widest cell; columns in `right` are set to the right, the last one never padded. Where a line would be
 * wider than `width`, the widest column of words is broken between words; numbers stay whole, on the first of its lines.
 */
export function alignedLines(rows: Rows, right: readonly number[] = [], width = Infinity): readonly string[] {
  const widths = columnWidths(rows);
  const excess = widths.reduce((sum, each) => sum + each + gap.length, -gap.length) - width;
  const most = Math.max(...widths.filter((_, column) => !right.includes(column)));
  const broken = widths.findIndex((each, column) => each === most && !right.includes(column));
  if (excess <= 0 || broken === -1) return setInColumns(rows, widths, right);
  const room = Math.max(leastWords, most - excess);
  const lines = rows.flatMap((row) =>
    wrappedLines(row[broken] ?? "", room).map((part, i) =>
      row.map((cell, column) => (column === broken ? part : i === 0 ? cell : "")),
    ),
  );
  return setInColumns(lines, columnWidths(lines), right);
}

function columnWidths(rows: Rows): readonly number[] {
  const columns = rows.reduce((most, row) => Math.max(most, row.length), 0);
  return Array.from({ length: columns }, (_, column) =>
    rows.reduce((widest, row) => Math.max(widest, widthOf(row[column] ?? "")), 0),
  );
}

function setInColumns(rows: Rows, widths: readonly number[], right: readonly number[]): readonly string[] {
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

/** Between words, but not between a number and its unit or its interval. */
const breaks = /(?<![\d±]) (?!±)/u;

/** Broken between words where a line would be wider; later lines are indented as the first is, and two letters more. */
export function wrappedLines(content: string, width: number): readonly string[] {
  const indent = /^ */.exec(content)?.[0] ?? "";
  const lines: string[] = [];
  let line = indent;
  for (const word of content.trim().split(breaks)) {
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

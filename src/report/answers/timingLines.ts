// The timing chart for a terminal: one period of the ideal cycle in letters, with marks under what sets the pace.
import { ticks } from "d3-array";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { fittedLetters } from "#report/words/alignedLines.ts";
import { seconds } from "#report/words/digits.ts";
import { screenName } from "#report/words/tradeWords.ts";
import { idealRows, periodSeconds, type IdealRow, type IdealSpan } from "#report/tables/idealRows.ts";

const labelWidth = 14;
const leastWidth = 40;
/** Of many identical stations the first ones are enough. */
const mostRows = 8;
const waits = ".";
const bound = "^";

/** Plain letters only, so that any terminal, pipe and printer shows it; no line is longer than `width`. */
export function timingLines(ideal: IdealCycle, width = 80): readonly string[] {
  const period = periodSeconds(ideal);
  if (period === 0) return ["No repeating order of stations is found, so there is no period to draw."];
  const columns = Math.max(leastWidth, width) - labelWidth;
  const rows = idealRows(ideal);
  const more = rows.length - mostRows;
  const shots = ideal.shotsPerPeriod > 1 || period > ideal.secondsPerShot ? "shots" : "shot";
  return [
    `One period, ${seconds(period)} for ${Math.round(period / ideal.secondsPerShot)} ${shots}:`,
    axisLine(period, columns),
    ...rows.slice(0, mostRows).flatMap((row) => rowLines(row, period, columns)),
    ...(more > 0 ? [`  and ${more} more ${more === 1 ? "row" : "rows"}`] : []),
    ...legendLines(rows, Math.max(leastWidth, width)),
  ];
}

function axisLine(period: number, columns: number): string {
  const letters = Array.from({ length: columns }, () => " ");
  for (const tick of ticks(0, period, Math.floor(columns / 10))) {
    const label = Array.from(String(tick));
    const at = Math.round((tick / period) * columns);
    if (at + label.length <= columns) letters.splice(at, label.length, ...label);
  }
  return `${fittedLetters("seconds", labelWidth)}${letters.join("")}`.trimEnd();
}

function rowLines({ resource, spans }: IdealRow, period: number, columns: number): readonly string[] {
  const letters = Array.from({ length: columns }, () => waits);
  const marks = Array.from({ length: columns }, () => " ");
  // Short steps last: each takes at least one column of a longer neighbor.
  for (const span of spans.toSorted((one, other) => other.end - other.start - (one.end - one.start))) {
    for (const column of columnsOf(span, period, columns)) {
      letters[column] = span.letter;
      marks[column] = span.critical ? bound : " ";
    }
  }
  const label = fittedLetters(screenName(resource), labelWidth);
  const marked = marks.join("").trimEnd();
  return [`${label}${letters.join("")}`, ...(marked === "" ? [] : [`${" ".repeat(labelWidth)}${marked}`])];
}

/** A step beyond the end of the period continues at its beginning. */
function columnsOf({ start, end }: IdealSpan, period: number, columns: number): readonly number[] {
  if (end <= start) return [];
  const from = Math.round((start / period) * columns);
  const to = Math.max(from + 1, Math.round((end / period) * columns));
  return Array.from({ length: Math.min(columns, to - from) }, (_, i) => (from + i) % columns);
}

function legendLines(rows: readonly IdealRow[], width: number): readonly string[] {
  const states = rows.flatMap(({ spans }) => spans.map(({ letter, state }) => `${letter} ${state}`));
  const entries = [...new Set([...states, `${waits} waiting`, `${bound} sets the pace`])];
  return entries.reduce<readonly string[]>((lines, entry) => {
    const last = lines.at(-1);
    const joined = last === undefined ? `  ${entry}` : `${last}, ${entry}`;
    if (last !== undefined && Array.from(joined).length > width) return [...lines, `  ${entry}`];
    return [...lines.slice(0, -1), joined];
  }, []);
}

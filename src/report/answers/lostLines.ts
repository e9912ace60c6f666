// The lost parts on the screen: from the ideal cycle in the planned time to the good parts made.
import type { Study } from "#analysis/study/study.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { idealName } from "#report/words/idealWords.ts";
import { percent, plainNumber, withInterval } from "#report/words/digits.ts";

/** Of the ideal; smaller losses are in lost.csv. */
const leastShare = 0.0005;

export function lostLines(
  { lost, scenario, ideal }: Pick<Study, "lost" | "scenario" | "ideal">,
  width: number,
): readonly string[] {
  if (lost === undefined || lost.ideal === 0) return [];
  const time = scenario.calendar === undefined ? "" : " on shift";
  const shown = lost.rows.filter(({ parts }) => Math.abs(parts) >= leastShare * lost.ideal);
  const unit = lost.unit === "parts per hour" ? "parts an hour" : lost.unit;
  const rows = [
    ["Lost", unit, ""],
    [`${idealName(ideal).toLowerCase()}${time}`, plainNumber(lost.ideal), ""],
    ...shown.map(({ cause, parts, halfWidth }) => [
      cause,
      `${parts < 0 ? "+" : "−"}${withInterval({ mean: Math.abs(parts), halfWidth })}`,
      percent(Math.abs(parts) / lost.ideal),
    ]),
    ["good parts made", plainNumber(lost.made), percent(lost.made / lost.ideal)],
  ];
  const small = lost.rows.length - shown.length;
  const rest =
    small === 0 ? [] : [`${small === 1 ? "1 smaller cause is" : `${small} smaller causes are`} in lost.csv.`];
  return [...alignedLines(rows, [1, 2], width), ...rest.flatMap((line) => wrappedLines(line, width)), ""];
}

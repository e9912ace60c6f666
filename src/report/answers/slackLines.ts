// The tested slack on the screen: how much longer each leading step may take before output falls by 1 %.
import type { Study } from "#analysis/study/study.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { seconds, withInterval } from "#report/words/digits.ts";
import { nounOf, stepOf } from "#report/words/tradeWords.ts";

export const slackHeading = "How much longer a step may take before output falls by 1 % (tested):";

type Row = NonNullable<Study["slack"]>[number];

/** None where it was not tested. */
export function slackLines({ slack = [] }: Pick<Study, "slack">, width: number): readonly string[] {
  if (slack.length === 0) return [];
  const rows = slack.map((row) => [`  ${slackStep(row)}`, slackWords(row)]);
  return ["", ...wrappedLines(slackHeading, width), ...alignedLines(rows, [], width), ...pairLines(slack, width)];
}

/** "cooling, left and right"; a walk leads to several places. */
export function slackStep(row: Row): string {
  return row.role === "crew.walk" ? nounOf(row) : stepOf(row, row.resources);
}

/** "0.12 ± 0.02 s"; where output never fell, how far it was tested. */
export function slackWords({ seconds: found, atLeast }: Row): string {
  return found ? `${withInterval(found)} s` : `more than ${seconds(atLeast)}`;
}

function pairLines([row]: readonly Row[], width: number): readonly string[] {
  const many = row?.pairs === 1 ? "1 pair" : `${row?.pairs ?? 0} pairs`;
  return wrappedLines(
    `Each from ${many} of runs with the same random numbers, without and with the longer step.`,
    width,
  );
}

// The chance of the due date with each change: a bar each with its 95 % interval, and the wanted chance as a line through all.
import type { LeverRow } from "#analysis/promise/orderLeverStudy.ts";
import { barList, place, trackAxis, trackHeight, upright } from "#report/charts/barList.ts";
import type { ChartWords } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { lyingWhisker } from "#report/charts/whisker.ts";
import { percent, shareWords } from "#report/words/digits.ts";

const barHeight = 10;

/** `before` is the row of the order as it is. */
export function chanceBars(rows: readonly Pick<LeverRow, "name" | "due">[], wanted: number, given: ChartWords): Markup {
  const axis = trackAxis([0, 1], shareWords);
  return barList(
    rows.map(({ name, due }) => ({
      name,
      isPart: false,
      remark: `${percent(due.share)} (${percent(due.low)} to ${percent(due.high)})${wordOf(due.verdict)}`,
      track: [...axis.grid, bar(due), upright(wanted, "limit"), ...whisker(due)],
    })),
    { label: `Chance of the due date; line: wanted ${shareWords(wanted)}`, track: axis.labels },
    given,
  );
}

function wordOf(verdict: LeverRow["due"]["verdict"]): string {
  return { yes: ", fits", no: "", undecided: ", may fit" }[verdict];
}

function bar({ share, verdict }: LeverRow["due"]): Child {
  const box = { x: 0, y: (trackHeight - barHeight) / 2, width: place(share), height: barHeight };
  return element("rect", { ...box, class: verdict === "yes" ? "good" : "planned" });
}

function whisker({ share, low, high }: LeverRow["due"]): readonly Child[] {
  return lyingWhisker(place(share), [place(low), place(high)], trackHeight / 2);
}

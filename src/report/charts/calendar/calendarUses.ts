// The bar of one row of the calendar: what the stations did, stacked over time, each use with hue, pattern and letter.
import { mean } from "simple-statistics";
import { dayUses, type DayUse } from "#cell/records/quarterRecord.ts";
import type { CalendarRow, CalendarStep } from "./calendarRows.ts";
import { widthOfWords, words } from "#report/charts/chart.ts";
import { percent } from "#report/words/digits.ts";
import { element, type Child } from "#report/charts/markup.ts";
import { filledPath } from "#report/charts/patterns.ts";
import type { StateLook } from "#report/words/stateLook.ts";

const drop = 18;
const height = 30;

/** Capital letters are work and small letters are waits, as in every chart. */
export const useLooks: Readonly<Record<DayUse, StateLook>> = {
  working: { fill: "cooling", letter: "W" },
  waiting: { fill: "wait", letter: "w" },
  stopped: { fill: "stopped", letter: "!" },
  "start-up": { fill: "setup", letter: "H" },
  changeover: { fill: "changeover", letter: "X" },
  off: { fill: "off", letter: "-" },
};

export interface RowFrame {
  /** Of the chart. */
  readonly id: string;
  /** Position of a wall time in seconds. */
  readonly x: (seconds: number) => number;
  /** Upper edge of the row. */
  readonly y: number;
}

export function useBar({ steps }: CalendarRow, frame: RowFrame): readonly Child[] {
  const areas = dayUses.flatMap((use, index) => {
    const outline = stretchesWhere(steps, ({ shares }) => shares[index]! > 0)
      .map((stretch) => outlineOf(stretch, index, frame))
      .join("");
    return outline === ""
      ? []
      : [element("g", {}, element("title", {}, use), ...filledPath(frame.id, useLooks[use].fill, outline))];
  });
  return [...areas, ...mainStretches(steps).flatMap((stretch) => label(stretch, frame))];
}

/** Consecutive steps with the same value. */
function stretchesWhere(
  steps: readonly CalendarStep[],
  isMeant: (step: CalendarStep) => boolean,
): readonly (readonly CalendarStep[])[] {
  const stretches: CalendarStep[][] = [];
  let before: CalendarStep | undefined;
  for (const step of steps) {
    if (!isMeant(step)) before = undefined;
    else {
      if (before && Math.abs(before.to - step.from) < 1) stretches.at(-1)?.push(step);
      else stretches.push([step]);
      before = step;
    }
  }
  return stretches;
}

/** From the left along the upper edge, back along the lower one. */
function outlineOf(stretch: readonly CalendarStep[], use: number, { x, y }: RowFrame): string {
  const level = (shares: readonly number[], uses: number): string =>
    (y + drop + height * (1 - shares.slice(0, uses).reduce((sum, share) => sum + share, 0))).toFixed(1);
  const place = (seconds: number): string => x(seconds).toFixed(1);
  const over = stretch.map(({ to, shares }) => `V${level(shares, use + 1)}H${place(to)}`);
  const under = stretch.toReversed().map(({ from, shares }) => `V${level(shares, use)}H${place(from)}`);
  return `M${place(stretch[0]!.from)} ${level(stretch[0]!.shares, use)}${over.join("")}${under.join("")}z`;
}

interface MainStretch {
  readonly use: number;
  readonly steps: readonly CalendarStep[];
}

/** The largest use of each step, joined over steps with the same use. */
function mainStretches(steps: readonly CalendarStep[]): readonly MainStretch[] {
  const mainOf = ({ shares }: CalendarStep): number => shares.indexOf(Math.max(...shares));
  return dayUses.flatMap((_, use) =>
    stretchesWhere(steps, (step) => mainOf(step) === use).map((stretch) => ({ use, steps: stretch })),
  );
}

function label({ use, steps }: MainStretch, { x, y }: RowFrame): readonly Child[] {
  const [from, to] = [x(steps[0]!.from), x(steps.at(-1)!.to)];
  const name = dayUses[use]!;
  const { fill, letter } = useLooks[name];
  const share = mean(steps.map(({ shares }) => shares[use]!));
  const names = name === "off" ? [name, letter] : [`${name} ${percent(share)}`, name, percent(share), letter];
  const found = names.find((each) => widthOfWords(each) + 4 <= to - from);
  return found === undefined
    ? []
    : [words(found, (from + to) / 2, y + drop + height / 2 + 4, { anchor: "middle", style: `on ${fill}` })];
}

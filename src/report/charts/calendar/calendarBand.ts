// The band above each row of the calendar: shifts, breaks and changes as they are planned.
import type { Scenario } from "#scenario/scenario.ts";
import { shiftName } from "#report/tables/calendarPlan.ts";
import { piecesOf, type CalendarRow } from "./calendarRows.ts";
import type { RowFrame } from "./calendarUses.ts";
import { line, widthOfWords, words } from "#report/charts/chart.ts";
import { swatchOf, type LegendEntry } from "#report/charts/legend.ts";
import type { Child } from "#report/charts/markup.ts";
import { filledBox } from "#report/charts/patterns.ts";

const height = 16;
const planned = "in shift, as planned";

export function planBand(row: CalendarRow, { calendar, changes = [] }: Scenario, frame: RowFrame): readonly Child[] {
  const { x, y, id } = frame;
  const box = (fill: "planned" | "pause") => (stretch: Stretch) =>
    piecesOf(stretch, row).flatMap(({ from, to }) =>
      filledBox(id, fill, { x: x(from), y, width: x(to) - x(from), height }),
    );
  const shifts = (calendar?.shifts ?? []).flatMap((shift, i) =>
    shift.stretches.map((stretch) => ({ names: [shiftName(shift, i), shift.start], ...stretch })),
  );
  const pauses = (calendar?.shifts ?? []).flatMap((shift) => shift.pauses);
  return [
    ...shifts.flatMap(box("planned")),
    ...pauses.flatMap(box("pause")),
    ...bandWords([...shifts.map(asShift), ...pauses.map(asPause), ...changes.map(asChange)], row, frame),
  ];
}

interface Stretch {
  readonly from: number;
  readonly until: number;
}

/** An entry of the band with its words, the longest first. */
interface Mark extends Stretch {
  readonly names: readonly string[];
  readonly isMoment: boolean;
}

const asShift = (shift: Stretch & Pick<Mark, "names">): Mark => ({ ...shift, isMoment: false });
const asPause = (pause: Stretch): Mark => ({ ...pause, names: [], isMoment: false });
// A moment has no length; one second of it gives its position.
const asChange = ({ name, at }: { readonly name: string; readonly at: number }): Mark => {
  return { names: [name], from: at, until: at + 1, isMoment: true };
};

/** Each name at the start of its entry, as far as the next entry leaves room. */
function bandWords(marks: readonly Mark[], row: CalendarRow, { x, y }: RowFrame): readonly Child[] {
  const placed = marks
    .flatMap((mark) =>
      piecesOf(mark, row)
        .slice(0, 1)
        .map((piece) => ({ mark, at: x(piece.from), end: x(piece.to) })),
    )
    .toSorted((one, other) => one.at - other.at);
  return placed.flatMap(({ mark, at, end }, i) => {
    const next = placed[i + 1]?.at ?? Infinity;
    const free = Math.min(next, mark.isMoment ? Infinity : end) - at - 8;
    const name = mark.names.find((each) => widthOfWords(each) <= free);
    const said = name === undefined ? [] : [words(name, at + 5, y + 12)];
    return mark.isMoment ? [line(at, y - 2, at, y + height + 2, "moment"), ...said] : said;
  });
}

/** The entries of the legend, with changes if there are any. */
export function planEntries({ calendar, changes = [] }: Scenario, id: string): readonly LegendEntry[] {
  const hasBreaks = calendar?.shifts.some(({ pauses }) => pauses.length > 0) === true;
  const moment = [line(10, -1, 10, 15, "moment")];
  return [
    { label: planned, letter: "", drawn: swatchOf(id, "planned") },
    ...(hasBreaks ? [{ label: "break of operators", letter: "", drawn: swatchOf(id, "pause") }] : []),
    ...(changes.length > 0 ? [{ label: "planned change", letter: "", drawn: moment }] : []),
  ];
}

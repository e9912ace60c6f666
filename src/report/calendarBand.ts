// The band above each row of the calendar: shifts, breaks and changes as they are planned.
import type { Scenario } from "#scenario/scenario.ts";
import { shiftName } from "./calendarPlan.ts";
import { piecesOf, type CalendarRow } from "./calendarRows.ts";
import type { RowFrame } from "./calendarUses.ts";
import { line, widthOfWords, words } from "./chart.ts";
import type { LegendEntry } from "./legend.ts";
import { element, type Child } from "./markup.ts";
import { filledBox } from "./patterns.ts";

const height = 16;
const planned = "in shift, as planned";

export function planBand(row: CalendarRow, { calendar, changes = [] }: Scenario, frame: RowFrame): readonly Child[] {
  const { x, y, id } = frame;
  const box = (fill: "planned" | "pause") => (stretch: Stretch) =>
    piecesOf(stretch, row).flatMap(({ from, to }) =>
      filledBox(id, fill, { x: x(from), y, width: x(to) - x(from), height }),
    );
  const shifts = (calendar?.shifts ?? []).flatMap((shift, i) =>
    shift.stretches.map((stretch) => ({ name: shiftName(shift, i), ...stretch })),
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

/** Something that stands in the band, with the words for it, if any. */
interface Mark extends Stretch {
  readonly name: string;
  readonly isMoment: boolean;
}

const asShift = (shift: Stretch & { readonly name: string }): Mark => ({ ...shift, isMoment: false });
const asPause = (pause: Stretch): Mark => ({ ...pause, name: "", isMoment: false });
// A moment has no length; a second of it is enough to find its place.
const asChange = ({ name, at }: { readonly name: string; readonly at: number }): Mark => {
  return { name, from: at, until: at + 1, isMoment: true };
};

/** Each name at the beginning of its own, as far as the next thing in the band leaves room. */
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
    const name = widthOfWords(mark.name) <= free ? [words(mark.name, at + 5, y + 12)] : [];
    return mark.isMoment ? [line(at, y - 2, at, y + height + 2, "moment"), ...name] : name;
  });
}

/** What the band shows, and a change if there is one. */
export function planEntries({ calendar, changes = [] }: Scenario, id: string): readonly LegendEntry[] {
  const hasBreaks = calendar?.shifts.some(({ pauses }) => pauses.length > 0) === true;
  const swatch =
    (fill: "planned" | "pause"): LegendEntry["draw"] =>
    (x, y) =>
      filledBox(id, fill, { x, y, width: 20, height: 14 });
  return [
    { label: planned, letter: "", draw: swatch("planned") },
    ...(hasBreaks ? [{ label: "break of its people", letter: "", draw: swatch("pause") }] : []),
    ...(changes.length > 0
      ? [
          {
            label: "planned change",
            letter: "",
            draw: (x: number, y: number) => [element("g", {}, line(x + 10, y - 1, x + 10, y + 15, "moment"))],
          },
        ]
      : []),
  ];
}

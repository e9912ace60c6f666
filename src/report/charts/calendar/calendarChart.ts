// The calendar as a picture: a day a row in local wall time, above what is planned, below what the stations did.
import { weekdays } from "#foundation/civilDate.ts";
import { dayUses } from "#cell/records/quarterRecord.ts";
import type { Study } from "#analysis/study/study.ts";
import { planBand, planEntries } from "./calendarBand.ts";
import { calendarRows, type CalendarRow, type CalendarRows } from "./calendarRows.ts";
import { useBar, useLooks } from "./calendarUses.ts";
import {
  chartWidth,
  fittedWords,
  line,
  namedChart,
  words,
  type ChartWords,
  type Drawing,
} from "#report/charts/chart.ts";
import { withInterval } from "#report/words/digits.ts";
import { legend, swatchOf, type LegendEntry } from "#report/charts/legend.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { straightScale } from "#report/charts/straightScale.ts";

const gutter = 128;
const right = 112;
const top = 30;
const pitch = 60;

export function calendarChart(
  { scenario, calendar }: Pick<Study, "scenario" | "calendar">,
  given: ChartWords,
): Drawing {
  const shown = calendarRows(calendar ?? { days: [], quarters: [] });
  const hours = shown.unit === "day" ? 24 : 7 * 24;
  const x = straightScale([0, hours * 3600], [gutter, chartWidth - right]);
  const bottom = top + shown.rows.length * pitch;
  const picture = namedChart(
    given,
    { width: gutter - 4, height: bottom, content: shown.rows.flatMap((row, i) => rowNames(row, top + i * pitch)) },
    bottom,
    ...axis(shown, x, bottom),
    ...shown.rows.map((row, i) => {
      const y = top + i * pitch;
      const frame = { id: given.id, x, y };
      return element("g", {}, madeWords(row, y), ...planBand(row, scenario, frame), ...useBar(row, frame));
    }),
  );
  return { picture, legend: legend([...planEntries(scenario, given.id), ...useEntries(shown, given.id)]) };
}

function axis({ unit }: CalendarRows, x: (seconds: number) => number, bottom: number): readonly Child[] {
  const named =
    unit === "day"
      ? Array.from({ length: 9 }, (_, i) => [i * 3 * 3600, `${String(i * 3).padStart(2, "0")}:00`] as const)
      : weekdays.map((day, i) => [i * 86_400, day] as const);
  return [
    ...named.flatMap(([second, name]) => [
      line(x(second), top - 8, x(second), bottom - 10, "grid"),
      // The first word would reach below the layer of names.
      words(name, x(second), top - 12, { anchor: second === 0 ? "start" : "middle", style: "quiet" }),
    ]),
    words("good parts", chartWidth, top - 12, { anchor: "end", style: "quiet" }),
  ];
}

function rowNames({ label, note }: CalendarRow, y: number): readonly Child[] {
  return [
    words(fittedWords(label, gutter - 10), 0, y + 13, { style: "name" }),
    ...(note === "" ? [] : [words(note, 0, y + 34, { style: "quiet" })]),
  ];
}

function madeWords({ days }: CalendarRow, y: number): Markup {
  const [only] = days;
  const sum = days.reduce((total, { good }) => total + good.mean, 0);
  const made = days.length === 1 && only ? withInterval(only.good) : withInterval({ mean: sum, halfWidth: null });
  return words(made, chartWidth, y + 36, { anchor: "end" });
}

/** Only uses that occur. */
function useEntries({ rows }: CalendarRows, id: string): readonly LegendEntry[] {
  const seen = dayUses.filter((_, use) => rows.some(({ steps }) => steps.some(({ shares }) => shares[use]! > 0)));
  return seen.map((use) => {
    const { fill, letter } = useLooks[use];
    return { label: use, letter, drawn: swatchOf(id, fill) };
  });
}

// A chart without words for a sheet to fill in: every state has a number, and the key gives the words.
import type { TimelineInterval, TimelineRecord } from "#cell/records/timelineRecord.ts";
import { line, namedChart, widthOfWords, words, type ChartWords } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { filledBox } from "#report/charts/patterns.ts";
import { barHeight, timingLayout, type TimingLayout } from "#report/charts/timingLayout.ts";
import { stateLook } from "#report/words/stateLook.ts";
import { screenName } from "#report/words/tradeWords.ts";

export interface BlankSheet {
  readonly chart: Markup;
  readonly key: readonly { readonly number: number; readonly resource: string; readonly state: string }[];
}

/** The same state has one number at all stations; a state that is too short for a number everywhere has none. */
export function blankSheet(
  record: TimelineRecord,
  kindOf: (resource: string) => string,
  given: ChartWords,
): BlankSheet {
  const layout = timingLayout(record.resources, record.seconds);
  const widthOf = ({ start, end }: TimelineInterval): number => layout.at(end) - layout.at(start);
  const key: BlankSheet["key"][number][] = [];
  const entryOf = ({ resource, state }: TimelineInterval): BlankSheet["key"][number] | undefined => {
    const kind = screenName(kindOf(resource));
    return key.find((entry) => entry.resource === kind && entry.state === state);
  };
  for (const interval of record.intervals) {
    const { resource, state } = interval;
    if (widthOf(interval) < leastWidth || entryOf(interval)) continue;
    key.push({ number: key.length + 1, resource: screenName(kindOf(resource)), state });
  }
  const names = record.resources.map((resource) =>
    words(screenName(resource), 0, layout.barTop(resource) + 14, { style: "name" }),
  );
  const chart = namedChart(
    given,
    { width: layout.left - 4, height: layout.bottom, content: names },
    layout.bottom + 4,
    ...axis(layout),
    ...record.intervals.flatMap((interval) => numbered(interval, entryOf(interval)?.number, layout, given.id)),
  );
  return { chart, key };
}

/** In the units of the chart: room for a number of two digits, which may stand out a little on both sides. */
const leastWidth = widthOfWords("16") - 4;

function axis({ ticks, at, top, bottom }: TimingLayout): readonly Child[] {
  return ticks.flatMap((tick) => [
    line(at(tick), top - 6, at(tick), bottom, "grid"),
    words(String(tick), at(tick), top - 10, { anchor: "middle", style: "quiet" }),
  ]);
}

/** The number stands above its bar. */
function numbered(
  { resource, state, kind, start, end }: TimelineInterval,
  number: number | undefined,
  layout: TimingLayout,
  id: string,
): readonly Child[] {
  const [x, y] = [layout.at(start), layout.barTop(resource)];
  const width = layout.at(end) - x;
  const bar = element("g", {}, ...filledBox(id, stateLook(state, kind).fill, { x, y, width, height: barHeight }));
  if (number === undefined || width < leastWidth) return [bar];
  return [bar, words(String(number), x + width / 2, y - 4, { anchor: "middle" })];
}

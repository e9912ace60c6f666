// The timing chart: screw, valve, every station and operator on one axis of time, each wait named, with the critical path.
import type { TimelineInterval, TimelineRecord } from "#cell/records/timelineRecord.ts";
import { criticalPath } from "./criticalPath.ts";
import { fittedWords, line, namedChart, widthOfWords, words, type ChartWords, type Drawing } from "./chart.ts";
import { crossingsOf, widestClear, type Stretch } from "./clearStretch.ts";
import { seconds } from "#report/words/digits.ts";
import { legend, stateEntries, type LegendEntry } from "./legend.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { filledBox } from "./patterns.ts";
import { looksIn, stateLook, type StateLook } from "#report/words/stateLook.ts";
import { screenName } from "#report/words/tradeWords.ts";
import { barHeight, timingLayout, type TimingLayout } from "./timingLayout.ts";

/** With `span`, several charts share one scale of time; `zero` is the time at the beginning of the axis. Both in seconds. */
export function timingChart(record: TimelineRecord, given: ChartWords, span = record.seconds, zero = 0): Drawing {
  const layout = timingLayout(record.resources, span);
  const lookOf = looksIn(record.intervals);
  const names = record.resources.map((resource) =>
    words(fittedWords(screenName(resource), layout.left - 10), 0, layout.barTop(resource) + 14, { style: "name" }),
  );
  const picture = namedChart(
    given,
    { width: layout.left - 4, height: layout.bottom, content: [secondsWord(layout), ...names] },
    layout.bottom + 4,
    axis(layout, zero),
    ...record.intervals.map((interval) => bar(interval, lookOf(interval), layout, { id: given.id, zero })),
    criticalPath(record.chain, layout),
    // Words come last, so that the path covers none of them.
    ...record.resources.flatMap((resource) => barNames(record, resource, layout, lookOf)),
    ...record.resources.flatMap((resource) => waitWords(record, resource, layout)),
  );
  return { picture, legend: legend([...stateEntries(given.id, record.intervals), ...pathEntries(record)]) };
}

type LookOf = ReturnType<typeof looksIn>;

const secondsWord = ({ top }: TimingLayout): Markup => words("seconds", 0, top - 10, { style: "quiet" });

function axis({ ticks, at, top, bottom }: TimingLayout, zero: number): readonly Child[] {
  return ticks.flatMap((tick) => [
    line(at(tick), top - 6, at(tick), bottom, "grid"),
    // At the edge the names of the rows would cover the left half of a long number.
    words(String(zero + tick), at(tick), top - 10, {
      anchor: tick === 0 && zero > 0 ? "start" : "middle",
      style: "quiet",
    }),
  ]);
}

interface Axis {
  readonly id: string;
  readonly zero: number;
}

function bar(interval: TimelineInterval, { fill }: StateLook, layout: TimingLayout, { id, zero }: Axis): Markup {
  const { resource, start, end } = interval;
  const x = layout.at(start);
  const box = { x, y: layout.barTop(resource), width: layout.at(end) - x, height: barHeight };
  const title = `${screenName(resource)}: ${durationWords(interval)}, from ${seconds(zero + start)} to ${seconds(zero + end)}`;
  const cut = interval.isCut ? ", cut off by the edge of the chart" : "";
  return element("g", {}, element("title", {}, `${title}${cut}`), ...filledBox(id, fill, box));
}

/** A bar that the edge of the chart cuts has no duration. */
function durationWords({ state, start, end, isCut }: TimelineInterval): string {
  return isCut ? state : `${state} ${seconds(end - start)}`;
}

function barNames(
  { intervals, chain }: TimelineRecord,
  resource: string,
  layout: TimingLayout,
  lookOf: LookOf,
): readonly Child[] {
  const crossings = crossingsOf(resource, chain, layout);
  return intervals
    .filter((interval) => interval.resource === resource)
    .map((interval) => barName(interval, lookOf(interval), crossings, layout));
}

/** As many words as fit beside the path; a wait has its name above and only its letter here. */
function barName(
  interval: TimelineInterval,
  { fill, letter }: StateLook,
  crossings: readonly number[],
  layout: TimingLayout,
): Child {
  const { resource, state, start, end } = interval;
  const full = { from: layout.at(start), to: layout.at(end) };
  const clear = widestClear(full, crossings);
  const names = fill === "wait" || fill === "rest" ? [letter] : [durationWords(interval), state, letter];
  const fits = (name: string, { from, to }: Stretch): boolean => widthOfWords(name) + 3 <= to - from;
  const name = names.find((each) => fits(each, clear)) ?? names.find((each) => each === letter && fits(each, full));
  if (name === undefined) return [];
  const { from, to } = fits(name, clear) ? clear : full;
  return words(name, (from + to) / 2, layout.barTop(resource) + 14, { anchor: "middle", style: `on ${fill}` });
}

function waitWords(record: TimelineRecord, resource: string, layout: TimingLayout): readonly Markup[] {
  const intervals = record.intervals.filter((interval) => interval.resource === resource);
  const top = layout.barTop(resource);
  return waitNames(intervals, layout).map(({ name, x, width }) =>
    words(name, x + width / 2, top - 4, { anchor: "middle", style: "wait-name" }),
  );
}

interface WaitName {
  readonly name: string;
  readonly x: number;
  readonly width: number;
}

/** Over its wait, with as many words as fit between the names beside it. */
function waitNames(intervals: readonly TimelineInterval[], layout: TimingLayout): readonly WaitName[] {
  let free = layout.left;
  const waits = intervals.filter(({ state, kind }) => stateLook(state, kind).fill === "wait");
  return waits.flatMap((wait, i) => {
    const { state, start, end } = wait;
    const [from, to] = [layout.at(start), layout.at(end)];
    const next = waits[i + 1];
    // Half of the way to the next wait is for its name.
    const limit = next ? Math.max(to, (to + layout.at(next.start)) / 2) : layout.right;
    for (const name of [durationWords(wait), state, ...(wait.isCut ? [] : [seconds(end - start)])]) {
      const width = widthOfWords(name);
      const x = Math.max(free, Math.min((from + to - width) / 2, limit - width));
      if (x > to || x + width < from || x + width > limit) continue;
      free = x + width + 6;
      return [{ name, x, width }];
    }
    return [];
  });
}

function pathEntries({ chain }: TimelineRecord): readonly LegendEntry[] {
  const entry = (label: string, style: string): LegendEntry => ({
    label,
    letter: "",
    drawn: [line(0, 7, 20, 7, "path-edge"), line(0, 7, 20, 7, style)],
  });
  const tied = chain.some((segment) => segment.tied)
    ? [entry("critical path, another completion was equally late", "path tied")]
    : [];
  return chain.length === 0 ? [] : [entry("critical path", "path"), ...tied];
}

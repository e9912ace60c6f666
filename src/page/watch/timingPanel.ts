// The timing chart around the shown time, with a cursor; a click moves the time there.
import { useComputed, useSignalEffect } from "@preact/signals";
import { useMemo, useRef } from "preact/hooks";
import { h, type ComponentChild, type TargetedMouseEvent } from "preact";
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { chartWidth, type Drawing } from "#report/charts/chart.ts";
import { timingChart } from "#report/charts/timingChart.ts";
import { timingLayout } from "#report/charts/timingLayout.ts";
import { chartWindow, spanOf, type ChartWindow } from "./chartWindow.ts";
import { timelineOf } from "#report/scene/timelineOf.ts";
import { actOnKey } from "./keys.ts";
import type { Watched } from "./watched.ts";

interface TimingPanelProps {
  readonly watched: Watched;
  /** Mean seconds between two shots of one station. */
  readonly cycle: number;
}

export function TimingPanel({ watched, cycle }: TimingPanelProps): ComponentChild {
  const { record, seconds } = watched;
  const before = useRef<ChartWindow>({ from: record.from, span: spanOf(cycle, record) });
  const stretch = useComputed(() => (before.current = chartWindow(seconds.value, before.current, record)));
  const scroller = useRef<HTMLDivElement>(null);
  useSignalEffect(() => keepInView(scroller.current, shareOf(seconds.value, stretch.value)));
  const shown = stretch.value;
  const goThere = ({ currentTarget, clientX }: TargetedMouseEvent<HTMLDivElement>): void => {
    const { left, width } = currentTarget.getBoundingClientRect();
    watched.goTo(timeAt((clientX - left) / width, shown));
  };
  return h(
    "figure",
    { class: "timing" },
    h(
      "div",
      {
        class: "picture",
        ref: scroller,
        tabIndex: 0,
        role: "application",
        "aria-label": "Timing chart",
        onKeyDown: (event: KeyboardEvent) => actOnKey(watched, event),
      },
      h(
        "div",
        { class: "reel", onClick: goThere },
        h(Chart, { watched, shown }),
        h(Cursor, { watched, shown }),
        h(Curtain, { watched, shown }),
      ),
    ),
    h(ChartLegend, { watched, shown }),
  );
}

interface ChartProps extends Pick<TimingPanelProps, "watched"> {
  readonly shown: ChartWindow;
}

function Chart(props: ChartProps): ComponentChild {
  return h("div", { dangerouslySetInnerHTML: { __html: useDrawing(props).picture.code } });
}

function ChartLegend(props: ChartProps): ComponentChild {
  return h("div", { dangerouslySetInnerHTML: { __html: useDrawing(props).legend.code } });
}

/** Drawn anew only with another stretch or curtain, not with the cursor. */
function useDrawing({ watched: { record, end }, shown: { from, span } }: ChartProps): Drawing {
  const until = Math.min(from + span, end.value);
  return useMemo(() => {
    const words = { id: "timing", title: "Timing chart", description: "One row a resource; its bars are its states." };
    const timeline = timelineOf(record, from, until);
    const resources = inReadingOrder(timeline.resources, (resource) => resource);
    return timingChart({ ...timeline, resources }, words, span, from);
  }, [record, from, until, span]);
}

function Cursor({ watched, shown }: ChartProps): ComponentChild {
  return h("div", { class: "cursor", style: { left: placeOf(watched.seconds.value, shown) } });
}

function Curtain({ watched, shown }: ChartProps): ComponentChild {
  const { from, span } = shown;
  const begins = watched.hiddenAfter.value;
  if (begins === undefined || begins >= from + span) return null;
  return h("div", { class: "curtain", style: { left: placeOf(Math.max(begins, from), shown) } }, "Hidden");
}

const { left: axisLeft, right: axisRight } = timingLayout([], 1);

/** Of the chart's width. */
function shareOf(seconds: number, { from, span }: ChartWindow): number {
  return (axisLeft + ((seconds - from) / span) * (axisRight - axisLeft)) / chartWidth;
}

const placeOf = (seconds: number, shown: ChartWindow): string => `${shareOf(seconds, shown) * 100}%`;

/** On a narrow page the chart scrolls in its own box; the names of the rows cover its left side. */
function keepInView(scroller: HTMLElement | null, share: number): void {
  if (!scroller) return;
  const { scrollWidth, clientWidth, scrollLeft } = scroller;
  const [x, covered] = [share * scrollWidth, (axisLeft / chartWidth) * scrollWidth];
  if (x < scrollLeft + covered || x > scrollLeft + clientWidth) scroller.scrollLeft = x - (covered + clientWidth) / 2;
}

/** `share` of the chart's width. */
function timeAt(share: number, { from, span }: ChartWindow): number {
  return from + ((share * chartWidth - axisLeft) / (axisRight - axisLeft)) * span;
}

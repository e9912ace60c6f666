// The chart of a drill; before the choice it ends at a curtain.
import { useMemo } from "preact/hooks";
import { h, type ComponentChild } from "preact";
import type { ShownChart } from "#page/answer/openDrills.ts";
import { chartWidth } from "#report/charts/chart.ts";
import { timingChart } from "#report/charts/timingChart.ts";
import { timingLayout } from "#report/charts/timingLayout.ts";

interface DrillChartProps {
  readonly chart: ShownChart;
  readonly id: string;
  readonly isRevealed: boolean;
}

export function DrillChart({ chart, id, isRevealed }: DrillChartProps): ComponentChild {
  const { title, before, after } = chart;
  const record = isRevealed ? after : before;
  const drawing = useMemo(() => {
    const words = { id, title, description: "One row a resource; its bars are its states." };
    return timingChart(record, words, after.seconds, after.from);
  }, [record, after, id, title]);
  const hidden = record.seconds < after.seconds ? curtainPlace(record.seconds / after.seconds) : undefined;
  return h(
    "figure",
    { class: "timing" },
    h("figcaption", {}, title),
    h(
      "div",
      { class: "picture", tabIndex: 0, role: "group", "aria-label": title },
      h(
        "div",
        { class: "reel" },
        h("div", { dangerouslySetInnerHTML: { __html: drawing.picture.code } }),
        hidden === undefined ? null : h("div", { class: "curtain", style: { left: hidden } }, "Hidden"),
      ),
    ),
    h("div", { dangerouslySetInnerHTML: { __html: drawing.legend.code } }),
  );
}

const { left, right } = timingLayout([], 1);

/** From a share of the chart's time to one of its width. */
const curtainPlace = (share: number): string => `${((left + share * (right - left)) / chartWidth) * 100}%`;

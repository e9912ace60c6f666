// The layout of the timing chart: one row a resource, one time axis for all.
import { chartWidth } from "./chart.ts";
import { straightScale } from "./straightScale.ts";

/** Above each bar there is room for the names of waits, below it for the critical path. */
export const barHeight = 20;
const nameHeight = 15;
const railHeight = 9;
const gutter = 116;
const axisHeight = 26;
const rightMargin = 14;

export interface TimingLayout {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Seconds to a place. */
  readonly at: (seconds: number) => number;
  readonly ticks: readonly number[];
  readonly barTop: (resource: string) => number;
  /** The critical path, as vertical positions. */
  readonly rail: (resource: string) => number;
}

export function timingLayout(resources: readonly string[], seconds: number): TimingLayout {
  const scale = straightScale([0, seconds], [gutter, chartWidth - rightMargin]);
  const pitch = nameHeight + barHeight + railHeight;
  const rows = new Map(resources.map((resource, i) => [resource, axisHeight + i * pitch + nameHeight]));
  const barTop = (resource: string): number => rows.get(resource) ?? axisHeight;
  return {
    left: gutter,
    right: chartWidth - rightMargin,
    top: axisHeight,
    bottom: axisHeight + resources.length * pitch,
    at: (time) => scale(time),
    ticks: scale.ticks(12),
    barTop,
    rail: (resource) => barTop(resource) + barHeight + railHeight / 2,
  };
}

// Where words fit within a bar of the timing chart: between the places at which the critical path crosses it.
import type { ChainSegment } from "#cell/records/timelineRecord.ts";
import { barHeight, type TimingLayout } from "./timingLayout.ts";

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Kept free on both sides of the path, for its edge. */
const clearance = 3;

/** Places at which the path crosses the row of a resource on the way to another row, from left to right. */
export function crossingsOf(resource: string, chain: readonly ChainSegment[], layout: TimingLayout): readonly number[] {
  const middle = layout.barTop(resource) + barHeight / 2;
  return chain.flatMap((segment, i) => {
    const before = chain[i - 1];
    if (!before) return [];
    const rails = [layout.rail(before.resource), layout.rail(segment.resource)] as const;
    return Math.min(...rails) < middle && middle < Math.max(...rails) ? [layout.at(segment.start)] : [];
  });
}

export function widestClear({ from, to }: Stretch, crossings: readonly number[]): Stretch {
  const inside = crossings.filter((x) => x > from - clearance && x < to + clearance);
  const begins = [from, ...inside.map((x) => x + clearance)];
  const ends = [...inside.map((x) => x - clearance), to];
  return begins
    .map((begin, i) => ({ from: begin, to: ends[i] ?? to }))
    .reduce((widest, each) => (each.to - each.from > widest.to - widest.from ? each : widest));
}

// A straight scale from values to places in a chart, with round values for its marks.
import { ticks } from "d3-array";

export interface Scale {
  (value: number): number;
  /** About so many round values. */
  readonly ticks: (count: number) => readonly number[];
}

/** The whole of d3-scale would bring colors and number formats into the page. */
export function straightScale([low, high]: readonly [number, number], [from, to]: readonly [number, number]): Scale {
  const share = (value: number): number => (high === low ? 0.5 : (value - low) / (high - low));
  const place = (value: number): number => from * (1 - share(value)) + to * share(value);
  return Object.assign(place, { ticks: (count: number) => ticks(low, high, count) });
}

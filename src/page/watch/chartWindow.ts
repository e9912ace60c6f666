// The stretch of the run that the timing chart shows: it stays while the time is inside, and turns like a page.

export interface ChartWindow {
  readonly from: number;
  readonly span: number;
}

interface Stretch {
  readonly from: number;
  readonly until: number;
}

/** Seconds: more than these make the steps of a usual cell too narrow for their names. */
const longSpan = 60;

/** Several cycles of a fast cell; of a slow one a whole cycle and a half. */
export function spanOf(cycle: number, { from, until }: Stretch): number {
  return Math.min(Math.ceil(Math.max(1.5 * cycle, Math.min(3.5 * cycle, longSpan))), until - from);
}

/** Share of the stretch that is shown before the time after a turn. */
const lead = 0.1;
/** Seconds: the marks of the axis are at multiples of it, or of its half, after the beginning. */
const round = 10;

/** The same stretch while the time is inside it, else the one that begins a little before the time, at a round one. */
export function chartWindow(seconds: number, before: ChartWindow, record: Stretch): ChartWindow {
  const { from, span } = before;
  if (seconds >= from && seconds <= from + span) return before;
  const begins = round * Math.floor(Math.min(seconds - lead * span, record.until - span) / round);
  return { from: Math.max(record.from, begins), span };
}

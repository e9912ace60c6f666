// The stretch of the run that the timing chart shows: it stays while the time is inside, and turns like a page.

export interface ChartWindow {
  readonly from: number;
  readonly span: number;
}

/** Share of the stretch that is shown before the time after a turn. */
const lead = 0.1;

/** The same stretch while the time is inside it, else the one that begins a little before the time. */
export function chartWindow(seconds: number, before: ChartWindow, end: number): ChartWindow {
  const { from, span } = before;
  if (seconds >= from && seconds <= from + span) return before;
  return { from: Math.max(0, Math.min(seconds - lead * span, end - span)), span };
}

// Independent computation of one station with stops: step after step, without an event queue.

/*
 * The rules are those of the table of stops and of the table of instants:
 * - A stop lasts from its begin up to its end. A step that begins at the begin of a stop has begun.
 * - Physics runs on. With `finish` every step runs on. The next motion begins when the stop has ended.
 * - With `hold` a shift to the port, an opening and a removal go on after the stop for the rest of their time; with `scrap` only the
 *   shift does. Otherwise the shot is lost.
 * - Clearing begins when the stop ends. Then the cycle begins anew. No stop comes during the clearing.
 *
 * Not included: waits for melt, operators.
 */

export type StationStep = "shift to port" | "drop" | "close" | "blow" | "cool" | "vent" | "open" | "remove";

export interface Interval {
  readonly from: number;
  readonly to: number;
}

export interface StationRun {
  /** Start of each blow and of each clearing. */
  readonly blown: readonly number[];
  readonly cleared: readonly number[];
}

const cycle: readonly StationStep[] = ["shift to port", "drop", "close", "blow", "cool", "vent", "open", "remove"];
const physics: readonly StationStep[] = ["blow", "cool", "vent"];

function isHeld(step: StationStep, rule: "hold" | "scrap"): boolean {
  return step === "shift to port" || (rule === "hold" && (step === "open" || step === "remove"));
}

/** Starts of blows and clearings up to `until`, in ticks. */
export function clearingRecursion(
  ticks: Readonly<Record<StationStep | "clear", number>>,
  rule: "finish" | "hold" | "scrap",
  stops: readonly Interval[],
  until: number,
): StationRun {
  const blown: number[] = [];
  const cleared: number[] = [];
  let now = 0;
  let at = 0;
  while (now <= until) {
    const step = cycle[at]!;
    const isPhysics = physics.includes(step);
    const before = stops.find(({ from, to }) => from < now && now < to);
    if (before && !isPhysics) now = before.to;
    if (step === "blow") blown.push(now);
    const end = now + ticks[step];
    const during = stops.find(({ from }) => now <= from && from < end);
    if (!during || isPhysics || rule === "finish") now = end;
    else if (isHeld(step, rule)) now = during.to + end - during.from;
    else {
      cleared.push(during.to);
      now = during.to + ticks.clear;
      at = 0;
      continue;
    }
    at = (at + 1) % cycle.length;
  }
  return { blown: blown.filter((each) => each <= until), cleared: cleared.filter((each) => each <= until) };
}

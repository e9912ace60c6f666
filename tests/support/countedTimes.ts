// Counts given seconds as a run counts its cycles.
import type { CountedTimes } from "#cell/records/countedTimes.ts";
import { TimeCounter } from "#cell/run/timeCounter.ts";

const ticksPerSecond = 1e6;

export function countedTimes(seconds: readonly number[]): CountedTimes {
  const counter = new TimeCounter();
  for (const each of seconds) counter.add(Math.round(each * ticksPerSecond));
  return counter.counted(ticksPerSecond);
}

// Clocks on working time: their time passes only while a resource works.
import { now } from "./clock.ts";
import { clearDue, setDue } from "./eventList.ts";
import { CLOCKED, STILL, TIMED } from "../border/numbers.ts";
import { processAt } from "./process.ts";
import { Resource } from "./resource.ts";
import { wholesOf } from "./sections.ts";

export function hasWorkClocks(): bool {
  return wholesOf(CLOCKED) > 0;
}

/** The resource has begun or ceased to work. */
export function turnClocks(resource: Resource, works: bool): void {
  for (let i = 0; i < resource.clockedCount; i++) {
    const process = processAt(load<i32>(resource.clocked + ((<usize>i) << 2)));
    if (process.step === null || process.step!.clock !== resource.number) continue;
    if (works && process.phase === STILL) {
      process.phase = TIMED;
      setDue(process, now + process.remaining);
    } else if (!works && process.phase === TIMED) {
      process.remaining = process.due - now;
      clearDue(process);
      process.phase = STILL;
    }
  }
}

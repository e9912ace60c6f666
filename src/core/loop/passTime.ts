// Time passes: how long a step lasts, what bound its start, and which steps after it are over at once.
import { link } from "../observed/chain.ts";
import { now } from "../state/clock.ts";
import { drawTicks, Kind, distributionAt, nextDrawn } from "../state/draws.ts";
import { clearDue, setDue } from "../state/eventList.ts";
import { STILL, TIMED } from "../border/numbers.ts";
import { addressAt, operand } from "../state/operands.ts";
import { Process } from "../state/process.ts";
import { hasFlow, passNode } from "../observed/records.ts";
import { Resource, State } from "../state/resource.ts";
import { isWorking, showAhead } from "../observed/states.ts";
import { Step } from "../state/steps.ts";
import { endedFor, lastChanged, linkStopped } from "./stops.ts";

/** Numbers of the operation TIME, itself included. */
const TIME_SIZE = 7;

/** Until when steps without effect on others may be done ahead of the clock: what is observed at that tick must be complete. */
let horizon: f64 = -1;

/** Steps may be done ahead of the clock up to and including `tick`. */
export function mayLookAheadTo(tick: f64): void {
  horizon = tick;
}

/** The step lasts from now on, and what bound its start is kept; so are the steps after it that have no effect on others. */
export function passTime(process: Process, from: usize): void {
  let at = from;
  let start = now;
  let ticks = timeOf(process, at);
  const activity = operand(at, 4);
  if (hasFlow) passNode(process, ticks);
  else if (activity !== -1) {
    if (lastChanged !== null && process.headTime < now) linkStop(process);
    process.head = link(activity, now, process.head, process.tied);
    process.tied = 0;
  }
  while (operand(at, 6) === 1 && start + ticks <= horizon) {
    // The next step's code: STEP and its row, SHOW of 1 state with resource and state, then TIME.
    const shown = changetype<Resource>(addressAt(at, TIME_SIZE + 4));
    if (!showAhead(shown, changetype<State>(addressAt(at, TIME_SIZE + 5)), start + ticks)) break;
    start += ticks;
    process.step = changetype<Step>(addressAt(at, TIME_SIZE + 1));
    at += 4 * (TIME_SIZE + 6);
    ticks = timeOf(process, at);
    process.head = link(operand(at, 4), start, process.head, 0);
  }
  process.resumesAt = at + 4 * TIME_SIZE;
  // Of a step with a clock the time passes only while that resource works.
  if (operand(at, 5) === -1 || isWorking(changetype<Resource>(addressAt(at, 5)))) {
    process.phase = TIMED;
    setDue(process, start + ticks);
  } else {
    process.phase = STILL;
    process.remaining = ticks;
    clearDue(process);
  }
}

function timeOf(process: Process, at: usize): f64 {
  return operand(at, 3) === -1 ? timeDrawnNow(process, at) : nextDrawn(changetype<Kind>(addressAt(at, 3)));
}

function timeDrawnNow(process: Process, at: usize): f64 {
  const fixed = distributionAt(operand(at, 1) + operand(at, 2) * process.cargo).fixed;
  return fixed >= 0 ? fixed : drawTicks(process, process.step!.draw);
}

/** What lies between a step's latest completion and its start can only be a stop. */
function linkStop(process: Process): void {
  // What comes after a timetable alone has nothing before it that the stop could have interrupted.
  if (process.headTime < 0) return;
  linkStopped(process, endedFor(process.step!), process.headTime);
}

// What stops do to steps under way and to steps about to start.
import { link, startOf } from "../observed/chain.ts";
import { now } from "../state/clock.ts";
import { clearDue, setDue } from "../state/eventList.ts";
import { begin, reach } from "./onward.ts";
import { leave, placeOf } from "./lines.ts";
import { HELD, HOLDS, IDLE, RUNS_ON, TIMED } from "../border/numbers.ts";
import { endOfProcesses, firstProcess, Process, processCount } from "../state/process.ts";
import { logShown } from "../observed/records.ts";
import { Resource, resourceAt } from "../state/resource.ts";
import { setRunsOn } from "../observed/states.ts";
import { effectOf, listedAt, needAt, Step, stepAt } from "../state/steps.ts";
import { touchAll } from "../state/touched.ts";

/** The resource whose stop began or ended last; null before the first. */
export let lastChanged: Resource | null = null;
/** Stops in force. */
export let inForce = 0;
/** Processes that need nothing but the end of a stop, in the order in which they came. */
let heldBack = new StaticArray<usize>(0);
let heldBackCount = 0;

export function openStops(): void {
  heldBack = new StaticArray<usize>(processCount);
}

export function stop(resource: Resource, rule: i32): void {
  resource.stops++;
  inForce++;
  lastChanged = resource;
  setRunsOn(resource, false);
  for (let at = firstProcess; at < endOfProcesses; at += offsetof<Process>()) {
    const process = changetype<Process>(at);
    if (process.phase < TIMED || !occupies(process.step!, resource)) continue;
    const effect = effectOf(process.step!, rule);
    if (effect === HOLDS) hold(process);
    else if (effect !== RUNS_ON) breakOff(process, effect);
    else if (process.phase === TIMED) setRunsOn(resource, true);
  }
  logShown(resource);
  // The rotation skips a stopped process: another's turn may have come.
  touchAll();
}

export function release(resource: Resource): void {
  inForce--;
  if (--resource.stops > 0) return;
  lastChanged = resource;
  resource.stopEnded = now;
  setRunsOn(resource, false);
  for (let at = firstProcess; at < endOfProcesses; at += offsetof<Process>()) {
    const process = changetype<Process>(at);
    if (process.phase === HELD && isFree(process.step!)) resume(process, resource);
  }
  logShown(resource);
  beginFreed();
  touchAll();
}

/** One that begins may stop or release others: after each the line is looked through anew. */
function beginFreed(): void {
  for (let i = 0; i < heldBackCount;) {
    const process = changetype<Process>(unchecked(heldBack[i]));
    if (!isFree(process.step!)) i++;
    else {
      forget(process);
      process.phase = IDLE;
      begin(process);
      i = 0;
    }
  }
}

/** The resource whose stop kept this step from starting until now; the one that changed last where it kept it indirectly. */
export function endedFor(step: Step): Resource {
  for (let i = 0; i < step.gates; i++) {
    const resource = resourceAt(listedAt(step.gatesAt + i));
    if (resource.stopEnded === now) return resource;
  }
  return lastChanged!;
}

/** A step that ran on is over: the stop is seen until a step starts in spite of it. */
export function completed(step: Step): void {
  for (let i = 0; i < step.occupies; i++) {
    const resource = resourceAt(listedAt(step.occupiesAt + i));
    if (resource.stops === 0) continue;
    setRunsOn(resource, false);
    logShown(resource);
  }
}

export function holdBack(process: Process): void {
  unchecked((heldBack[heldBackCount++] = changetype<usize>(process)));
}

/** The process gives up what it waits for. */
export function leaveLine(process: Process): void {
  const step = process.step!;
  if (step.needs > 0) leave(placeOf(process, needAt(step.needsAt)), process);
  else forget(process);
}

function forget(process: Process): void {
  let at = 0;
  while (unchecked(heldBack[at]) !== changetype<usize>(process)) at++;
  heldBackCount--;
  for (; at < heldBackCount; at++) unchecked((heldBack[at] = heldBack[at + 1]));
}

function hold(process: Process): void {
  if (process.phase !== TIMED) return;
  process.remaining = process.due - now;
  process.pausedAt = now;
  process.phase = HELD;
  clearDue(process);
}

function breakOff(process: Process, row: i32): void {
  if (process.phase === HELD) linkPause(process, lastChanged!);
  clearDue(process);
  process.phase = IDLE;
  process.headTime = now;
  reach(process, stepAt(row));
}

/** The held step goes on; the stop is a segment of its own between its two parts. */
function resume(process: Process, resource: Resource): void {
  linkPause(process, resource);
  process.head = link(process.step!.activity, now, process.head, 0);
  process.phase = TIMED;
  setDue(process, now + process.remaining);
}

function linkPause(process: Process, resource: Resource): void {
  linkStopped(process, resource, process.pausedAt);
}

/** A stop that began before the observation counts from the beginning of the observation, where the node before it starts. */
export function linkStopped(process: Process, resource: Resource, since: f64): void {
  const head = process.head;
  const start = head === -1 ? since : max(since, startOf(head));
  process.head = link(resource.stoppedActivity, start, head, 0);
}

function occupies(step: Step, resource: Resource): bool {
  for (let i = 0; i < step.occupies; i++) if (listedAt(step.occupiesAt + i) === resource.number) return true;
  return false;
}

function isFree(step: Step): bool {
  for (let i = 0; i < step.occupies; i++) if (resourceAt(listedAt(step.occupiesAt + i)).stops !== 0) return false;
  return true;
}

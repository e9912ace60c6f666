// What stops do to steps under way and to steps about to start, and what resources at work do to clocks.
import { link } from "./chain.ts";
import { now } from "./clock.ts";
import { clearDue, due, setDue } from "./eventList.ts";
import { begin, reach } from "./follow.ts";
import { changedAll, leave, placeOf } from "./lines.ts";
import { longerWholes } from "./longer.ts";
import {
  ACTIVITY,
  CLOCK,
  EFFECT,
  GATES,
  GATES_AT,
  HELD,
  HOLDS,
  IDLE,
  NEEDS,
  NEEDS_AT,
  OCCUPIES,
  OCCUPIES_AT,
  RUNS_ON,
  STILL,
  TIMED,
} from "./numbers.ts";
import { count, head, headTime, pausedAt, phase, remaining, row } from "./processes.ts";
import { logShown } from "./records.ts";
import { setRunsOn, stopCount } from "./states.ts";
import { clocked, clockedAt, fact, firstState, lists, noReals, noWholes, stoppedActivity } from "./tables.ts";

/** The resource whose stop began or ended last; -1 before the first. */
export let lastChanged = -1;
/** Stops in force. */
export let inForce = 0;
/** Tick at which the last stop of each resource ended. */
let endedAt = noReals;
/** Processes that need nothing but the end of a stop, in the order in which they came. */
let heldBack = noWholes;
let heldBackCount = 0;
/** Those who begin when a stop ends, of all ends that are under way: one may lead to another. */
let freed = new StaticArray<i32>(16);
let freedCount = 0;

export function openStops(): void {
  endedAt = new StaticArray<f64>(firstState.length);
  endedAt.fill(-1);
  heldBack = new StaticArray<i32>(count);
}

export function stop(resource: i32, rule: i32): void {
  unchecked((stopCount[resource] = stopCount[resource] + 1));
  inForce++;
  lastChanged = resource;
  setRunsOn(resource, false);
  for (let process = 0; process < count; process++) {
    if (unchecked(phase[process]) < TIMED || !occupies(process, resource)) continue;
    const effect = fact(unchecked(row[process]), EFFECT + rule);
    if (effect === HOLDS) hold(process);
    else if (effect !== RUNS_ON) breakOff(process, effect);
    else if (unchecked(phase[process]) === TIMED) setRunsOn(resource, true);
  }
  logShown(resource);
  // The rotation skips a stopped process: another's turn may have come.
  changedAll();
}

export function release(resource: i32): void {
  inForce--;
  const stops = unchecked(stopCount[resource]) - 1;
  unchecked((stopCount[resource] = stops));
  if (stops > 0) return;
  lastChanged = resource;
  unchecked((endedAt[resource] = now));
  setRunsOn(resource, false);
  for (let process = 0; process < count; process++) {
    if (unchecked(phase[process]) === HELD && isFree(process)) resume(process, resource);
  }
  logShown(resource);
  beginFreed();
  changedAll();
}

function beginFreed(): void {
  const from = freedCount;
  for (let i = 0; i < heldBackCount; i++) {
    const process = unchecked(heldBack[i]);
    if (!isFree(process)) continue;
    if (freedCount === freed.length) freed = longerWholes(freed);
    unchecked((freed[freedCount++] = process));
  }
  const end = freedCount;
  for (let i = from; i < end; i++) {
    const process = unchecked(freed[i]);
    forget(process);
    unchecked((phase[process] = IDLE));
    begin(process);
  }
  freedCount = from;
}

/** The resource whose stop kept this step from starting until now; the one that changed last where it kept it indirectly. */
export function endedFor(step: i32): i32 {
  const at = fact(step, GATES_AT);
  for (let i = at; i < at + fact(step, GATES); i++) {
    const resource = unchecked(lists[i]);
    if (unchecked(endedAt[resource]) === now) return resource;
  }
  return lastChanged;
}

/** A step that ran on is over: the stop is seen until a step starts in spite of it. */
export function completed(process: i32): void {
  const step = unchecked(row[process]);
  const at = fact(step, OCCUPIES_AT);
  for (let i = at; i < at + fact(step, OCCUPIES); i++) {
    const resource = unchecked(lists[i]);
    if (unchecked(stopCount[resource]) === 0) continue;
    setRunsOn(resource, false);
    logShown(resource);
  }
}

export function holdBack(process: i32): void {
  unchecked((heldBack[heldBackCount++] = process));
}

/** The process gives up what it waits for. */
export function leaveLine(process: i32): void {
  const step = unchecked(row[process]);
  if (fact(step, NEEDS) > 0) leave(placeOf(process, fact(step, NEEDS_AT)), process);
  else forget(process);
}

function forget(process: i32): void {
  let at = 0;
  while (unchecked(heldBack[at]) !== process) at++;
  heldBackCount--;
  for (; at < heldBackCount; at++) unchecked((heldBack[at] = heldBack[at + 1]));
}

function hold(process: i32): void {
  if (unchecked(phase[process]) !== TIMED) return;
  unchecked((remaining[process] = due[process] - now));
  unchecked((pausedAt[process] = now));
  unchecked((phase[process] = HELD));
  clearDue(process);
}

function breakOff(process: i32, to: i32): void {
  if (unchecked(phase[process]) === HELD) linkStop(process, lastChanged);
  clearDue(process);
  unchecked((phase[process] = IDLE));
  unchecked((headTime[process] = now));
  reach(process, to);
}

/** The held step goes on; the stop is a segment of its own between its two parts. */
function resume(process: i32, resource: i32): void {
  linkStop(process, resource);
  unchecked((head[process] = link(fact(row[process], ACTIVITY), now, head[process], 0)));
  unchecked((phase[process] = TIMED));
  setDue(process, now + unchecked(remaining[process]));
}

function linkStop(process: i32, resource: i32): void {
  unchecked((head[process] = link(stoppedActivity[resource], pausedAt[process], head[process], 0)));
}

function occupies(process: i32, resource: i32): bool {
  const step = unchecked(row[process]);
  const at = fact(step, OCCUPIES_AT);
  for (let i = at; i < at + fact(step, OCCUPIES); i++) if (unchecked(lists[i]) === resource) return true;
  return false;
}

function isFree(process: i32): bool {
  const step = unchecked(row[process]);
  const at = fact(step, OCCUPIES_AT);
  for (let i = at; i < at + fact(step, OCCUPIES); i++) if (unchecked(stopCount[unchecked(lists[i])]) !== 0) return false;
  return true;
}

/** Clocks on working time stand still while their resource does not work. */
export function turnClocks(resource: i32, works: bool): void {
  for (let i = unchecked(clockedAt[resource]); i < unchecked(clockedAt[resource + 1]); i++) {
    const process = unchecked(clocked[i]);
    if (fact(unchecked(row[process]), CLOCK) !== resource) continue;
    if (works && unchecked(phase[process]) === STILL) {
      unchecked((phase[process] = TIMED));
      setDue(process, now + unchecked(remaining[process]));
    } else if (!works && unchecked(phase[process]) === TIMED) {
      unchecked((remaining[process] = due[process] - now));
      clearDue(process);
      unchecked((phase[process] = STILL));
    }
  }
}

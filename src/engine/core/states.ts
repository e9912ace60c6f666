// The one state of every resource at any time, and the ticks spent in each.
import { now } from "./clock.ts";
import { addJoint, moveJoint, openJoint, restartJoint, settleJoint } from "./jointTime.ts";
import { ACTIVE, CLASS, WORKING } from "./numbers.ts";
import { beginPeriod, openPeriods, pausePeriod, restartPeriods } from "./periods.ts";
import { turnClocks } from "./stops.ts";
import { clockedAt, firstState, meaning, noReals, noWholes, stoppedState } from "./tables.ts";

/** Ticks in each state since the observation began; up to date after `settle`. */
export let stateTicks = noReals;
/** The state shown now. */
export let shown = noWholes;
/** Stops that hold the resource at present. */
export let stopCount = noWholes;
/** The state that would be shown without a stop, and 1 where a step runs on and is shown in spite of it. */
let meant = noWholes;
let runsOn = noWholes;
/** Tick of each resource's last change of state. */
let since = noReals;

export function openStates(classes: i32): void {
  const resources = firstState.length;
  stateTicks = new StaticArray<f64>(meaning.length);
  shown = new StaticArray<i32>(resources);
  stopCount = new StaticArray<i32>(resources);
  meant = new StaticArray<i32>(resources);
  runsOn = new StaticArray<i32>(resources);
  since = new StaticArray<f64>(resources);
  openJoint(classes);
  openPeriods(resources);
  for (let resource = 0; resource < resources; resource++) {
    const state = unchecked(firstState[resource]);
    unchecked((shown[resource] = state));
    unchecked((meant[resource] = state));
    addJoint(unchecked(meaning[state]) / CLASS);
    if ((unchecked(meaning[state]) & ACTIVE) !== 0) beginPeriod(resource, 0);
  }
}

export function show(resource: i32, state: i32, isPhysics: bool): void {
  unchecked((meant[resource] = state));
  if (unchecked(stopCount[resource]) === 0) enter(resource, state);
  else setRunsOn(resource, isPhysics);
}

/** True where waiting in this state would be news. */
export function differs(resource: i32, state: i32): bool {
  return unchecked(meant[resource]) !== state || unchecked(runsOn[resource]) === 1;
}

/** Lets the step under way go on, and be seen, in spite of a stop; or ends that. */
export function setRunsOn(resource: i32, on: bool): void {
  unchecked((runsOn[resource] = on ? 1 : 0));
  const isStopped = !on && unchecked(stopCount[resource]) > 0;
  enter(resource, isStopped ? unchecked(stoppedState[resource]) : unchecked(meant[resource]));
}

export function isWorking(resource: i32): bool {
  return (unchecked(meaning[unchecked(shown[resource])]) & WORKING) !== 0;
}

/** Books the time since each resource's last change of state. */
export function settle(): void {
  settleJoint(now);
  for (let resource = 0; resource < shown.length; resource++) {
    const state = unchecked(shown[resource]);
    unchecked((stateTicks[state] = stateTicks[state] + (now - since[resource])));
    unchecked((since[resource] = now));
  }
}

/** To be called after `settle`. */
export function restartStates(): void {
  stateTicks.fill(0);
  restartJoint(now);
  restartPeriods(now);
}

function enter(resource: i32, state: i32): void {
  const before = unchecked(shown[resource]);
  if (state === before) return;
  unchecked((stateTicks[before] = stateTicks[before] + (now - since[resource])));
  unchecked((since[resource] = now));
  unchecked((shown[resource] = state));
  const is = unchecked(meaning[state]);
  const was = unchecked(meaning[before]);
  if (is !== was) turn(resource, is, was);
}

/** A state that means something else to clocks or to active periods has been entered. */
function turn(resource: i32, is: i32, was: i32): void {
  if (is / CLASS !== was / CLASS) moveJoint(was / CLASS, is / CLASS, now);
  const changes = is ^ was;
  if ((changes & ACTIVE) !== 0) {
    if ((is & ACTIVE) !== 0) beginPeriod(resource, now);
    else pausePeriod(resource, now);
  }
  const hasClocks = unchecked(clockedAt[resource]) < unchecked(clockedAt[resource + 1]);
  if ((changes & WORKING) !== 0 && hasClocks) turnClocks(resource, (is & WORKING) !== 0);
}

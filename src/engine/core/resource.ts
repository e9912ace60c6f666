// The one state of every resource at any time, and the ticks spent in each.
import { now } from "./clock.ts";
import { addJoint, moveJoint, openJoint, restartJoint, settleJoint } from "./jointTime.ts";
import { ACTIVE, CLASS, CLOCKED, MEANINGS, RESOURCES, WORKING } from "./numbers.ts";
import { beginPeriod, pausePeriod, restartPeriods } from "./periods.ts";
import { room, sectionOfWholes, wholeAt, wholesOf } from "./sections.ts";
import { turnClocks } from "./stops.ts";

@unmanaged
export class State {
  /** Ticks in it since the observation began; up to date after `settle`. */
  ticks: f64 = 0;
  number: i32 = 0;
  meaning: i32 = 0;
}

@unmanaged
export class Resource {
  /** Tick of its last change of state. */
  since: f64 = 0;
  /** Tick at which its present or last active period began, -1 where there is none to remember; and ended, Infinity while it goes on. */
  periodStart: f64 = 0;
  periodEnd: f64 = 0;
  /** Tick at which its last stop ended. */
  stopEnded: f64 = 0;
  number: i32 = 0;
  firstState: i32 = 0;
  /** The state shown now, and the one that would be shown without a stop. */
  shown: State | null = null;
  meant: State | null = null;
  /** Stops that hold it at present. */
  stops: i32 = 0;
  /** 1 where a step runs on and is shown in spite of a stop. */
  runsOn: i32 = 0;
  stoppedState: i32 = 0;
  stoppedActivity: i32 = 0;
  /** Processes whose time passes only while it works. */
  clocked: usize = 0;
  clockedCount: i32 = 0;
}

export let resourceCount = 0;
let resources: usize = 0;
let states: usize = 0;

/** `classes`: of states, for the time of all resources together. */
export function openResources(classes: i32): void {
  states = room(wholesOf(MEANINGS), offsetof<State>());
  for (let number = 0; number < wholesOf(MEANINGS); number++) {
    stateAt(number).number = number;
    stateAt(number).meaning = wholeAt(MEANINGS, number);
  }
  resourceCount = wholesOf(RESOURCES) / 4;
  resources = room(resourceCount, offsetof<Resource>());
  openJoint(classes);
  let clocked = sectionOfWholes(CLOCKED);
  for (let number = 0; number < resourceCount; number++) {
    const resource = resourceAt(number);
    const state = stateAt(wholeAt(RESOURCES, 4 * number));
    resource.number = number;
    resource.firstState = state.number;
    resource.shown = state;
    resource.meant = state;
    resource.stoppedState = wholeAt(RESOURCES, 4 * number + 1);
    resource.stoppedActivity = wholeAt(RESOURCES, 4 * number + 2);
    resource.clockedCount = wholeAt(RESOURCES, 4 * number + 3);
    resource.clocked = clocked;
    resource.stopEnded = -1;
    resource.periodStart = -1;
    resource.periodEnd = -1;
    clocked += <usize>resource.clockedCount << 2;
    addJoint(state.meaning / CLASS);
    if ((state.meaning & ACTIVE) !== 0) beginPeriod(resource, 0);
  }
}

export function resourceAt(number: i32): Resource {
  return changetype<Resource>(resources + <usize>number * offsetof<Resource>());
}

export function stateAt(number: i32): State {
  return changetype<State>(states + <usize>number * offsetof<State>());
}

export function show(resource: Resource, state: State, isPhysics: bool): void {
  resource.meant = state;
  if (resource.stops === 0) enter(resource, state);
  else setRunsOn(resource, isPhysics);
}

/** Shows the state from a later tick on; false where others would notice. */
export function showAhead(resource: Resource, state: State, tick: f64): bool {
  const before = resource.shown!;
  if (resource.stops !== 0 || before.meaning !== state.meaning) return false;
  before.ticks += tick - resource.since;
  resource.since = tick;
  resource.shown = state;
  resource.meant = state;
  return true;
}

/** True where waiting in this state would be news. */
export function differs(resource: Resource, state: State): bool {
  return resource.meant !== state || resource.runsOn === 1;
}

/** Lets the step under way go on, and be seen, in spite of a stop; or ends that. */
export function setRunsOn(resource: Resource, on: bool): void {
  resource.runsOn = on ? 1 : 0;
  enter(resource, !on && resource.stops > 0 ? stateAt(resource.stoppedState) : resource.meant!);
}

export function isWorking(resource: Resource): bool {
  return (resource.shown!.meaning & WORKING) !== 0;
}

/** Books the time since each resource's last change of state. */
export function settle(): void {
  settleJoint(now);
  for (let number = 0; number < resourceCount; number++) {
    const resource = resourceAt(number);
    resource.shown!.ticks += now - resource.since;
    resource.since = now;
  }
}

/** To be called after `settle`. */
export function restartStates(): void {
  for (let number = 0; number < wholesOf(MEANINGS); number++) stateAt(number).ticks = 0;
  restartJoint(now);
  restartPeriods(now);
}

function enter(resource: Resource, state: State): void {
  const before = resource.shown!;
  if (state === before) return;
  before.ticks += now - resource.since;
  resource.since = now;
  resource.shown = state;
  if (state.meaning !== before.meaning) turn(resource, state.meaning, before.meaning);
}

/** A state that means something else to clocks or to active periods has been entered. */
function turn(resource: Resource, is: i32, was: i32): void {
  if (is / CLASS !== was / CLASS) moveJoint(was / CLASS, is / CLASS, now);
  const changes = is ^ was;
  if ((changes & ACTIVE) !== 0) {
    if ((is & ACTIVE) !== 0) beginPeriod(resource, now);
    else pausePeriod(resource, now);
  }
  if ((changes & WORKING) !== 0 && resource.clockedCount > 0) turnClocks(resource, (is & WORKING) !== 0);
}

// The one state of every resource at any time, and the ticks spent in each.
import { now } from "../state/clock.ts";
import { turnClocks } from "../state/workClocks.ts";
import { addJoint, moveJoint, openJoint, restartJoint, settleJoint } from "./jointTime.ts";
import { ACTIVE, CAUSES, CLASS, MEANINGS, WORKING } from "../border/numbers.ts";
import { beginPeriod, pausePeriod, restartPeriods } from "./periods.ts";
import { Resource, resourceAt, resourceCount, State, stateAt } from "../state/resource.ts";
import { wholesOf } from "../state/sections.ts";
import { touchAll } from "../state/touched.ts";

/** `classes`: of states, for the time of all resources together. */
export function openStates(classes: i32): void {
  openJoint(classes);
  for (let number = 0; number < resourceCount; number++) {
    const resource = resourceAt(number);
    const meaning = resource.shown!.meaning;
    addJoint(classOf(meaning));
    if ((meaning & ACTIVE) !== 0) beginPeriod(resource, 0);
  }
}

export function show(resource: Resource, state: State, isPhysics: bool): void {
  if (resource.stops === 0) showFreely(resource, state);
  else {
    resource.meant = state;
    setRunsOn(resource, isPhysics);
  }
}

/** Shows a state of a resource that nothing stops. */
export function showFreely(resource: Resource, state: State): void {
  resource.meant = state;
  enter(resource, state);
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

/** A state that means something else to clocks, to active periods or to those that wait has been entered. */
function turn(resource: Resource, is: i32, was: i32): void {
  if (classOf(is) !== classOf(was)) moveJoint(classOf(was), classOf(is), now);
  const changes = is ^ was;
  if ((changes & ACTIVE) !== 0) {
    if ((is & ACTIVE) !== 0) beginPeriod(resource, now);
    else pausePeriod(resource, now);
  }
  if ((changes & CAUSES) !== 0) touchAll();
  if ((changes & WORKING) !== 0 && resource.clockedCount > 0) turnClocks(resource, (is & WORKING) !== 0);
}

/** A meaning is never below 0: to say so saves the division. */
function classOf(meaning: i32): i32 {
  return <u32>meaning / CLASS;
}

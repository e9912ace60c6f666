// The resources, their states, and what is kept of both while the system runs.
import { CLOCKED, MEANINGS, RESOURCES } from "../border/numbers.ts";
import { room, sectionOfWholes, wholeAt, wholesOf } from "./sections.ts";

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
  /** The process that does its work, -1 where there is none. */
  worker: i32 = 0;
  unused: i32 = 0;
}

export let resourceCount = 0;
let resources: usize = 0;
let states: usize = 0;

export function openResources(): void {
  states = room(wholesOf(MEANINGS), offsetof<State>());
  for (let number = 0; number < wholesOf(MEANINGS); number++) {
    stateAt(number).number = number;
    stateAt(number).meaning = wholeAt(MEANINGS, number);
  }
  resourceCount = wholesOf(RESOURCES) / 5;
  resources = room(resourceCount, offsetof<Resource>());
  let clocked = sectionOfWholes(CLOCKED);
  for (let number = 0; number < resourceCount; number++) {
    const resource = resourceAt(number);
    const state = stateAt(wholeAt(RESOURCES, 5 * number));
    resource.number = number;
    resource.firstState = state.number;
    resource.shown = state;
    resource.meant = state;
    resource.stoppedState = wholeAt(RESOURCES, 5 * number + 1);
    resource.stoppedActivity = wholeAt(RESOURCES, 5 * number + 2);
    resource.clockedCount = wholeAt(RESOURCES, 5 * number + 3);
    resource.worker = wholeAt(RESOURCES, 5 * number + 4);
    resource.clocked = clocked;
    resource.stopEnded = -1;
    resource.periodStart = -1;
    resource.periodEnd = -1;
    clocked += (<usize>resource.clockedCount) << 2;
  }
}

export function resourceAt(number: i32): Resource {
  return changetype<Resource>(resources + <usize>number * offsetof<Resource>());
}

export function stateAt(number: i32): State {
  return changetype<State>(states + <usize>number * offsetof<State>());
}

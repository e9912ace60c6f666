// What is written down on request while the system runs: the event log, and the graph of what each start needed.
import { activityOf, startOf } from "./chain.ts";
import { now } from "../state/clock.ts";
import { enter, openEventLog } from "./eventLog.ts";
import { needed, started } from "../border/host.ts";
import { Process } from "../state/process.ts";
import { Resource, resourceAt, resourceCount } from "../state/resource.ts";

export let hasLog = false;
export let hasFlow = false;
/** Nodes of the event graph so far. */
let flowNodes = 0;

export function openRecords(withLog: bool, withFlow: bool): void {
  hasLog = withLog;
  hasFlow = withFlow;
  if (!withLog) return;
  openEventLog();
  for (let number = 0; number < resourceCount; number++) logShown(resourceAt(number));
}

/** A process has entered a state, and what bound it. */
export function logStart(process: Process, resource: Resource): void {
  const bound = hasFlow ? -1 : process.head;
  const boundBy = bound === -1 ? -1 : activityOf(bound);
  const boundTime = bound === -1 ? 0 : startOf(bound);
  const state = resource.shown!.number;
  enter(resource.number, state, process.step!.number, process.cycle, process.helper, boundBy, boundTime);
}

/** A process waits in a state. */
export function logWait(process: Process, resource: Resource): void {
  enter(resource.number, resource.shown!.number, process.step!.number, process.cycle, -1, -1, 0);
}

/** A stop has begun or ended, or is seen again. */
export function logShown(resource: Resource): void {
  if (hasLog) enter(resource.number, resource.shown!.number, -1, -1, -1, -1, 0);
}

export function flowNeeded(before: i32): void {
  needed(flowNodes, before);
}

/** In a flow record every step that takes something is a node of its own, timed or not. */
export function passNode(process: Process, ticks: f64): void {
  const step = process.step!;
  const node = flowNodes++;
  if (step.needs === 0 && step.gates === 0) needed(node, process.head);
  started(node, step.number, now, ticks);
  process.head = node;
}

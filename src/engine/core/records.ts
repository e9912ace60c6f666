// What is written down on request while the system runs: the event log, and the graph of what each start needed.
import { activityOf, startOf } from "./chain.ts";
import { now } from "./clock.ts";
import { logged, needed, started } from "./host.ts";
import { GATES, NEEDS } from "./numbers.ts";
import { cycle, hand, head, row } from "./processes.ts";
import { shown } from "./states.ts";
import { fact } from "./tables.ts";

export let hasLog = false;
export let hasFlow = false;
/** Nodes of the event graph so far. */
export let flowNodes = 0;

export function openRecords(withLog: bool, withFlow: bool): void {
  hasLog = withLog;
  hasFlow = withFlow;
  flowNodes = 0;
}

/** A process has entered a state, and what bound it. */
export function logStart(process: i32, resource: i32): void {
  const bound = hasFlow ? -1 : unchecked(head[process]);
  const boundBy = bound === -1 ? -1 : activityOf(bound);
  const boundTime = bound === -1 ? 0 : startOf(bound);
  const state = unchecked(shown[resource]);
  logged(now, resource, state, unchecked(row[process]), unchecked(cycle[process]), unchecked(hand[process]), boundBy, boundTime);
}

/** A process waits in a state. */
export function logWait(process: i32, resource: i32): void {
  logged(now, resource, unchecked(shown[resource]), unchecked(row[process]), unchecked(cycle[process]), -1, -1, 0);
}

/** A stop has begun or ended, or is seen again. */
export function logShown(resource: i32): void {
  if (hasLog) logged(now, resource, unchecked(shown[resource]), -1, -1, -1, -1, 0);
}

export function flowNeeded(before: i32): void {
  needed(flowNodes, before);
}

/** In a flow record every step that takes something is a node of its own, timed or not. */
export function passNode(process: i32, ticks: f64): void {
  const step = unchecked(row[process]);
  const node = flowNodes++;
  if (fact(step, NEEDS) === 0 && fact(step, GATES) === 0) needed(node, unchecked(head[process]));
  started(node, step, now, ticks);
  unchecked((head[process] = node));
}

// What the host may ask of the core: to take in a compiled step table, to run it, and what came of it.
import { openAddresses } from "./loop/addresses.ts";
import * as chain from "./observed/chain.ts";
import { now } from "./state/clock.ts";
import { openDraws } from "./state/draws.ts";
import * as eventLog from "./observed/eventLog.ts";
import { firstDue, openEventList } from "./state/eventList.ts";
import * as follow from "./loop/follow.ts";
import { jointTicks } from "./observed/jointTime.ts";
import { forgetPeriods, periodAt, periodCount } from "./observed/periods.ts";
import { openProcesses, processAt } from "./state/process.ts";
import { openRecords } from "./observed/records.ts";
import { openOnward, reach as reachStep } from "./loop/onward.ts";
import { openResources, resourceAt, stateAt } from "./state/resource.ts";
import { reals, wholes } from "./state/sections.ts";
import { openSteps, stepAt } from "./state/steps.ts";
import { openStates, restartStates, settle } from "./observed/states.ts";
import { openStops } from "./loop/stops.ts";
import * as tally from "./observed/tally.ts";
import * as tokens from "./state/tokens.ts";

export { wholes, reals, settle, forgetPeriods };

/** To be called once, when all sections have been filled in. */
export function open(activities: i32, classes: i32, foldAt: i32, scanUpTo: i32, withLog: bool, withFlow: bool): void {
  openSteps();
  openOnward(follow.followOne);
  openProcesses();
  openEventList(scanUpTo);
  openDraws();
  tokens.openPlaces();
  chain.openChain(activities, foldAt);
  openResources();
  openStates(classes);
  openStops();
  tally.openTally();
  openRecords(withLog, withFlow);
  openAddresses();
}

/** Puts a token at a place now. */
export function put(place: i32, cargo: i32): void {
  tokens.put(tokens.placeAt(place), -1, cargo);
}

/** Lets a process begin with a step. */
export function reach(process: i32, row: i32): void {
  reachStep(processAt(process), stepAt(row));
}

export function runUntil(tick: f64): bool {
  return follow.runUntil(tick);
}

/** Forgets what was observed so far; the system goes on as it is. */
export function restart(): void {
  settle();
  restartStates();
  tally.restartTally();
  chain.restartChain(now);
}

export function clock(): f64 {
  return now;
}

/** Tick of the next event, Infinity where nothing is pending. */
export function nextTick(): f64 {
  const process = firstDue();
  return process === null ? Infinity : process.due;
}

// Why nothing can go on, 0 while it can; and the tick since when.

export function standstill(): i32 {
  return follow.standstill;
}

export function standsSince(): f64 {
  return follow.standsSince;
}

// Where a process stands.

export function phaseOf(process: i32): i32 {
  return processAt(process).phase;
}

export function rowOf(process: i32): i32 {
  return processAt(process).step!.number;
}

export function cargoOf(process: i32): i32 {
  return processAt(process).cargo;
}

export function helperOf(process: i32): i32 {
  return processAt(process).helper;
}

export function headOf(process: i32): i32 {
  return processAt(process).head;
}

export function tokensAt(place: i32): i32 {
  return tokens.placeAt(place).tokens;
}

export function stopsOf(resource: i32): i32 {
  return resourceAt(resource).stops;
}

// What was observed.

export function ticksIn(state: i32): f64 {
  return stateAt(state).ticks;
}

export function ticksTogetherIn(stateClass: i32): f64 {
  return unchecked(jointTicks[stateClass]);
}

export function countOf(counter: i32): f64 {
  return tally.counterAt(counter).count;
}

export function firstRiseOf(counter: i32): f64 {
  return tally.counterAt(counter).firstRise;
}

export function lastRiseOf(counter: i32): f64 {
  return tally.counterAt(counter).lastRise;
}

export function marks(): i32 {
  return tally.markCount;
}

/** Where they lie, each a tick, the number of a counter, and nothing. */
export function marksAt(): usize {
  return tally.firstMark();
}

export function forgetMarks(): void {
  tally.forgetMarks();
}

/** Entries of the event log since the host took them last, and where they lie. */
export function entries(): i32 {
  return eventLog.entryCount;
}

export function entriesAt(): usize {
  return eventLog.allEntries();
}

export function forgetEntries(): void {
  eventLog.forgetEntries();
}

// Active periods: those that are over, and the present or last one of each resource.

export function periods(): i32 {
  return periodCount;
}

export function periodResource(period: i32): i32 {
  return periodAt(period).resource;
}

export function periodStart(period: i32): f64 {
  return periodAt(period).start;
}

export function periodEnd(period: i32): f64 {
  return periodAt(period).end;
}

export function ownPeriodStart(resource: i32): f64 {
  return resourceAt(resource).periodStart;
}

export function ownPeriodEnd(resource: i32): f64 {
  return resourceAt(resource).periodEnd;
}

// The critical path.

export function keepChain(): void {
  follow.keepChain();
}

export function lastNode(): i32 {
  return chain.lastNode();
}

export function startOf(node: i32): f64 {
  return chain.startOf(node);
}

export function activityOf(node: i32): i32 {
  return chain.activityOf(node);
}

export function parentOf(node: i32): i32 {
  return chain.parentOf(node);
}

export function isTied(node: i32): bool {
  return chain.isTied(node);
}

/** Adds up the way back from `node`; returns where the ticks by activity lie, and after them the tied part of each. */
export function totalsOf(node: i32, end: f64): usize {
  chain.addTotals(node, end);
  return chain.totals;
}

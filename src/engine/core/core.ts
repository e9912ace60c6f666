// What the host may ask of the core: to take in a compiled step table, to run it, and where in its memory the results lie.
import { activityOf, addTotals, isTied, lastNode, openChain, parentOf, restartChain, startOf, totalTicks } from "./chain.ts";
import { now } from "./clock.ts";
import { due, firstDue, openEventList } from "./eventList.ts";
import { keepChain, reach, runUntil, standsSince, standstill } from "./follow.ts";
import { jointTicks } from "./jointTime.ts";
import { openLines } from "./lines.ts";
import { pastEnd, pastResource, pastStart, periodCount, periodEnd, periodStart } from "./periods.ts";
import { cargo, count, hand, head, openProcesses, phase, row } from "./processes.ts";
import { openRecords } from "./records.ts";
import { openStates, restartStates, settle, stateTicks, stopCount } from "./states.ts";
import { openStops } from "./stops.ts";
import { reals, rule, wholes } from "./tables.ts";
import { counts, firstRise, forgetMarks, lastRise, markCount, markCounters, markTicks, openTally, restartTally } from "./tally.ts";
import { openTokens, put, sizes } from "./tokens.ts";

export { wholes, reals, put, reach, runUntil, keepChain, settle, firstDue, forgetMarks };
export { addTotals, lastNode, startOf, activityOf, parentOf, isTied };

/** To be called once, when all sections have been filled in. */
export function open(activities: i32, classes: i32, foldAt: i32, withLog: bool, withFlow: bool): void {
  openProcesses();
  openEventList(count);
  openTokens(rule.length);
  openLines();
  openChain(activities, foldAt);
  openStates(classes);
  openStops();
  openTally();
  openRecords(withLog, withFlow);
}

/** Forgets what was observed so far; the system goes on as it is. */
export function restart(): void {
  settle();
  restartStates();
  restartTally();
  restartChain(now);
}

export function clock(): f64 {
  return now;
}

export function stuck(): i32 {
  return standstill;
}

export function stuckSince(): f64 {
  return standsSince;
}

export function pastPeriods(): i32 {
  return periodCount;
}

export function marks(): i32 {
  return markCount;
}

// Where arrays lie: they may move when the core runs.

export function dueAt(): usize {
  return changetype<usize>(due);
}

export function phaseAt(): usize {
  return changetype<usize>(phase);
}

export function rowAt(): usize {
  return changetype<usize>(row);
}

export function cargoAt(): usize {
  return changetype<usize>(cargo);
}

export function handAt(): usize {
  return changetype<usize>(hand);
}

export function headAt(): usize {
  return changetype<usize>(head);
}

export function sizesAt(): usize {
  return changetype<usize>(sizes);
}

export function stopCountAt(): usize {
  return changetype<usize>(stopCount);
}

export function stateTicksAt(): usize {
  return changetype<usize>(stateTicks);
}

export function jointTicksAt(): usize {
  return changetype<usize>(jointTicks);
}

export function countsAt(): usize {
  return changetype<usize>(counts);
}

export function firstRiseAt(): usize {
  return changetype<usize>(firstRise);
}

export function lastRiseAt(): usize {
  return changetype<usize>(lastRise);
}

export function markTicksAt(): usize {
  return changetype<usize>(markTicks);
}

export function markCountersAt(): usize {
  return changetype<usize>(markCounters);
}

export function periodStartAt(): usize {
  return changetype<usize>(periodStart);
}

export function periodEndAt(): usize {
  return changetype<usize>(periodEnd);
}

export function pastResourceAt(): usize {
  return changetype<usize>(pastResource);
}

export function pastStartAt(): usize {
  return changetype<usize>(pastStart);
}

export function pastEndAt(): usize {
  return changetype<usize>(pastEnd);
}

export function totalTicksAt(): usize {
  return changetype<usize>(totalTicks);
}

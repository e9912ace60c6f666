// What is counted: how often each counter rose, when first and last, and every rise of those that are marked.
import { now } from "../state/clock.ts";
import { MARKED } from "../border/numbers.ts";
import { pauseSoon } from "../state/pause.ts";
import { room, roomier, wholeAt, wholesOf } from "../state/sections.ts";

@unmanaged
export class Counter {
  /** Since the observation began. */
  count: f64 = 0;
  /** Ticks at which it first and last rose since then, -1 where it did not. */
  firstRise: f64 = 0;
  lastRise: f64 = 0;
  number: i32 = 0;
  /** 1 where every rise is kept. */
  marked: i32 = 0;
}

/** A rise of a marked counter; the host reads them where they lie, as `numbers.ts` says. */
@unmanaged
class Mark {
  tick: f64 = 0;
  counter: i32 = 0;
  unused: i32 = 0;
}

/** Marks after which the host should take them: few enough to stay in a processor's fast memory. */
const MANY_MARKS = 1024;

/** Since the host took them last. */
export let markCount = 0;
let capacity = 2 * MANY_MARKS;
let marks: usize = 0;
let counters: usize = 0;

export function openTally(): void {
  counters = room(wholesOf(MARKED), offsetof<Counter>());
  marks = room(capacity, offsetof<Mark>());
  for (let number = 0; number < wholesOf(MARKED); number++) {
    counterAt(number).number = number;
    counterAt(number).marked = wholeAt(MARKED, number);
  }
  restartTally();
}

export function counterAt(number: i32): Counter {
  return changetype<Counter>(counters + <usize>number * offsetof<Counter>());
}

/** Where the first of the marks lies. */
export function firstMark(): usize {
  return marks;
}

export function count(counter: Counter, amount: f64): void {
  counter.count += amount;
  if (counter.firstRise === -1) counter.firstRise = now;
  counter.lastRise = now;
  if (counter.marked === 1) addMark(counter.number);
}

function addMark(counter: i32): void {
  if (markCount >= MANY_MARKS) makeWay();
  const mark = changetype<Mark>(marks + <usize>markCount * offsetof<Mark>());
  markCount++;
  mark.tick = now;
  mark.counter = counter;
}

/** The host can take them between two instants only: until then there must be room. */
function makeWay(): void {
  pauseSoon();
  if (markCount < capacity) return;
  marks = roomier(marks, capacity, offsetof<Mark>());
  capacity *= 2;
}

export function restartTally(): void {
  for (let number = 0; number < wholesOf(MARKED); number++) {
    const counter = counterAt(number);
    counter.count = 0;
    counter.firstRise = -1;
    counter.lastRise = -1;
  }
  forgetMarks();
}

export function forgetMarks(): void {
  markCount = 0;
}

// What is counted: how often each counter rose, when first and last, and every rise of those that are marked.
import { now } from "./clock.ts";
import { longerReals, longerWholes } from "./longer.ts";
import { amounts, marked, noReals } from "./tables.ts";

/** Each counter since the observation began. */
export let counts = noReals;
/** Tick at which each counter first and last rose since then, -1 where it did not. */
export let firstRise = noReals;
export let lastRise = noReals;
/** Ticks at which a marked counter was raised, and which one, since the host took them last. */
export let markCount = 0;
export let markTicks = new StaticArray<f64>(1024);
export let markCounters = new StaticArray<i32>(1024);

/** Marks after which the host should take them. */
const MANY_MARKS = 16384;

export function openTally(): void {
  counts = new StaticArray<f64>(marked.length);
  firstRise = new StaticArray<f64>(marked.length);
  lastRise = new StaticArray<f64>(marked.length);
  restartTally();
}

export function count(counter: i32, amount: i32): void {
  unchecked((counts[counter] = counts[counter] + amounts[amount]));
  if (unchecked(firstRise[counter]) === -1) unchecked((firstRise[counter] = now));
  unchecked((lastRise[counter] = now));
  if (unchecked(marked[counter]) === 0) return;
  if (markCount === markTicks.length) {
    markTicks = longerReals(markTicks);
    markCounters = longerWholes(markCounters);
  }
  unchecked((markTicks[markCount] = now));
  unchecked((markCounters[markCount++] = counter));
}

export function restartTally(): void {
  counts.fill(0);
  firstRise.fill(-1);
  lastRise.fill(-1);
  forgetMarks();
}

export function forgetMarks(): void {
  markCount = 0;
}

export function hasManyMarks(): bool {
  return markCount >= MANY_MARKS;
}

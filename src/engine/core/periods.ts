// Active periods: which resource has been at work longest without a pause, at each instant of a run.
import { longerReals, longerWholes } from "./longer.ts";
import { noReals, noWholes } from "./tables.ts";

// Told of every change between work and pause, in order of time. A pause of no length does not end a period. A period that lies
// within another one can never be the longest and is forgotten at once, so that memory does not grow with the run as long as
// somebody is at work without a pause.

/** Tick at which each resource's present or last period began, -1 where there is none to remember. */
export let periodStart = noReals;
/** Tick at which that period ended; Infinity while it goes on. */
export let periodEnd = noReals;
/** Periods that are over. */
export let periodCount = 0;
export let pastResource = new StaticArray<i32>(16);
export let pastStart = new StaticArray<f64>(16);
export let pastEnd = new StaticArray<f64>(16);

export function openPeriods(resources: i32): void {
  periodStart = new StaticArray<f64>(resources);
  periodEnd = new StaticArray<f64>(resources);
  periodStart.fill(-1);
  periodEnd.fill(-1);
  periodCount = 0;
}

export function beginPeriod(resource: i32, tick: f64): void {
  const isPaused = unchecked(periodEnd[resource]) < tick;
  const start = unchecked(periodStart[resource]);
  if (start >= 0 && isPaused) remember(resource);
  if (start < 0 || isPaused) unchecked((periodStart[resource] = tick));
  unchecked((periodEnd[resource] = Infinity));
}

export function pausePeriod(resource: i32, tick: f64): void {
  if (unchecked(periodEnd[resource]) === Infinity) unchecked((periodEnd[resource] = tick));
}

/** Forgets the past; periods that go on begin anew now. */
export function restartPeriods(tick: f64): void {
  periodCount = 0;
  for (let resource = 0; resource < periodStart.length; resource++) {
    unchecked((periodStart[resource] = periodEnd[resource] >= tick ? tick : -1));
  }
}

function remember(resource: i32): void {
  const start = unchecked(periodStart[resource]);
  const end = unchecked(periodEnd[resource]);
  if (end === start) return;
  for (let other = 0; other < periodStart.length; other++) {
    const otherStart = unchecked(periodStart[other]);
    const otherEnd = unchecked(periodEnd[other]);
    const covers = other !== resource && otherStart >= 0 && otherStart <= start && otherEnd >= end;
    const isSame = otherStart === start && otherEnd === end;
    if (covers && (!isSame || other < resource)) return;
  }
  if (periodCount === pastResource.length) {
    pastResource = longerWholes(pastResource);
    pastStart = longerReals(pastStart);
    pastEnd = longerReals(pastEnd);
  }
  unchecked((pastResource[periodCount] = resource));
  unchecked((pastStart[periodCount] = start));
  unchecked((pastEnd[periodCount++] = end));
}

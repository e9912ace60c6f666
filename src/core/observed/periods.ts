// Active periods: which resource has been at work longest without a pause, at each instant of a run.
import { MANY_PERIODS } from "../border/numbers.ts";
import { pauseSoon } from "../state/pause.ts";
import { resourceAt, resourceCount, Resource } from "../state/resource.ts";
import { room, roomier } from "../state/sections.ts";

// Called at every change between work and pause, in order of time. A pause of no length does not end a period. A period that lies
// within another one can never be the longest and is forgotten at once; the host takes the others and keeps what is not decided.

/** A period that is over. */
@unmanaged
class Period {
  start: f64 = 0;
  end: f64 = 0;
  resource: i32 = 0;
  unused: i32 = 0;
}

export let periodCount = 0;
let capacity = 16;
let periods: usize = 0;

export function periodAt(number: i32): Period {
  return changetype<Period>(periods + <usize>number * offsetof<Period>());
}

export function forgetPeriods(): void {
  periodCount = 0;
}

export function beginPeriod(resource: Resource, tick: f64): void {
  const isPaused = resource.periodEnd < tick;
  if (resource.periodStart >= 0 && isPaused) remember(resource);
  if (resource.periodStart < 0 || isPaused) resource.periodStart = tick;
  resource.periodEnd = Infinity;
}

export function pausePeriod(resource: Resource, tick: f64): void {
  if (resource.periodEnd === Infinity) resource.periodEnd = tick;
}

/** Forgets the past; periods that go on begin anew now. */
export function restartPeriods(tick: f64): void {
  forgetPeriods();
  for (let number = 0; number < resourceCount; number++) {
    const resource = resourceAt(number);
    resource.periodStart = resource.periodEnd >= tick ? tick : -1;
  }
}

function remember(resource: Resource): void {
  if (resource.periodEnd === resource.periodStart) return;
  for (let number = 0; number < resourceCount; number++) if (covers(resourceAt(number), resource)) return;
  if (periodCount >= MANY_PERIODS) pauseSoon();
  if (periods === 0) periods = room(capacity, offsetof<Period>());
  if (periodCount === capacity) {
    periods = roomier(periods, capacity, offsetof<Period>());
    capacity *= 2;
  }
  const period = periodAt(periodCount++);
  period.start = resource.periodStart;
  period.end = resource.periodEnd;
  period.resource = resource.number;
}

/** Of two that are the same the first resource keeps its own. */
function covers(other: Resource, resource: Resource): bool {
  if (other === resource || other.periodStart < 0) return false;
  if (other.periodStart > resource.periodStart || other.periodEnd < resource.periodEnd) return false;
  const isSame = other.periodStart === resource.periodStart && other.periodEnd === resource.periodEnd;
  return !isSame || other.number < resource.number;
}

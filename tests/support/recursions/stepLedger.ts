// Records the steps of a recursion and counts the occurrences of each step.
import type { Durations, StepInterval } from "./shotRecursion.ts";

/** More shots than this at one instant mean that every step of the circuit has zero duration. */
const mostShotsAtOnce = 10_000;

export class StepLedger {
  readonly #stations: readonly string[];
  readonly #durations: Durations;
  readonly #until: number;
  readonly #steps: StepInterval[] = [];
  readonly #counts = new Map<string, number>();
  #shotsAtOnce = 0;
  #before = 0;

  constructor(stations: readonly string[], durations: Durations, until: number) {
    if (stations.length === 0) throw new RangeError("the cell has no station");
    if (!Number.isFinite(until)) throw new RangeError("the recursion needs an end");
    this.#stations = stations;
    this.#durations = durations;
    this.#until = until;
  }

  /** True if a shot that begins at this instant belongs to the run; instants must come in order. */
  includes(instant: number): boolean {
    if (instant < this.#before) throw new RangeError(`${instant} comes after ${this.#before}`);
    this.#shotsAtOnce = instant === this.#before ? this.#shotsAtOnce + 1 : 1;
    this.#before = instant;
    if (this.#shotsAtOnce > mostShotsAtOnce) throw new RangeError(`time does not advance at ${instant}`);
    return instant < this.#until;
  }

  /** The duration of the next occurrence of a step, without scheduling it. */
  ticksOfNext(resource: string, step: string, station: number): number {
    const ticks = this.#durations(resource, step, this.#occurrence(resource, step), station);
    if (!Number.isInteger(ticks) || ticks < 0) throw new RangeError(`${resource} ${step} takes ${ticks} ticks`);
    return ticks;
  }

  /** Schedules the next occurrence of a step, which ends at `held` at the earliest; returns its end. */
  schedule(resource: string, step: string, station: number, start: number, held = 0): number {
    const end = Math.max(start + this.ticksOfNext(resource, step, station), held);
    this.record(resource, step, station, start, end);
    return end;
  }

  /** Records a step whose start and end are known. */
  record(resource: string, step: string, station: number, start: number, end: number): void {
    const occurrence = this.#occurrence(resource, step);
    this.#counts.set(keyOf(resource, step), occurrence + 1);
    this.#steps.push({ resource, step, station: this.#stations[station] ?? "", occurrence, start, end });
  }

  /** All steps that start before the end of the run, by start, then resource, then step. */
  inOrder(): StepInterval[] {
    return this.#steps.filter((step) => step.start < this.#until).toSorted(byStart);
  }

  #occurrence(resource: string, step: string): number {
    return this.#counts.get(keyOf(resource, step)) ?? 0;
  }
}

/** The station that has been ready longest; the scan keeps the earlier one among equals. */
export function earliestOf(ready: readonly number[]): number {
  return ready.indexOf(Math.min(...ready));
}

function keyOf(resource: string, step: string): string {
  return JSON.stringify([resource, step]);
}

/** Steps of zero duration may share start, resource and step; then the occurrence decides. */
function byStart(one: StepInterval, other: StepInterval): number {
  return (
    one.start - other.start ||
    compareText(one.resource, other.resource) ||
    compareText(one.step, other.step) ||
    one.occurrence - other.occurrence
  );
}

function compareText(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}

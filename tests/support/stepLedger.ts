/**
 * Where a recursion writes down the steps of a cell: it counts each resource's own occurrences and lays end to start.
 */
import type { Durations, StepInterval } from "./shotRecursion.ts";

/** More shots than this at one instant means that time stands still: every step of the circuit takes nothing. */
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

  /** Whether a shot that begins at this instant still belongs to the run; instants must come in order. */
  includes(instant: number): boolean {
    if (instant < this.#before) throw new RangeError(`${instant} comes after ${this.#before}`);
    this.#shotsAtOnce = instant === this.#before ? this.#shotsAtOnce + 1 : 1;
    this.#before = instant;
    if (this.#shotsAtOnce > mostShotsAtOnce) throw new RangeError(`time stands still at ${instant}`);
    return instant < this.#until;
  }

  /** What the next occurrence of a step will take, without laying it. */
  ticksOfNext(resource: string, step: string, station: number): number {
    const ticks = this.#durations(resource, step, this.#occurrence(resource, step), station);
    if (!Number.isInteger(ticks) || ticks < 0) throw new RangeError(`${resource} ${step} takes ${ticks} ticks`);
    return ticks;
  }

  /** Lays the next occurrence of a step, `held` at its end if what it works on is not over by then; returns its end. */
  lay(resource: string, step: string, station: number, start: number, held = 0): number {
    const end = Math.max(start + this.ticksOfNext(resource, step, station), held);
    this.note(resource, step, station, start, end);
    return end;
  }

  /** Writes down a step whose two ends are known. */
  note(resource: string, step: string, station: number, start: number, end: number): void {
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

/** Steps without duration can share start, resource and step; then the occurrence decides. */
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

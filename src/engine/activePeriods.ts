// Active periods: which resource has been at work longest without a pause, at each instant of a run.

/** Ticks during which a resource's active period is the longest of all: alone, and while it hands over to the next one. */
export interface LongestActive {
  readonly sole: number;
  readonly shifting: number;
}

interface Period {
  readonly resource: number;
  readonly start: number;
  readonly end: number;
}

/**
 * Told of every change between work and pause, in order of time. A pause of no length does not end a period.
 *
 * A period that lies within another one can never be the longest and is forgotten at once, so that memory does not grow with
 * the run as long as somebody is at work without a pause.
 *
 * Source: Roser, Nakano and Tanaka, "A practical bottleneck detection method", Proc. Winter Simulation Conference 2001, and
 * "Shifting bottleneck detection", 2002: the momentary bottleneck has the longest active period; it shifts while the
 * periods of two successive bottlenecks overlap (from memory).
 */
export class ActivePeriods {
  /** Tick at which each resource's present or last period began, -1 where there is none to remember. */
  readonly #start: Float64Array;
  /** Tick at which that period ended; Infinity while it goes on. */
  readonly #end: Float64Array;
  #periods: Period[] = [];
  readonly #clock: Float64Array;

  /** The clock shows the present tick. */
  constructor(resources: number, clock: Float64Array) {
    this.#clock = clock;
    this.#start = new Float64Array(resources).fill(-1);
    this.#end = new Float64Array(resources).fill(-1);
  }

  begin(resource: number): void {
    const tick = this.#clock[0]!;
    const isPaused = this.#end[resource]! < tick;
    if (this.#start[resource]! >= 0 && isPaused) this.#keep(resource);
    if (this.#start[resource]! < 0 || isPaused) this.#start[resource] = tick;
    this.#end[resource] = Infinity;
  }

  pause(resource: number): void {
    if (this.#end[resource] === Infinity) this.#end[resource] = this.#clock[0]!;
  }

  /** Forgets the past; periods that go on begin anew now. */
  restart(tick: number): void {
    this.#periods = [];
    for (let resource = 0; resource < this.#start.length; resource++) {
      const goesOn = this.#end[resource]! >= tick;
      this.#start[resource] = goesOn ? tick : -1;
    }
  }

  /** By resource; where nobody is active at an instant it belongs to no one. */
  longest(tick: number): LongestActive[] {
    const goingOn = Array.from(this.#start, (start, resource) => ({
      resource,
      start,
      end: Math.min(tick, this.#end[resource]!),
    }));
    const all = [...this.#periods, ...goingOn.filter((period) => period.start >= 0 && period.end > period.start)];
    const sole = new Float64Array(this.#start.length);
    const shifting = new Float64Array(this.#start.length);
    const chain = bottlenecks(all);
    chain.forEach((period, i) => {
      const before = chain[i - 1];
      const after = chain[i + 1];
      const from = Math.max(period.start, before?.end ?? -Infinity);
      const until = Math.min(period.end, after?.start ?? Infinity);
      sole[period.resource]! += Math.max(0, until - from);
      const overlap = after ? Math.max(0, period.end - Math.max(after.start, before?.end ?? -Infinity)) : 0;
      if (!after || overlap === 0) return;
      shifting[period.resource]! += overlap / 2;
      shifting[after.resource]! += overlap / 2;
    });
    return Array.from(sole, (ticks, resource) => ({ sole: ticks, shifting: shifting[resource]! }));
  }

  #keep(resource: number): void {
    const start = this.#start[resource]!;
    const end = this.#end[resource]!;
    if (end === start) return;
    for (let other = 0; other < this.#start.length; other++) {
      const covers =
        other !== resource && this.#start[other]! >= 0 && this.#start[other]! <= start && this.#end[other]! >= end;
      const isSame = this.#start[other] === start && this.#end[other] === end;
      if (covers && (!isSame || other < resource)) return;
    }
    this.#periods.push({ resource, start, end });
  }
}

/** From the longest period at the beginning, each time to the longest that goes on when it ends, or to the next that begins. */
function bottlenecks(periods: readonly Period[]): readonly Period[] {
  const sorted = periods.toSorted((a, b) => a.start - b.start || b.end - a.end || a.resource - b.resource);
  const chain: Period[] = [];
  for (let i = 0; i < sorted.length;) {
    const last = chain.at(-1);
    if (last && sorted[i]!.end <= last.end) {
      i++;
      continue;
    }
    let best = i;
    const reach = last && sorted[i]!.start <= last.end ? last.end : sorted[i]!.start;
    for (let next = i; next < sorted.length && sorted[next]!.start <= reach; next++) {
      if (sorted[next]!.end - sorted[next]!.start > sorted[best]!.end - sorted[best]!.start) best = next;
    }
    chain.push(sorted[best]!);
    i = best + 1;
  }
  return chain;
}

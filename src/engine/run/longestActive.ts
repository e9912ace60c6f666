// Which resource has been at work longest without a pause, at each instant of a run: read from everybody's active periods.

/** Ticks during which a resource's active period is the longest of all: alone, and while the next one takes over. */
export interface LongestActive {
  readonly sole: number;
  readonly shifting: number;
}

/** Time in which a resource was at work without a pause; the end of one that may go on is Infinity. */
export interface ActivePeriod {
  readonly resource: number;
  readonly start: number;
  readonly end: number;
}

const inOrder = (a: ActivePeriod, b: ActivePeriod): number =>
  a.start - b.start || b.end - a.end || a.resource - b.resource;

/**
 * Takes the periods while the run goes on and forgets those that are decided, so that a long run needs no more memory than a
 * short one. Instants without an active resource belong to none.
 *
 * Source: Roser, Nakano and Tanaka, "A practical bottleneck detection method", Proc. Winter Simulation Conference 2001, and
 * "Shifting bottleneck detection", 2002: the momentary bottleneck has the longest active period; it shifts while the
 * periods of two successive bottlenecks overlap (from memory).
 */
export class LongestPeriods {
  #sole: Float64Array;
  #shifting: Float64Array;
  /** Periods that are over and not decided. */
  #open: readonly ActivePeriod[] = [];
  /** The last bottleneck, and the end of the one before it. */
  #last: ActivePeriod | undefined;
  #endBefore = -Infinity;

  constructor(resources: number) {
    this.#sole = new Float64Array(resources);
    this.#shifting = new Float64Array(resources);
  }

  /** `over` are those that came to their end since the last time, `present` the last one of each resource. */
  take(over: readonly ActivePeriod[], present: readonly ActivePeriod[], now: number): void {
    const isOver = ({ end }: ActivePeriod): boolean => end < now;
    const decidedUntil = present.reduce((least, each) => (isOver(each) ? least : Math.min(least, each.start)), now);
    this.#open = [...this.#open, ...over];
    // A present one that is over comes again later, unless it lies within another one.
    this.#advance([...this.#open, ...present.filter(isOver)], decidedUntil);
    this.#open = this.#open.filter(({ end }) => end > this.#lastEnd);
  }

  /** By resource, as if the run ended now. */
  totals(over: readonly ActivePeriod[], present: readonly ActivePeriod[], now: number): LongestActive[] {
    const ended = new LongestPeriods(0);
    ended.#sole = this.#sole.slice();
    ended.#shifting = this.#shifting.slice();
    ended.#last = this.#last;
    ended.#endBefore = this.#endBefore;
    const cut = present.map((period) => ({ ...period, end: Math.min(now, period.end) }));
    ended.#advance([...this.#open, ...over, ...cut.filter(({ start, end }) => end > start)], Infinity);
    if (ended.#last) ended.#book(ended.#last, undefined);
    return Array.from(ended.#sole, (ticks, resource) => ({ sole: ticks, shifting: ended.#shifting[resource]! }));
  }

  get #lastEnd(): number {
    return this.#last?.end ?? -Infinity;
  }

  /** From each bottleneck to the longest period that goes on when it ends, or to the next that begins; before `until`. */
  #advance(periods: readonly ActivePeriod[], until: number): void {
    const sorted = periods.toSorted(inOrder);
    for (let i = 0; i < sorted.length;) {
      if (sorted[i]!.end <= this.#lastEnd) {
        i++;
        continue;
      }
      const reach = Math.max(sorted[i]!.start, this.#lastEnd);
      if (reach >= until) return;
      let best = i;
      for (let next = i; next < sorted.length && sorted[next]!.start <= reach; next++) {
        if (sorted[next]!.end - sorted[next]!.start > sorted[best]!.end - sorted[best]!.start) best = next;
      }
      this.#follow(sorted[best]!);
      i = best + 1;
    }
  }

  #follow(period: ActivePeriod): void {
    const last = this.#last;
    if (last) {
      this.#book(last, period);
      this.#endBefore = last.end;
    }
    this.#last = period;
  }

  #book({ resource, start, end }: ActivePeriod, after: ActivePeriod | undefined): void {
    const from = Math.max(start, this.#endBefore);
    this.#sole[resource]! += Math.max(0, Math.min(end, after?.start ?? Infinity) - from);
    if (!after) return;
    const overlap = Math.max(0, end - Math.max(after.start, this.#endBefore));
    this.#shifting[resource]! += overlap / 2;
    this.#shifting[after.resource]! += overlap / 2;
  }
}

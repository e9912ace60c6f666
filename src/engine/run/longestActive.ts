// Which resource has been at work longest without a pause, at each instant of a run: read from everybody's active periods.

/** Ticks during which a resource's active period is the longest of all: alone, and while the next one takes over. */
export interface LongestActive {
  readonly sole: number;
  readonly shifting: number;
}

/** Time in which a resource was at work without a pause. */
export interface ActivePeriod {
  readonly resource: number;
  readonly start: number;
  readonly end: number;
}

/**
 * By resource; instants without an active resource belong to none.
 *
 * Source: Roser, Nakano and Tanaka, "A practical bottleneck detection method", Proc. Winter Simulation Conference 2001, and
 * "Shifting bottleneck detection", 2002: the momentary bottleneck has the longest active period; it shifts while the
 * periods of two successive bottlenecks overlap (from memory).
 */
export function longestActive(resources: number, periods: readonly ActivePeriod[]): LongestActive[] {
  const sole = new Float64Array(resources);
  const shifting = new Float64Array(resources);
  const chain = bottlenecks(periods);
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

/** From the longest period at the beginning, each time to the longest that goes on when it ends, or to the next that begins. */
function bottlenecks(periods: readonly ActivePeriod[]): readonly ActivePeriod[] {
  const sorted = periods.toSorted((a, b) => a.start - b.start || b.end - a.end || a.resource - b.resource);
  const chain: ActivePeriod[] = [];
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

// The draws that the core asks for one by one: exact quantiles, or the next value of a trace.
import type { Sampler } from "#engine/distributions/sampler.ts";

/** A run has its own places in the traces, since many runs share a program. After its last value a trace begins anew. */
export function exactDraws(samplers: readonly Sampler[]): (distribution: number, u: number) => number {
  const taken = new Map<Sampler, number>();
  return (distribution, u) => {
    const sampler = samplers[distribution]!;
    const { sequence } = sampler;
    if (sequence === undefined) return sampler.exactTicks(u);
    const place = taken.get(sampler) ?? 0;
    taken.set(sampler, (place + 1) % sequence.length);
    return sequence[place]!;
  };
}

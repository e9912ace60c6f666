// The two-station cell without events, shot by shot from the readiness of mold and screw: the lower bound of every simulation.
import type { KernelCell, ShotTicks } from "./kernelCell.ts";

/** Holds only for this cell: under first-ready the station that is ready first always gets the next shot. */
export function runRecursion({ stations, toPort, toNeutral, untilTick }: KernelCell): ShotTicks {
  const cycles = stations.map(({ steps, recharge }) => [toNeutral, recharge, toPort, ...steps]);
  const ticks = new Float64Array(cycles[0]!.length);
  const shots: ShotTicks = [[], []];
  const ready = new Float64Array(2);
  let full = 0;
  for (;;) {
    const k = ready[0]! <= ready[1]! ? 0 : 1;
    const cycle = cycles[k]!;
    for (let i = 0; i < cycle.length; i++) ticks[i] = cycle[i]!.sampler.ticks(cycle[i]!.stream());
    const delivered = Math.max(ready[k]!, full) + ticks[2]! + ticks[3]!;
    if (delivered > untilTick) return shots;
    shots[k].push(delivered);
    full = delivered + ticks[0]! + ticks[1]!;
    ready[k] = delivered;
    for (let i = 4; i < ticks.length; i++) ready[k] += ticks[i]!;
  }
}

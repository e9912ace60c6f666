// The mean time of every step, as the cell's own plan has it.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import { BEYOND } from "#cell/commonAccumulator.ts";
import { PLASTICATOR, stationServed } from "#cell/cycleNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { calmOf, planOf } from "./planOf.ts";

export interface StepTime {
  readonly resource: string;
  readonly step: string;
  /** The station whose cycle it belongs to; of a recharge the one whose shot it replaces; null where all stations share it. */
  readonly station: string | null;
  /** Mean of the sampled law, clamped as it is. */
  readonly seconds: number;
}

/** In the order of the cycle tables: plasticator, valve, then each station. */
export function stepTimes(scenario: Scenario): readonly StepTime[] {
  const names = scenario.stations.map(({ name }) => name);
  const { program } = planOf(calmOf(scenario));
  return program.rows.flatMap((row) => {
    const activity = program.activities[row.activity];
    if (!row.draw || !activity) return [];
    const { resource, step, process } = activity;
    const seconds = row.draw.samplers.map((sampler) => sampler.meanTicks / TICKS_PER_SECOND);
    // What happens once, at a cold start, is no step of the cycle.
    if (process === PLASTICATOR && step !== "recharge" && step.startsWith("fill ") && step !== BEYOND) return [];
    if (process === PLASTICATOR) {
      // A parison grows for the mold after the one that caught the last.
      const before = scenario.delivery.kind === "continuous" ? names.length - 1 : 0;
      return scenario.stations.map(({ name }, k) => ({
        resource,
        step,
        station: name,
        seconds: seconds[(k + before) % names.length] ?? 0,
      }));
    }
    const served = stationServed(process, names);
    return [
      {
        resource,
        step,
        station: served ?? null,
        seconds: seconds[scenario.stations.findIndex(({ name }) => name === served)] ?? seconds[0] ?? 0,
      },
    ];
  });
}

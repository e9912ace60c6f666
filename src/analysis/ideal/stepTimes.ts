// The mean time of every step, as the cell's own plan has it.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { BEYOND } from "#cell/delivery/commonAccumulator.ts";
import { PLASTICATOR, stationServed } from "#cell/words/cycleNames.ts";
import { agingFor } from "#cell/layers/age.ts";
import { isWalk } from "#cell/words/takeawayWords.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
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
  // Places of a server are alike, and parts ripen beside it: the work of its first place stands for all.
  const groups = takeawayGroups(scenario);
  const apart = new Set(groups.flatMap(({ places }) => places.slice(1)));
  return program.rows.flatMap((row) => {
    const activity = program.activities[row.activity];
    if (!row.draw || !activity) return [];
    const { resource, step, process } = activity;
    if (apart.has(process) || agingFor(process) !== undefined) return [];
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
    // A way takes nothing from where one already is, and from everywhere else the same.
    if (isWalk(step)) return [{ resource, step, station: served ?? null, seconds: Math.max(...seconds) }];
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

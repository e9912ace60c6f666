// The mean time of every step, from the plan of the cell.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { hasRole, type CellProcess } from "#cell/words/cellTable.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { undisturbedOf, planOf } from "./planOf.ts";

export interface StepTime {
  readonly resource: string;
  readonly step: string;
  readonly role: StepRole;
  /** The station of the cycle; for a recharge the station whose shot it replaces; null where all stations share the step. */
  readonly station: string | null;
  /** Mean of the sampled distribution, with its limits. */
  readonly seconds: number;
}

/** In the order of the cycle tables: plasticator, valve, then each station. */
export function stepTimes(scenario: Scenario): readonly StepTime[] {
  const names = scenario.stations.map(({ name }) => name);
  const { program, processes, steps, activities } = planOf(undisturbedOf(scenario));
  // Places of a server are equal: the work of its first place stands for all.
  const isAlike = (process: CellProcess): boolean =>
    process.kind === "server" && processes.find(({ group }) => group === process.group) !== process;
  return program.rows.flatMap((row, number) => {
    const activity = activities[row.activity];
    const process = processes[row.process]!;
    const { name: step, role } = steps[number]!;
    if (!row.draw || !activity) return [];
    // Aging parts are no step of a server, and the steps of a cold start are no steps of the cycle.
    if (process.kind === "age clock" || isAlike(process)) return [];
    if (hasRole({ role }, "screw.firstShot", "screw.fillShot", "screw.fillUp")) return [];
    const seconds = row.draw.samplers.map((sampler) => sampler.meanTicks / TICKS_PER_SECOND);
    const time = { resource: activity.resource, step, role };
    if (process.kind === "screw") {
      // A parison grows for the mold after the one that took the last parison.
      const before = scenario.delivery.kind === "continuous" ? names.length - 1 : 0;
      return names.map((station, k) => ({ ...time, station, seconds: seconds[(k + before) % names.length] ?? 0 }));
    }
    const station = process.station ?? null;
    // A walk takes no time from the same place, and the same time from all others.
    if (role === "crew.walk") return [{ ...time, station, seconds: Math.max(...seconds) }];
    const own = station === null ? undefined : seconds[names.indexOf(station)];
    return [{ ...time, station, seconds: own ?? seconds[0] ?? 0 }];
  });
}

// A step table as the core takes it in: one section of numbers after the other.
import { invariant } from "#foundation/invariant.ts";
import * as core from "#core/border/numbers.ts";
import type { DistributionTable } from "#engine/distributions/distributionTable.ts";
import type { Names } from "./names.ts";
import { ownedActivities } from "./ownedActivities.ts";
import { isStop } from "./resolveRows.ts";
import type { Row } from "./row.ts";
import { StepSections, type Section } from "./stepSections.ts";
import type { PlaceSpec, ServingRule, StepTable } from "./stepTable.ts";
import { timetablesOf } from "./timetables.ts";
import { differingNeeds, linesFor, processesWhere, takersOf } from "./takers.ts";

/** Sections that belong to one run only are absent. */
export interface CoreImage {
  readonly wholes: readonly Section[];
  readonly reals: readonly Section[];
  readonly distributions: DistributionTable;
}

const servingRules: Readonly<Record<ServingRule, number>> = {
  "first-come": core.FIRST_COME,
  "longest-since-served": core.LONGEST_SINCE_SERVED,
  priority: core.BY_PRIORITY,
  rotation: core.ROTATION,
  urgency: core.URGENCY,
};

export function coreImage(
  table: StepTable,
  rows: readonly Row[],
  names: Names,
  stoppedActivity: readonly number[],
): CoreImage {
  const { processes, places, resources } = table;
  const clocked = resources.map((_, number) => processesWhere(rows, (row) => row.draw?.clock === number));
  const differing = differingNeeds(rows);
  const takers = places.map((_, place) => takersOf(differing, place, table));
  const lines = places.map((_, place) => linesFor(differing, place, table));
  const steps = new StepSections(table, rows, takers);
  const distributions = steps.distributions;
  const timetables = timetablesOf(processes, rows);
  /** Its first state, its state and activity while it is stopped, clocks on its working time, the process that does its work. */
  const resourceNumbers = (number: number): readonly number[] => {
    const { name, whenStopped = "" } = resources[number]!;
    const stopped = stoppedActivity[number]!;
    return [
      names.states.findIndex(({ resource }) => resource === number),
      stopped === -1 ? -1 : names.state(name, whenStopped),
      stopped,
      clocked[number]!.length,
      processes.findIndex((process) => process.resource === name && !isStop(process)),
    ];
  };
  return {
    wholes: [
      ...steps.wholes,
      [
        core.PROCESSES,
        processes.flatMap(({ resource, cargo }, p) => [names.resource(resource), cargo ?? 0, timetables.begins[p]!]),
      ],
      [core.RESOURCES, [...resources.keys()].flatMap(resourceNumbers)],
      [core.CLOCKED, clocked.flat()],
      [core.PLACES, places.flatMap((place, i) => [...ruleAndRank(place), takers[i]!.length, lines[i]!.length])],
      [core.TAKERS, takers.flat()],
      [core.LINES, lines.flat()],
      [core.OWNED, ownedActivities(table, rows, names)],
      [core.TURNS, timetables.leadsTo],
    ],
    reals: [
      ...steps.reals,
      [core.QUANTILES, distributions.quantiles],
      [core.PRIORITIES, processes.map(({ priority }) => priority ?? 0)],
      [core.TIMETABLE, timetables.ticks],
    ],
    distributions,
  };
}

function ruleAndRank({ rule, rank = core.OWN_RANK + 1 }: PlaceSpec): readonly [number, number] {
  invariant(Number.isInteger(rank), "ranks are whole numbers", { rank });
  return [servingRules[rule ?? "first-come"], rank];
}

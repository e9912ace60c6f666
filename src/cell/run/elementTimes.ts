// Splits the observed time of the cell and of each station into time elements, within the planned time and outside of it.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Simulation } from "#engine/run/simulation.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { ElementTime } from "#cell/records/cellRecord.ts";
import { countedAs, elementRank } from "#cell/words/elementWords.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";

interface Stretch {
  readonly until: number;
  readonly isPlanned: boolean;
}

/** Ticks in each class of states: all together, and each state by itself. */
interface Spent {
  readonly joint: Float64Array;
  readonly states: Float64Array;
}

/** The observation cut wherever the plan changes; one stretch where there is no calendar. */
function stretches({ calendar }: Scenario, from: number, until: number): readonly Stretch[] {
  const within = (seconds: number): number => Math.min(until, Math.max(from, Math.round(seconds * TICKS_PER_SECOND)));
  const cuts = (calendar?.off ?? []).flatMap((absence): readonly Stretch[] => [
    { until: within(absence.from), isPlanned: true },
    { until: within(absence.until), isPlanned: false },
  ]);
  return [...cuts, { until, isPlanned: true }];
}

/** `runOn` runs the simulation to a tick; it is called for every change of the plan, the end of the observation being the last. */
export function elementTimes(
  plan: CellPlan,
  simulation: Simulation,
  { from, until, runOn }: { readonly from: number; readonly until: number; readonly runOn: (tick: number) => void },
): readonly ElementTime[] {
  const spent = { planned: nothing(plan, simulation), outside: nothing(plan, simulation) };
  for (const stretch of stretches(plan.scenario, from, until)) {
    const before = { joint: simulation.jointTicks.slice(), states: simulation.stateTicks.slice() };
    runOn(stretch.until);
    simulation.settle();
    const into = stretch.isPlanned ? spent.planned : spent.outside;
    simulation.jointTicks.forEach((ticks, i) => (into.joint[i]! += ticks - before.joint[i]!));
    simulation.stateTicks.forEach((ticks, i) => (into.states[i]! += ticks - before.states[i]!));
  }
  return [null, ...plan.scenario.stations.map(({ name }) => name)].flatMap((station) =>
    [true, false].flatMap((isPlanned) => {
      const { joint, states } = isPlanned ? spent.planned : spent.outside;
      return elementRank.map((element, k): ElementTime => ({
        station,
        element: countedAs(element, isPlanned),
        ticks: station === null ? (joint[k] ?? 0) : ownTicks(plan, states, station, k),
      }));
    }),
  );
}

function nothing({ program }: CellPlan, { jointTicks }: Simulation): Spent {
  return { joint: new Float64Array(jointTicks.length), states: new Float64Array(program.states.length) };
}

function ownTicks(plan: CellPlan, ticks: Float64Array, station: string, element: number): number {
  const { program, resources, elementClass } = plan;
  const own = resources.findIndex(({ name }) => name === station);
  return program.states.reduce(
    (sum, { resource }, i) => sum + (resource === own && elementClass[i] === element ? ticks[i]! : 0),
    0,
  );
}

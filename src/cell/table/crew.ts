// What operators do: who calls one, which call comes first, the task, and the release after it.
import type { PlaceSpec, ShowSpec } from "#engine/compiler/stepTable.ts";
import type { CrewTask, Scenario } from "#scenario/scenario.ts";
import type { CellResource, CellStep } from "#cell/words/cellTable.ts";
import { operatorName, operatorNames } from "#cell/words/cycleNames.ts";
import { OPERATORS } from "#cell/words/placeNames.ts";
import { stateNames, type StateName } from "#cell/words/stateNames.ts";
import { named } from "#cell/words/stepNames.ts";
import { rank, waiting, working } from "#cell/words/tableWords.ts";

/** The state of an operator during each task. */
export const stateOfTask: Readonly<Record<CrewTask, StateName>> = {
  removal: stateNames.removing,
  clearing: stateNames.clearing,
  repair: stateNames.repairing,
  packing: stateNames.packing,
};

const releases = {
  removal: named("crew.releaseFromRemoval"),
  clearing: named("crew.releaseFromClearing"),
  repair: named("crew.releaseFromRepair"),
  packing: named("crew.releaseFromPacking"),
} as const satisfies Readonly<Record<CrewTask, Pick<CellStep, "role" | "name">>>;

/** Operators are a family of resources: the number that the process has taken says which of them it is. */
export const operatorShow = (state: ShowSpec["state"]): ShowSpec => ({ resource: operatorName(0), by: "helper", state });

/** A step as it would be without an operator, and the state of its resource while it waits for one. */
export interface OperatorTask {
  readonly task: CrewTask;
  readonly step: CellStep;
  readonly meanwhile?: StateName;
}

/** The call together with the task, then the release; a walk comes in between where walks take time. */
export function byOperator(
  scenario: Scenario,
  { task, step, meanwhile }: OperatorTask,
): readonly [task: CellStep, release: CellStep] {
  const call = { place: OPERATORS, takes: "helper", ...(meanwhile ? { meanwhile } : {}) } as const;
  return [
    {
      ...step,
      task,
      needs: [...(step.needs ?? []), call],
      priority: priorityOf(scenario, task),
      shows: [...(step.shows ?? []), operatorShow(stateOfTask[task])],
    },
    {
      ...releases[task],
      shows: [operatorShow(stateNames.free)],
      gives: [{ place: OPERATORS, carries: "helper" }],
    },
  ];
}

export function isRelease({ role }: CellStep): boolean {
  return Object.values(releases).some((release) => release.role === role);
}

/** Whether an operator does the step; held by a stop, no operator would be free to end that stop. */
export function isDoneByOperator({ shows = [] }: CellStep): boolean {
  return shows.some(({ by }) => by === "helper");
}

/** Tasks without a place in the order come last, in the order in which they were called for. */
function priorityOf({ taskOrder = [] }: Scenario, task: CrewTask): number {
  const place = taskOrder.indexOf(task);
  return place === -1 ? taskOrder.length : place;
}

export function operatorsPlace({ operators, taskOrder }: Scenario): PlaceSpec {
  const rule = taskOrder ? ({ rule: "urgency" } as const) : {};
  return { name: OPERATORS, tokens: operators, cargo: "numbered", rank: rank.crew, ...rule };
}

export function operatorResources(scenario: Scenario): readonly CellResource[] {
  const packs = scenario.takeaway?.some(({ by }) => by === "operator") ? [working(stateNames.packing)] : [];
  const walks = scenario.walk === undefined ? [] : [working(stateNames.walking)];
  return operatorNames(scenario.operators).map((name) => ({
    name,
    kind: "operator",
    states: [waiting(stateNames.free), working(stateNames.removing), ...packs, ...walks],
  }));
}

// What operators do: who calls for one, which call comes first, the way there, the task, and letting go.
import type { PlaceSpec, ResourceSpec, ShowSpec, StepSpec } from "#engine/stepTable.ts";
import type { CrewTask, Scenario } from "#scenario/scenario.ts";
import { operatorNames } from "./cycleNames.ts";
import { fixed, rank, waiting, working } from "./tableWords.ts";

const stateOf: Readonly<Record<CrewTask, string>> = {
  removal: "removing",
  clearing: "clearing",
  repair: "repairing",
  packing: "packing",
};

const show = (state: string): ShowSpec => ({ resource: "operator 1", by: "hand", state });

/** A task as it would be without hands, and what is shown while it waits for one. */
export interface HandTask {
  readonly task: CrewTask;
  readonly step: StepSpec;
  readonly meanwhile?: string;
  readonly walking?: string;
  readonly lettingGo: string;
}

/** The call, the way there where it is counted apart, the task itself, and letting go. */
export function byHand(
  scenario: Scenario,
  { task, step, meanwhile, walking, lettingGo }: HandTask,
): readonly StepSpec[] {
  const call = {
    needs: [...(step.needs ?? []), { place: "operators", takes: "hand", ...(meanwhile ? { meanwhile } : {}) } as const],
    priority: priorityOf(scenario, task),
  };
  const shows = [...(step.shows ?? []), show(stateOf[task])];
  const ending: StepSpec = {
    name: lettingGo,
    shows: [show("free")],
    gives: [{ place: "operators", carries: "hand" }],
  };
  if (scenario.walk === undefined) return [{ ...step, ...call, shows }, ending];
  const { needs: _, ...done } = step;
  const way: StepSpec = {
    name: walking ?? `walk to ${step.name}`,
    ...call,
    shows: [show("walking")],
    time: fixed(scenario.walk),
  };
  return [way, { ...done, shows }, ending];
}

/** Tasks that nobody has put in order come last, in the order in which they were called for. */
function priorityOf({ taskOrder = [] }: Scenario, task: CrewTask): number {
  const place = taskOrder.indexOf(task);
  return place === -1 ? taskOrder.length : place;
}

export function operatorsPlace({ operators, taskOrder }: Scenario): PlaceSpec {
  const rule = taskOrder ? ({ rule: "priority" } as const) : {};
  return { name: "operators", tokens: operators, cargo: "numbered", rank: rank.crew, ...rule };
}

export function operatorResources(scenario: Scenario): readonly ResourceSpec[] {
  const packs = scenario.takeaway?.some(({ by }) => by === "operator") ? [working("packing")] : [];
  const walks = scenario.walk === undefined ? [] : [working("walking")];
  return operatorNames(scenario.operators).map((name) => ({
    name,
    states: [waiting("free"), working("removing"), ...packs, ...walks],
  }));
}

// What operators do: who calls for one, which call comes first, the way there, the task, and letting go.
import type { PlaceSpec, ResourceSpec, ShowSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import type { CrewTask, Scenario } from "#scenario/scenario.ts";
import { operatorNames } from "#cell/words/cycleNames.ts";
import { rank, waiting, working } from "#cell/words/tableWords.ts";

/** What an operator is doing meanwhile. */
export const stateOf: Readonly<Record<CrewTask, string>> = {
  removal: "removing",
  clearing: "clearing",
  repair: "repairing",
  packing: "packing",
};

export const operatorShow = (state: ShowSpec["state"]): ShowSpec => ({ resource: "operator 1", by: "hand", state });

/** A task as it would be without hands, and what is shown while it waits for one. */
export interface HandTask {
  readonly task: CrewTask;
  readonly step: StepSpec;
  readonly meanwhile?: string;
  readonly lettingGo: string;
}

/** The call with the task itself, and letting go; the way there comes in between where ways take time. */
export function byHand(
  scenario: Scenario,
  { task, step, meanwhile, lettingGo }: HandTask,
): readonly [StepSpec, StepSpec] {
  const call = { place: "operators", takes: "hand", ...(meanwhile ? { meanwhile } : {}) } as const;
  return [
    {
      ...step,
      needs: [...(step.needs ?? []), call],
      priority: priorityOf(scenario, task),
      shows: [...(step.shows ?? []), operatorShow(stateOf[task])],
    },
    {
      name: lettingGo,
      shows: [operatorShow("free")],
      gives: [{ place: "operators", carries: "hand" }],
    },
  ];
}

/** Whether a step calls for somebody from the crew, be it for a task or to go on a break. */
export function isCallOfHand({ needs }: StepSpec): boolean {
  return needs?.some(({ place, takes }) => place === "operators" && takes === "hand") === true;
}

/** Tasks that nobody has put in order come last, in the order in which they were called for. */
function priorityOf({ taskOrder = [] }: Scenario, task: CrewTask): number {
  const place = taskOrder.indexOf(task);
  return place === -1 ? taskOrder.length : place;
}

export function operatorsPlace({ operators, taskOrder }: Scenario): PlaceSpec {
  const rule = taskOrder ? ({ rule: "urgency" } as const) : {};
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

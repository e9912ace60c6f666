// The plan of a cell, made once for each scenario: the tables and means of its distributions cost more than many a run.
import { planCell, type CellPlan, type StepScale } from "#cell/layers/planCell.ts";
import { undisturbed } from "#cell/layers/undisturbed.ts";
import type { CellResource } from "#cell/words/cellTable.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Forgotten together with the scenario. */
const plans = new WeakMap<Scenario, Map<string, CellPlan>>();
const calmScenarios = new WeakMap<Scenario, Scenario>();

export function planOf(scenario: Scenario, scale: StepScale | null = null): CellPlan {
  const known = plans.get(scenario) ?? new Map<string, CellPlan>();
  plans.set(scenario, known);
  const variant = JSON.stringify(scale);
  const plan = known.get(variant) ?? planCell(scenario, scale ?? undefined);
  known.set(variant, plan);
  return plan;
}

/** Undefined for what has steps or streams of its own and is no resource, such as a server of several places. */
export function resourceKind(resource: string, scenario: Scenario): CellResource["kind"] | undefined {
  return planOf(scenario).resources.find(({ name }) => name === resource)?.kind;
}

/** The cell as if nothing ever went wrong; the scenario itself where it names nothing that might, so that both share a plan. */
export function calmOf(scenario: Scenario): Scenario {
  const known = calmScenarios.get(scenario);
  if (known) return known;
  const calm = undisturbed(scenario);
  const found = JSON.stringify(calm) === JSON.stringify(scenario) ? scenario : calm;
  calmScenarios.set(scenario, found);
  return found;
}

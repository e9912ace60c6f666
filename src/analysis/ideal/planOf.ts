// The plan of a cell, made once for each scenario because the tables of its distributions can take longer than a run.
import { planCell, type CellPlan, type StepScale } from "#cell/layers/planCell.ts";
import { undisturbed } from "#cell/layers/undisturbed.ts";
import type { CellResource } from "#cell/words/cellTable.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Weak: a plan is released with its scenario. */
const plans = new WeakMap<Scenario, Map<string, CellPlan>>();
const undisturbedScenarios = new WeakMap<Scenario, Scenario>();

export function planOf(scenario: Scenario, scale: StepScale | null = null): CellPlan {
  const known = plans.get(scenario) ?? new Map<string, CellPlan>();
  plans.set(scenario, known);
  const variant = JSON.stringify(scale);
  const plan = known.get(variant) ?? planCell(scenario, scale ?? undefined);
  known.set(variant, plan);
  return plan;
}

/** Undefined for a name with steps or streams that is not a resource, such as a server of several places. */
export function resourceKind(resource: string, scenario: Scenario): CellResource["kind"] | undefined {
  return planOf(scenario).resources.find(({ name }) => name === resource)?.kind;
}

/** The scenario without disturbances; the same object where it has none, so that both share a plan. */
export function undisturbedOf(scenario: Scenario): Scenario {
  const known = undisturbedScenarios.get(scenario);
  if (known) return known;
  const steady = undisturbed(scenario);
  const found = JSON.stringify(steady) === JSON.stringify(scenario) ? scenario : steady;
  undisturbedScenarios.set(scenario, found);
  return found;
}

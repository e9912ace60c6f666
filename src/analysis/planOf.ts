// The plan of a cell, made once for each scenario: a law's table and mean cost more than many a run.
import { planCell, type CellPlan, type StepScale } from "#cell/planCell.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Forgotten together with the scenario. */
const plans = new WeakMap<Scenario, Map<string, CellPlan>>();

export function planOf(scenario: Scenario, scale: StepScale | null = null): CellPlan {
  const known = plans.get(scenario) ?? new Map<string, CellPlan>();
  plans.set(scenario, known);
  const variant = JSON.stringify(scale);
  const plan = known.get(variant) ?? planCell(scenario, scale ?? undefined);
  known.set(variant, plan);
  return plan;
}

// The cell as it would be if nothing ever went wrong: what an ideal cycle is made of.
import type { Scenario } from "#scenario/scenario.ts";

export function undisturbed(scenario: Scenario): Scenario {
  const { stops: _, ...calm } = scenario;
  return calm;
}

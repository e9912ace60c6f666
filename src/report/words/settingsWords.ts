// Says which settings of the call changed the scenarios, above their results.
import { variantOf } from "#scenario/variantOf.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** `Settings: stations.*.steps.cool=8 s`, or the run's own name before them; nothing for a file as it stands. */
export function settingsWords(scenario: Scenario): readonly string[] {
  const variant = variantOf(scenario);
  const isNamed = scenario.call !== undefined && scenario.call.file.replace(/(?<=.)\.[^.]*$/u, "") !== scenario.name;
  if (isNamed) return [`${scenario.name}: ${variant === "" ? "the file as it stands" : variant}`];
  return variant === "" ? [] : [`Settings: ${variant}`];
}

/** A line for each scenario of a comparison that settings changed; one line where they changed all alike. */
export function comparedSettings(scenarios: readonly Scenario[]): readonly string[] {
  const [first] = scenarios;
  const variants = new Set(scenarios.map(variantOf));
  if (first !== undefined && variants.size === 1) return settingsWords(first);
  return scenarios.flatMap((scenario) => {
    const variant = variantOf(scenario);
    return variant === "" ? [] : [`${scenario.name}: ${variant}`];
  });
}

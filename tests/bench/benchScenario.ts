// Reads the benchmark's scenario for a given length of one run.
import { invariant } from "#foundation/invariant.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Simulated in one pass of a measured task. */
export const workLength = "3 d";

export function benchScenario(text: string, length: string): Scenario {
  const { scenario, issues } = readScenario(text, {
    name: "two-station",
    file: "two-station.yaml",
    set: [`run.length=${length}`],
  });
  invariant(scenario !== undefined, "the benchmark's scenario can be read", { issues });
  return scenario;
}

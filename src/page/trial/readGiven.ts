// Reads a scenario of the page with further settings, as a call with `--set` does.
import { readSettled } from "#analysis/study/readSettled.ts";
import type { GivenScenario } from "#page/file/given.ts";
import type { ScenarioReading } from "#scenario/resolving/readScenario.ts";

export interface Tried {
  readonly given: GivenScenario;
  /** Further settings, each as `path=value`. */
  readonly set: readonly string[];
}

export function readGiven({ given: { name, file, text, beside, set: own }, set: more }: Tried): ScenarioReading {
  const set = [...own, ...more];
  const readText = (other: string): string | undefined => (Object.hasOwn(beside, other) ? beside[other] : undefined);
  const { scenario, ...rest } = readSettled(text, { name, file, set, readText });
  if (!scenario) return rest;
  const call = { file, settings: set, options: [] };
  return { ...rest, scenario: { ...scenario, call } };
}

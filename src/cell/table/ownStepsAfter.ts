// A user's own steps by the step of the cycle that they follow, some of them by way of another step of the user's.
import { stepNames } from "#cell/words/stepNames.ts";
import type { CycleStep, ExtraStepSpec } from "#scenario/scenario.ts";

/** The roles of the steps that a scenario names in `after`. */
export type CycleRole = `mold.${CycleStep}`;

export function ownStepsAfter(extra: readonly ExtraStepSpec[], roles: readonly CycleRole[]): readonly ExtraStepSpec[] {
  const reached = new Set<string>(roles.map((role) => stepNames[role]));
  // A step is listed after the one that it follows.
  return extra.filter(({ name, after }) => reached.has(after) && reached.add(name));
}

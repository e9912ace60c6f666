// A user's own steps by the step of the cycle that they follow, some of them by way of another step of the user's.
import type { CycleStep, ExtraStepSpec } from "#scenario/scenario.ts";

export function ownStepsAfter(extra: readonly ExtraStepSpec[], steps: readonly CycleStep[]): readonly ExtraStepSpec[] {
  const reached = new Set<string>(steps);
  // A step is listed after the one that it follows.
  return extra.filter(({ name, after }) => reached.has(after) && reached.add(name));
}

// The warm-up of a scenario once it is a time.
import { invariant } from "#foundation/invariant.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Seconds. Throws BrokenInvariant where nobody has yet looked for the end of the start-up: that comes before any run. */
export function settledWarmup({ name, run }: Scenario): number {
  invariant(run.warmup !== "auto", "the warm-up is settled before a run", { scenario: name });
  return run.warmup;
}

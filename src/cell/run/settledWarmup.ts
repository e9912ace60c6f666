// The warm-up of a scenario once it is a time.
import { invariant } from "#foundation/invariant.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Seconds. Throws BrokenInvariant while the warm-up is still `auto`; it is settled before any run. */
export function settledWarmup({ name, run }: Scenario): number {
  invariant(run.warmup !== "auto", "the warm-up is settled before a run", { scenario: name });
  return run.warmup;
}

// The settings of the call that changed a scenario, as one text.
import type { Scenario } from "./scenario.ts";

/** Empty where the file is as it stands. */
export function variantOf({ call }: Scenario): string {
  return (call?.settings ?? []).join("; ");
}

// The settings of the call that changed a scenario, as one text.
import type { ScenarioCall } from "./scenario.ts";

/** Empty where the file is as it stands. */
export function variantOf({ call }: { readonly call?: Partial<Pick<ScenarioCall, "settings">> | undefined }): string {
  return (call?.settings ?? []).join("; ");
}

// What decides how a station's parison sags, beside its times.
import { materialAt } from "#physics/parison/materialAt.ts";
import type { HangingMelt } from "#physics/parison/sagConstant.ts";
import { completeInput, meltTemperature } from "#physics/window/windowInput.ts";
import { slowedBy } from "#cell/delivery/continuousExtrusion.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";

export interface SagInput {
  readonly melt: HangingMelt;
  /** Of the parison, m. */
  readonly length: number;
}

/** At the melt temperature of the running rate. Undefined where material or parison length are not given. */
export function sagInput(scenario: Scenario, { process }: Pick<StationSpec, "process">): SagInput | undefined {
  const length = process?.values["product.parisonLength"];
  if (!process || length === undefined) return undefined;
  const rate = process.values["delivery.plasticatingRate"];
  const slower = scenario.delivery.kind === "continuous" ? slowedBy(scenario) : 1;
  const input = completeInput({
    material: process.material,
    ...process.values,
    "delivery.matchedRate": rate && rate / slower,
  });
  const { meltDensity, zeroShearViscosity } = materialAt(process.material, meltTemperature(input));
  return { melt: { meltDensity: meltDensity.value, zeroShearViscosity: zeroShearViscosity.value }, length };
}

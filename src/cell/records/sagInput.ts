// What decides how a station's parison sags, beside its times.
import type { HangingMelt } from "#physics/parison/sagConstant.ts";
import type { StationSpec } from "#scenario/scenario.ts";

export interface SagInput {
  readonly melt: HangingMelt;
  /** Of the parison, m. */
  readonly length: number;
}

/** Undefined where material or parison length are not given. */
export function sagInput({ process }: Pick<StationSpec, "process">): SagInput | undefined {
  const length = process?.values["product.parisonLength"];
  if (!process || length === undefined) return undefined;
  const { meltDensity, zeroShearViscosity } = process.material;
  return { melt: { meltDensity: meltDensity.value, zeroShearViscosity: zeroShearViscosity.value }, length };
}

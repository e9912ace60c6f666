// The part of the blow in which the wall does not yet lie against the mold.
import { fillTime, type ChangeOfState } from "#physics/air/fillTime.ts";
import type { AirPath } from "#physics/air/airMassFlow.ts";
import { ATMOSPHERE } from "#physics/air/standardAir.ts";
import type { CompleteInput, Known } from "./windowInput.ts";
import { knows } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";

/** °C of the air in line and part. */
export const AIR_TEMPERATURE = 20;

/** What a fill time needs. */
export const fillKeys = [
  "product.volume",
  "product.blowPressure",
  "product.airConductance",
  "product.airSupply",
] as const satisfies readonly WindowKey[];

export const airPathOf = (input: Known<"product.airConductance">): AirPath => ({
  conductance: input["product.airConductance"],
  criticalRatio: input["product.airCriticalRatio"],
});

/** Part, hose and pin, m³. */
export const blownVolume = (input: Known<"product.volume">): number =>
  input["product.volume"] + input["station.deadVolume"];

export function fillSeconds(input: Known<(typeof fillKeys)[number]>, change: ChangeOfState): number {
  const to = input["product.blowPressure"] + ATMOSPHERE;
  const supply = input["product.airSupply"] + ATMOSPHERE;
  const fill = { volume: blownVolume(input), from: ATMOSPHERE, to, supply, temperature: AIR_TEMPERATURE };
  return fillTime(airPathOf(input), fill, change);
}

/** Seconds from the start of the blow until the wall is cooled; without the keys of the air the whole blow, to be on the safe side. */
export function inflationTime(input: CompleteInput): number {
  const blow = input["station.steps.blow"] ?? 0;
  return knows(input, fillKeys) ? Math.min(blow, input["station.airDelay"] + fillSeconds(input, "isothermal")) : blow;
}

// The cooling of the thickest place of one shot: its temperature after a time in contact with the mold, and the time to a limit.
import { coolingTime } from "#physics/cooling/coolingTime.ts";
import { temperatureCourse } from "#physics/cooling/wallTemperature.ts";
import { placeOf, wallOf } from "./coolingRules.ts";
import { fillKeys, inflationTime } from "./inflation.ts";
import { completeInput, knows, type WindowInput } from "./windowInput.ts";

export interface ShotCooling {
  /** Seconds from the start of the blow until the wall touches the mold; null where it counts as touching from the end of the blow. */
  readonly inflation: number | null;
  /** °C of the hottest point, or of the mean with `coolingTo: mean`, after seconds of contact. */
  readonly temperature: (contact: number) => number;
  /** Seconds of contact until it has fallen to a temperature, °C. */
  readonly timeTo: (temperature: number) => number;
  /** °C above which the part is under-cooled. */
  readonly demold: number;
}

/** Undefined without the thickest place, and with `moldResistance`: the mold temperature then depends on the rate of the whole run. */
export function shotCooling(given: WindowInput): ShotCooling | undefined {
  const input = completeInput(given);
  const wall = input["product.wall.thickest"];
  if (wall === undefined || input["station.moldResistance"] !== undefined) return undefined;
  const cooling = { ...wallOf(input), wall };
  const place = placeOf(input);
  return {
    inflation: knows(input, fillKeys) ? inflationTime(input) : null,
    temperature: temperatureCourse(cooling, place),
    timeTo: (temperature) => coolingTime(cooling, place, temperature),
    demold: input["product.demoldTemperature"],
  };
}

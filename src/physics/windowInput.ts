// What the process window is worked out from, each key spelled as the path at which a scenario gives it.
import type { Material } from "./material.ts";

/** Numbers in SI, temperatures in °C, pressures gauge, shares as fractions; step times are means. */
export interface WindowNumbers {
  readonly "product.partMass": number;
  /** Flash that leaves with one part, kg. */
  readonly "product.flash": number;
  readonly "product.wall.mean": number;
  readonly "product.wall.thickest": number;
  readonly "product.volume": number;
  readonly "product.projectedArea": number;
  readonly "product.length": number;
  readonly "product.diameter": number;
  readonly "product.parisonLength": number;
  readonly "product.pinchLength": number;
  readonly "product.pinchLoad": number;
  readonly "product.die.diameter": number;
  readonly "product.die.mandrel": number;
  /** Wall of the free parison over the die gap. */
  readonly "product.thicknessSwell": number;
  /** Largest growth in length that the bottle bears, as a share. */
  readonly "product.sagLimit": number;
  readonly "product.meltTemperature": number;
  readonly "product.moldTemperature": number;
  readonly "product.demoldTemperature": number;
  readonly "product.blowPressure": number;
  readonly "product.ventTo": number;
  readonly "product.airConductance": number;
  readonly "product.airCriticalRatio": number;
  /** Gauge pressure of the air before the blow valve. */
  readonly "product.airSupply": number;
  readonly "station.cavities": number;
  readonly "station.moldContact": number;
  /** Clamp force of the machine, N. */
  readonly "station.clampForce": number;
  readonly "station.steps.drop": number;
  /** Mean wait of a delivered parison for the closed mold, the close included. */
  readonly "station.steps.close": number;
  readonly "station.steps.blow": number;
  readonly "station.steps.cool": number;
  readonly "station.steps.vent": number;
  readonly "station.steps.open": number;
  readonly "station.steps.remove": number;
  readonly "delivery.plasticatingRate": number;
  readonly "delivery.shotCapacity": number;
  readonly "delivery.screwDiameter": number;
  readonly "delivery.drivePower": number;
  /** Melt between hopper and die, kg. */
  readonly "delivery.holdUp": number;
  /** Melt through the screw, waits included, kg/s: from the ideal cycle or from a run. */
  readonly "delivery.throughput": number;
}

export type WindowKey = keyof WindowNumbers;

export type DeliveryKind = "reciprocating-screw" | "accumulator-head" | "continuous";

/** A reciprocating screw where no kind is named. */
export type WindowInput = { readonly material: Material; readonly delivery?: DeliveryKind } & Partial<WindowNumbers>;

/** An input of which some keys are known to be given. */
export type Known<Key extends WindowKey> = WindowInput & Pick<WindowNumbers, Key>;

/** The product's own temperatures, else the middle of the material's. */
export function temperaturesOf(input: WindowInput): {
  readonly melt: number;
  readonly mold: number;
  readonly demold: number;
} {
  return {
    melt: input["product.meltTemperature"] ?? input.material.meltTemperature.value,
    mold: input["product.moldTemperature"] ?? input.material.moldTemperature.value,
    demold: input["product.demoldTemperature"] ?? input.material.demoldTemperature.value,
  };
}

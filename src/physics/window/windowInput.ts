// What the process window is worked out from, each key spelled as the path at which a scenario gives it.
import type { Material } from "#physics/materials/material.ts";
import { meltRise } from "#physics/screw/meltRise.ts";

/** Numbers in SI, temperatures in °C, pressures gauge, shares as fractions; step times are means. */
interface WindowNumbers {
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
  /** Heat that the air inside takes from the wall, W/(m² K), and its temperature. */
  readonly "product.insideAir.transfer": number;
  readonly "product.insideAir.temperature": number;
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
  /** Mean time from the end of the drop to the closed mold; the close alone where absent. */
  readonly "station.hang": number;
  readonly "station.steps.close": number;
  readonly "station.steps.blow": number;
  readonly "station.steps.cool": number;
  readonly "station.steps.vent": number;
  readonly "station.steps.open": number;
  readonly "station.steps.remove": number;
  /** Share of the parts that a run rejected; absent where it can reject none. */
  readonly "station.rejects": number;
  readonly "delivery.plasticatingRate": number;
  /** To which a matched continuous screw is turned down, kg/s. */
  readonly "delivery.matchedRate": number;
  /** The melt has its stated temperature at `from`, kg/s, and is hotter by `rise`, K, for every `per` more. */
  readonly "delivery.meltRise.from": number;
  readonly "delivery.meltRise.rise": number;
  readonly "delivery.meltRise.per": number;
  readonly "delivery.shotCapacity": number;
  readonly "delivery.screwDiameter": number;
  readonly "delivery.drivePower": number;
  /** Melt between hopper and die, kg. */
  readonly "delivery.holdUp": number;
  /** Of the metering zone: depth and length in m, helix angle in degrees. */
  readonly "delivery.screw.channelDepth": number;
  readonly "delivery.screw.helixAngle": number;
  readonly "delivery.screw.meteringLength": number;
  /** Revolutions per second. */
  readonly "delivery.screw.speed": number;
  /** Gauge pressure at the end of the metering zone. */
  readonly "delivery.screw.backPressure": number;
  /** Of the melt in the channel at its shear rate, Pa s. */
  readonly "delivery.screw.viscosity": number;
  /** Melt through the screw, waits included, kg/s: from the ideal cycle or from a run. */
  readonly "delivery.throughput": number;
}

export type WindowKey = keyof WindowNumbers;

/** What the rise of the melt temperature with the rate is worked out from. */
export const riseKeys = ["delivery.meltRise.from", "delivery.meltRise.rise", "delivery.meltRise.per"] as const;

/** The steps whose time the window can give. */
export type EstimatedTime = "blow" | "cool" | "vent";

/** How far the wall must have cooled: its inside face, the last to cool, or its mean. */
export type CoolingCriterion = "inside face" | "mean";

type DeliveryKind = "reciprocating-screw" | "accumulator-head" | "continuous";

interface WindowChoices {
  readonly material: Material;
  /** The inside face where absent. */
  readonly coolingTo?: CoolingCriterion;
  /** A reciprocating screw where absent. */
  readonly deliveryKind?: DeliveryKind;
  /** Steps whose time is itself an estimate: no slip of the pen to look for. */
  readonly estimated?: readonly EstimatedTime[];
}

export type WindowInput = WindowChoices & Partial<WindowNumbers>;

/** An input of which some keys are known to be given. */
export type Known<Key extends WindowKey> = WindowInput & Pick<WindowNumbers, Key>;

/** At the rate at which the screw turns, °C. */
export function meltTemperature(input: WindowInput): number {
  const stated = input["product.meltTemperature"] ?? input.material.meltTemperature.value;
  const rate = input["delivery.matchedRate"] ?? input["delivery.plasticatingRate"];
  const [from, rise, per] = riseKeys.map((key) => input[key]);
  const isKnown = rate !== undefined && from !== undefined && rise !== undefined && per !== undefined;
  return isKnown ? stated + meltRise(rate, { from, rise, per }) : stated;
}

/** The product's own temperatures, else the middle of the material's; melt is no colder than what may leave the mold. */
export function temperaturesOf(input: WindowInput): {
  readonly melt: number;
  readonly mold: number;
  readonly demold: number;
} {
  const demold = input["product.demoldTemperature"] ?? input.material.demoldTemperature.value;
  return {
    melt: Math.max(demold, meltTemperature(input)),
    mold: input["product.moldTemperature"] ?? input.material.moldTemperature.value,
    demold,
  };
}

// The part of the process window that asks whether screw and drive can make the melt, and how long it stays hot.
import { enthalpyRise } from "./enthalpyRise.ts";
import { rechargeTime } from "./rechargeTime.ts";
import { residenceTime } from "./residenceTime.ts";
import { ruleOfThumbRate } from "./ruleOfThumbRate.ts";
import { shotStroke } from "./shotStroke.ts";
import { specificDriveEnergy, usualDriveEnergy } from "./specificDriveEnergy.ts";
import { temperaturesOf, type Known, type WindowKey } from "./windowInput.ts";
import { onlyFor, windowRule, type WindowRule } from "./windowRule.ts";

const shot = ["product.partMass", "product.flash", "station.cavities"] as const satisfies readonly WindowKey[];
const rate = "delivery.plasticatingRate";
const screw = "delivery.screwDiameter";

const MASS = "conservation of mass";
const THUMB = "rule of thumb 16 D^2.2: Giles, Wagner & Mount, Extrusion, 2005 (from memory, low confidence)";
const SPI = "Society of the Plastics Industry, Plastics Engineering Handbook, 4th ed., 1976, chapter on extrusion";
const PRACTICE = "common practice, no published source";

/** Pellets in the hopper, °C. */
const ROOM = 23;
/** Longest usual stroke in screw diameters. */
const STROKE = 4;

const shotMass = (input: Known<(typeof shot)[number]>) =>
  input["station.cavities"] * (input["product.partMass"] + input["product.flash"]);

function shotRule(larger: string): WindowRule {
  return windowRule([...shot, "delivery.shotCapacity"], {
    quantity: "shot mass",
    unit: "kg",
    source: MASS,
    value: shotMass,
    limits: (input) => ({ high: input["delivery.shotCapacity"] }),
    above: `Fewer cavities, less flash, or ${larger}.`,
  });
}

export const screwRules: readonly WindowRule[] = [
  onlyFor(["reciprocating-screw"], shotRule("a screw that holds a larger shot")),
  onlyFor(["accumulator-head"], shotRule("an accumulator that holds a larger shot")),
  onlyFor(
    ["reciprocating-screw"],
    windowRule([...shot, screw], {
      quantity: "stroke of the screw for one shot, without cushion",
      unit: "m",
      source: `${MASS}; the limit of ${STROKE} diameters is ${PRACTICE}`,
      value: (input) =>
        shotStroke({
          mass: shotMass(input),
          cushion: 0,
          meltDensity: input.material.meltDensity.value,
          screwDiameter: input[screw],
        }),
      limits: (input) => ({ high: STROKE * input[screw] }),
      above: "A wider screw, fewer cavities, or an accumulator.",
    }),
  ),
  windowRule([...shot, rate], {
    quantity: "recharge time",
    unit: "s",
    source: MASS,
    value: (input) => rechargeTime(shotMass(input), input[rate]),
  }),
  windowRule([screw], {
    quantity: "plasticating rate by rule of thumb",
    unit: "kg/s",
    source: THUMB,
    value: (input) => ruleOfThumbRate(input[screw]),
  }),
  windowRule([screw, rate], {
    quantity: "plasticating rate",
    unit: "kg/s",
    source: `${THUMB}; from half to twice, as another published rule gives twice`,
    value: (input) => input[rate],
    limits: (input) => ({ low: ruleOfThumbRate(input[screw]) / 2, high: 2 * ruleOfThumbRate(input[screw]) }),
    below: "Slow for its diameter: check rate and diameter for a slip; a measured rate wins.",
    above: "Fast for its diameter: check rate and diameter for a slip; a measured rate wins.",
  }),
  windowRule([rate, "delivery.drivePower"], {
    quantity: "drive energy per mass",
    unit: "J/kg",
    source: SPI,
    value: (input) => specificDriveEnergy(input["delivery.drivePower"], input[rate]),
    limits: () => usualDriveEnergy,
    below: "The drive may not turn the screw at this rate: a stronger drive or a lower rate.",
    above: "More power than usual for this rate: check both for a slip.",
  }),
  windowRule([rate], {
    quantity: "heat into the melt",
    unit: "W",
    source: `${SPI}; heat of fusion added`,
    value: (input) => {
      const { specificHeat, heatOfFusion } = input.material;
      const to = temperaturesOf(input).melt;
      const heating = { specificHeat: specificHeat.value, from: ROOM, to, heatOfFusion: heatOfFusion.value };
      return input[rate] * enthalpyRise(heating);
    },
  }),
  windowRule(["delivery.holdUp", "delivery.throughput"], {
    quantity: "mean time at heat from hopper to die",
    unit: "s",
    source: "Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, chapter 11 (from memory)",
    value: (input) => residenceTime(input["delivery.holdUp"], input["delivery.throughput"]),
    limits: ({ material }) => ({ high: material.timeAtHeat?.value }),
    above: "Less melt in the machine, more throughput, or a better stabilized compound; dead corners stay far longer.",
  }),
];

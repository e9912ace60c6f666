// The part of the process window on screw and drive, and on the time at heat of the melt.
import { dragFlow } from "#physics/screw/dragFlow.ts";
import { pelletTravelTime } from "#physics/screw/pelletTravelTime.ts";
import { rechargeTime } from "#physics/screw/rechargeTime.ts";
import { residenceTime } from "#physics/screw/residenceTime.ts";
import { ruleOfThumbRate } from "#physics/screw/ruleOfThumbRate.ts";
import type { ScrewChannel } from "#physics/screw/screwChannel.ts";
import { screwHoldUp } from "#physics/screw/screwHoldUp.ts";
import { screwOutput } from "#physics/screw/screwOutput.ts";
import { shotStroke } from "#physics/screw/shotStroke.ts";
import { specificDriveEnergy, usualDriveEnergy } from "#physics/screw/specificDriveEnergy.ts";
import { knows, meltTemperature, riseKeys, type Known, type WindowInput } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";
import { windowRule, type WindowRule } from "./windowRule.ts";

const shot = ["product.partMass", "product.flash", "station.cavities"] as const satisfies readonly WindowKey[];
const rate = "delivery.plasticatingRate";
const screw = "delivery.screwDiameter";
const channel = [
  screw,
  "delivery.screw.channelDepth",
  "delivery.screw.helixAngle",
  "delivery.screw.meteringLength",
  "delivery.screw.speed",
] as const satisfies readonly WindowKey[];

const pressureKeys = [
  "delivery.screw.backPressure",
  "delivery.screw.viscosity",
] as const satisfies readonly WindowKey[];

const MASS = "conservation of mass";
const THUMB = "rule of thumb 16 D^2.2: Giles, Wagner & Mount, Extrusion, 2005 (from memory, low confidence)";
const SPI = "Society of the Plastics Industry, Plastics Engineering Handbook, 4th ed., 1976, chapter on extrusion";
const PRACTICE = "common practice, no published source";
const DRAG = "Crawford, Plastics Engineering, 3rd ed., 1998, equation 4.3";
const RISE = "a straight line through your measurements; limits: the material's range of melt temperatures";
const METERING = "Groover, Fundamentals of Modern Manufacturing, 4th ed., 2010, section 13.2 (from memory)";
const PLUG = "Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, chapter 11 (from memory)";

/** Longest usual stroke in screw diameters. */
const STROKE = 4;

/** Seconds from hopper to screw tip on an in-line reciprocating-screw unit of this diameter (common practice). */
const USUAL_TRAVEL = { seconds: 48, diameter: 0.0635, within: 0.08 };
/** A usual screw of 20 D: mean channel depth 0.113 D, flights one tenth, mean density of pellets and melt 650 kg/m³. */
const usualHoldUp = (diameter: number): number =>
  screwHoldUp({ diameter, meanDepth: 0.113 * diameter, length: 20 * diameter, flightShare: 0.1, density: 650 });

const isOfUsualTravel = (input: WindowInput): boolean => {
  const { diameter, within } = USUAL_TRAVEL;
  return Math.abs((input[screw] ?? 0) / diameter - 1) <= within;
};

const channelOf = (input: Known<(typeof channel)[number]>): ScrewChannel => ({
  diameter: input[screw],
  depth: input["delivery.screw.channelDepth"],
  helixAngle: input["delivery.screw.helixAngle"],
  length: input["delivery.screw.meteringLength"],
});

const dragOutput = (input: Known<(typeof channel)[number]>): number =>
  input.material.meltDensity.value * dragFlow(channelOf(input), input["delivery.screw.speed"]);

const netOutput = (input: Known<(typeof channel)[number] | (typeof pressureKeys)[number]>): number =>
  input.material.meltDensity.value *
  screwOutput(channelOf(input), {
    speed: input["delivery.screw.speed"],
    pressure: input["delivery.screw.backPressure"],
    viscosity: input["delivery.screw.viscosity"],
  });

const shotMass = (input: Known<(typeof shot)[number]>) =>
  input["station.cavities"] * (input["product.partMass"] + input["product.flash"]);

export const screwRules: readonly WindowRule[] = [
  windowRule([...shot, "delivery.shotCapacity"], {
    quantity: "shot mass",
    meaning: "Parts and flash of all cavities. It must not be above the shot capacity.",
    unit: "kg",
    source: MASS,
    value: shotMass,
    limits: (input) => ({ high: input["delivery.shotCapacity"] }),
    above: "Use fewer cavities, less flash, or a screw or accumulator with a larger shot capacity.",
  }),
  windowRule([...shot, screw], {
    quantity: "stroke of the screw for one shot, without cushion",
    meaning: "Travel of the screw for one shot. A long stroke makes the melt uneven.",
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
    // With an accumulator the screw only turns.
    applies: ({ deliveryKind = "reciprocating-screw" }) => deliveryKind === "reciprocating-screw",
    above: "Use a larger screw, fewer cavities, or an accumulator.",
  }),
  windowRule([...shot, "delivery.shotCapacity"], {
    quantity: "unused shot capacity, of the shot",
    meaning:
      "Part of the capacity that the shot leaves unused. It is no cushion: the screw stops where the shot is full.",
    unit: "1",
    source: MASS,
    value: (input) => input["delivery.shotCapacity"] / shotMass(input) - 1,
  }),
  windowRule([...shot, rate], {
    quantity: ({ deliveryKind }) =>
      deliveryKind === "continuous" ? "time of one shot's melt at full rate" : "recharge time",
    meaning: "Time in which the screw makes one shot at its plasticating rate.",
    unit: "s",
    source: MASS,
    value: (input) => rechargeTime(shotMass(input), input[rate]),
  }),
  windowRule([screw], {
    quantity: "plasticating rate by rule of thumb",
    meaning: "Rate that a smooth screw of this diameter usually makes; a measured rate is better.",
    unit: "kg/s",
    source: THUMB,
    value: (input) => ruleOfThumbRate(input[screw]),
  }),
  windowRule([screw, rate], {
    quantity: "plasticating rate",
    meaning: "The given rate beside the rule of thumb for the screw diameter.",
    unit: "kg/s",
    source: `${THUMB}; limits of half and twice, because another published rule gives twice the rate`,
    value: (input) => input[rate],
    limits: (input) => ({ low: ruleOfThumbRate(input[screw]) / 2, high: 2 * ruleOfThumbRate(input[screw]) }),
    below: "Low for this diameter: check rate and diameter for typing errors. Keep a measured rate.",
    above: "High for this diameter: check rate and diameter for typing errors. Keep a measured rate.",
  }),
  windowRule(channel, {
    quantity: "drag flow of the metering zone",
    meaning: "Flow of the screw without back pressure, the upper limit of a smooth screw.",
    unit: "kg/s",
    source: DRAG,
    value: dragOutput,
  }),
  windowRule([...channel, ...pressureKeys], {
    quantity: "output of the metering zone against the back pressure",
    meaning: "Drag flow less the back flow that the back pressure causes.",
    unit: "kg/s",
    source: METERING,
    value: netOutput,
  }),
  windowRule([...channel, rate], {
    quantity: "plasticating rate against the metering zone",
    meaning:
      "The given rate beside the output of the metering zone: against the back pressure where it is given with the viscosity, else the drag flow.",
    unit: "kg/s",
    source: METERING,
    value: (input) => input[rate],
    limits: (input) => ({ high: knows(input, pressureKeys) ? netOutput(input) : dragOutput(input) }),
    above:
      "The screw cannot deliver this rate: check depth, speed, back pressure and rate. A grooved feed can deliver more than the drag flow.",
  }),
  windowRule([rate, "delivery.drivePower"], {
    quantity: "drive energy per mass",
    meaning: "Energy of the drive for each kilogram of melt.",
    unit: "J/kg",
    source: SPI,
    value: (input) => specificDriveEnergy(input["delivery.drivePower"], input[rate]),
    limits: () => usualDriveEnergy,
    below: "The drive may be too weak for this rate. Use a stronger drive or a lower rate.",
    above: "More power than usual for this rate: check both for typing errors.",
  }),
  windowRule([rate, ...riseKeys], {
    quantity: "melt temperature at this rate",
    meaning: "Melt temperature at the given plasticating rate, from your own measurements in `meltRise`.",
    unit: "°C",
    source: RISE,
    value: meltTemperature,
    limits: ({ material: { meltTemperature: usual } }) => ({ low: usual.low, high: usual.high }),
    below: "Below the usual range: use a hotter barrel, or check meltRise for typing errors.",
    above: "Above the usual range: use a slower screw or a cooler barrel, or check meltRise for typing errors.",
    applies: (input) => input["delivery.meltRise.from"] !== undefined,
  }),
  windowRule(["delivery.holdUp", "delivery.throughput"], {
    quantity: "mean time at heat from hopper to die",
    meaning: "Mean time that melt stays in the machine: hold-up over throughput, waits included.",
    unit: "s",
    source: PLUG,
    value: (input) => residenceTime(input["delivery.holdUp"], input["delivery.throughput"]),
    limits: ({ material }) => ({ high: material.timeAtHeat?.value }),
    above:
      "Use a smaller hold-up, more throughput, or a better stabilized compound. Melt in dead corners stays far longer.",
  }),
  windowRule(["delivery.holdUp", "delivery.throughput"], {
    quantity: "travel of a colored pellet from hopper to die",
    meaning: "Time until a color change in the hopper reaches the die.",
    unit: "s",
    source: PLUG,
    value: (input) => pelletTravelTime([input["delivery.holdUp"]], input["delivery.throughput"]),
  }),
  windowRule([screw, "delivery.throughput"], {
    quantity: `melt from hopper to screw tip if a pellet takes ${USUAL_TRAVEL.seconds} s`,
    meaning: "Melt in the screw that fits the usual travel of a pellet; it helps to estimate the hold-up.",
    unit: "kg",
    source: `${PRACTICE}: ${USUAL_TRAVEL.seconds} s on an in-line 2½-inch reciprocating screw; limit: the hold-up of a usual channel of 20 D`,
    value: (input) => USUAL_TRAVEL.seconds * input["delivery.throughput"],
    limits: (input) => ({ high: usualHoldUp(input[screw]) }),
    above: `Unusual, not wrong: at this rate a pellet passes the screw in less than ${USUAL_TRAVEL.seconds} s.`,
    isPractice: true,
    applies: isOfUsualTravel,
  }),
];

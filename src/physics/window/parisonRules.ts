// The part of the process window on the parison: its length, shear in the die, and sag.
import type { Material } from "#physics/materials/material.ts";
import { annularDie, type AnnularDie } from "#physics/parison/annularDie.ts";
import { annularShearRate } from "#physics/parison/annularShearRate.ts";
import { blownWall } from "#physics/parison/blownWall.ts";
import { deliveredSag } from "#physics/parison/deliveredSag.ts";
import { longestDrop } from "#physics/parison/longestDrop.ts";
import { materialAt } from "#physics/parison/materialAt.ts";
import { parisonFlow } from "#physics/parison/parisonFlow.ts";
import { parisonLength } from "#physics/parison/parisonLength.ts";
import { powerLawShearRate } from "#physics/parison/powerLawShearRate.ts";
import type { HangingMelt } from "#physics/parison/sagConstant.ts";
import { shortestDrop } from "#physics/parison/shortestDrop.ts";
import { wallShearStress } from "#physics/parison/wallShearStress.ts";
import { meltTemperature, type CompleteInput, type Known } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";
import { windowRule, type WindowRule } from "./windowRule.ts";

const mass = ["product.partMass", "product.flash"] as const satisfies readonly WindowKey[];
const die = ["product.die.diameter", "product.die.mandrel"] as const satisfies readonly WindowKey[];
const drop = "station.steps.drop";
type Shot = Known<(typeof mass)[number] | (typeof die)[number]>;

const CRAWFORD = "Crawford, Plastics Engineering, 3rd ed., 1998, section 4.2 and example 4.4";
const SLIT = "Michaeli, Extrusion Dies for Plastics and Rubber, 3rd ed., 2003, section 3.1 (from memory)";
const SAG = "derived from weight and viscosity after Trouton, Proceedings of the Royal Society A 77, 1906, p. 426";

const dieOf = (input: Known<(typeof die)[number]>): AnnularDie =>
  annularDie(input["product.die.diameter"], input["product.die.mandrel"]);
const parisonMass = (input: Known<(typeof mass)[number]>) => input["product.partMass"] + input["product.flash"];

/** The shear rate of a melt with this power law index, by default the material's own. */
function wallRate(input: Shot & Known<typeof drop>, index = input.material.powerLawIndex.value): number {
  const flow = parisonFlow(parisonMass(input), input.material.meltDensity.value, input[drop]);
  return powerLawShearRate(annularShearRate(flow, dieOf(input)), index);
}

/** Swell along the parison and its programmed wall leave less agreement than this. */
const AGREEMENT = 1.25;
const CONTRADICTION = "Check parisonLength, the masses, the die and thicknessSwell: they contradict one another.";

const lengthFromDie = (input: Known<(typeof mass)[number] | (typeof die)[number] | "product.thicknessSwell">): number =>
  parisonLength({
    mass: parisonMass(input),
    meltDensity: input.material.meltDensity.value,
    die: dieOf(input),
    thicknessSwell: input["product.thicknessSwell"],
  });

/** At the melt temperature of the product and the rate of the screw. */
const hotMaterial = (input: CompleteInput): Material => materialAt(input.material, meltTemperature(input));

const meltOf = (input: CompleteInput): HangingMelt => ({
  meltDensity: input.material.meltDensity.value,
  zeroShearViscosity: hotMaterial(input).zeroShearViscosity.value,
});

const hangingOf = (input: Known<"product.parisonLength">) => ({
  length: input["product.parisonLength"],
  hold: input["station.hang"] ?? 0,
});

/**
 * Grades differ widely, so a warning needs ranges that do not overlap: the melt of the lowest viscosity exceeds the highest fracture
 * stress. A value of the user has no range and counts as it is.
 */
function fastestDrop(input: Shot): number {
  const { meltDensity, dieViscosity, powerLawIndex, fractureStress } = hotMaterial(input);
  return shortestDrop({
    mass: parisonMass(input),
    meltDensity: meltDensity.value,
    die: dieOf(input),
    dieViscosity: dieViscosity.low,
    powerLawIndex: powerLawIndex.low,
    fractureStress: fractureStress.high,
  });
}

/** Undefined without a limit of sag. */
function slowestDrop(input: Known<"product.parisonLength">): number | undefined {
  const limit = input["product.sagLimit"];
  return limit === undefined ? undefined : longestDrop(meltOf(input), hangingOf(input), limit);
}

export const parisonRules: readonly WindowRule[] = [
  windowRule([...mass, ...die, "product.thicknessSwell"], {
    quantity: "parison length before sag",
    meaning:
      "Length of the extruded parison from its mass, the die gap and the swell. It must not be shorter than the part.",
    unit: "m",
    source: CRAWFORD,
    value: lengthFromDie,
    limits: (input) => ({ low: input["product.length"] }),
    below: "The parison is shorter than the part. Use more flash, a smaller die or a narrower gap.",
  }),
  windowRule([...mass, ...die, "product.thicknessSwell", "product.parisonLength"], {
    quantity: "parison length from die and mass, of the given length",
    meaning: "Both lengths are before sag. They agree where mass, die, swell and length belong together.",
    unit: "1",
    source: `${CRAWFORD}; limits of a fourth: common practice, no published source`,
    value: (input) => lengthFromDie(input) / input["product.parisonLength"],
    limits: () => ({ low: 1 / AGREEMENT, high: AGREEMENT }),
    below: CONTRADICTION,
    above: CONTRADICTION,
  }),
  windowRule([...mass, ...die, drop], {
    quantity: "shear rate at the die wall",
    meaning: "Shear rate of the melt at the wall of the die gap during the drop.",
    unit: "1/s",
    source: SLIT,
    value: wallRate,
  }),
  windowRule([...mass, ...die, drop], {
    quantity: "shear stress at the die wall, at least",
    meaning:
      "Stress of the melt at the wall of the die gap with the lowest viscosity of the material; a value of your own grade counts as it is. Above the fracture stress the parison may become rough.",
    unit: "Pa",
    source:
      "Vlachopoulos & Alam, Polymer Engineering and Science 12, 1972, p. 184 (from memory), the highest stress of its range; a warning, never an error",
    value: (input) => {
      const { dieViscosity, powerLawIndex } = hotMaterial(input);
      return wallShearStress(dieViscosity.low, powerLawIndex.low, wallRate(input, powerLawIndex.low));
    },
    limits: ({ material }) => ({ high: material.fractureStress.high }),
    above:
      "Melt fracture is possible: check the surface of the parison. Drop more slowly, open the gap, or run the melt hotter.",
  }),
  windowRule(["product.parisonLength", drop], {
    quantity: "sag of the parison when the mold has closed",
    meaning: "Share by which the parison has grown longer under its own weight when the mold has closed.",
    unit: "1",
    source: SAG,
    value: (input) => deliveredSag(meltOf(input), { ...hangingOf(input), delivery: input[drop] }),
    limits: (input) => ({ high: input["product.sagLimit"] }),
    above: "Drop faster, close sooner, run the melt cooler, or use a stiffer grade.",
  }),
  windowRule([...mass, ...die, "product.parisonLength", drop], {
    quantity: "drop time between melt fracture and sag",
    meaning: "Drop time between two limits: a faster drop risks melt fracture, a slower one too much sag.",
    unit: "s",
    source: `${SLIT}; ${SAG}`,
    value: (input) => input[drop],
    limits: (input) => ({ low: fastestDrop(input), high: slowestDrop(input) }),
    below:
      "Drop more slowly or open the die gap. Where the low limit is above the high limit, only another grade or die helps.",
    above: "Drop faster. Where the low limit is above the high limit, only another grade or die helps.",
  }),
  windowRule([...die, "product.thicknessSwell", "product.diameter"], {
    quantity: "mean wall from die gap, swell and blow-up",
    meaning: "Mean wall of the part from die gap, swell and blow-up to the diameter.",
    unit: "m",
    source: CRAWFORD,
    value: (input) => blownWall(dieOf(input), input["product.thicknessSwell"], input["product.diameter"]),
  }),
];

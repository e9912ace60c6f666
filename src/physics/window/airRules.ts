// The part of the process window on blow air, its times, and the clamp force against its pressure.
import { clampForce } from "#physics/air/clampForce.ts";
import type { ChangeOfState } from "#physics/air/fillTime.ts";
import { compressionWork } from "#physics/air/compressionWork.ts";
import { flushAir } from "#physics/air/flushAir.ts";
import { freeAir } from "#physics/air/freeAir.ts";
import { REFERENCE_DENSITY } from "#physics/air/standardAir.ts";
import { ventTime } from "#physics/air/ventTime.ts";
import { AIR_TEMPERATURE, airPathOf, blownVolume, fillKeys, fillSeconds } from "./inflation.ts";
import { knows, type CompleteInput, type Known } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";
import { windowRule, type WindowRule } from "./windowRule.ts";

const flushKeys = ["product.flush.time", "product.flush.conductance"] as const satisfies readonly WindowKey[];
const clamp = [
  "station.cavities",
  "product.projectedArea",
  "product.blowPressure",
  "product.pinchLength",
  "product.pinchLoad",
] as const satisfies readonly WindowKey[];
const BALANCE = "balance of forces; the pinch line load has no published value";
const ISO = "ISO 6358-1, 2013, clause 3; balance of mass and heat";

/** The part of a step in which air can flow. */
const flowing = (input: CompleteInput, step: "blow" | "vent"): { readonly high?: number } => {
  const time = input[`station.steps.${step}`];
  return time === undefined ? {} : { high: Math.max(0, time - input["station.airDelay"]) };
};

/** The isothermal time is the longer bound, so that an estimate is on the safe side. */
function fillRule(change: ChangeOfState): WindowRule {
  return windowRule(fillKeys, {
    quantity: `fill time, ${change}`,
    ...(change === "isothermal" ? { estimates: "blow" } : {}),
    meaning:
      "Time until the part is filled to the blow pressure, without the delay of the air. Isothermal is the slower bound, adiabatic the faster one.",
    unit: "s",
    source: ISO,
    value: (input) => fillSeconds(input, change),
    limits: (input) => flowing(input, "blow"),
    above: "Blow longer, or use a wider path or a supply pressure well above the blow pressure.",
  });
}

function ventRule(change: ChangeOfState): WindowRule {
  return windowRule(["product.volume", "product.blowPressure", "product.airConductance", "product.ventTo"], {
    quantity: `vent time, ${change}`,
    ...(change === "isothermal" ? { estimates: "vent" } : {}),
    meaning:
      "Time until the pressure has fallen to `ventTo`, without the delay of the air. Isothermal is the slower bound, adiabatic the faster one.",
    unit: "s",
    source: ISO,
    value: (input) =>
      ventTime(
        airPathOf(input),
        {
          volume: blownVolume(input),
          blowPressure: input["product.blowPressure"],
          ventTo: input["product.ventTo"],
          temperature: AIR_TEMPERATURE,
        },
        change,
      ),
    limits: (input) => flowing(input, "vent"),
    above:
      "Vent longer or through a wider path. The mold must not open under pressure. A computed time is never a safe limit.",
  });
}

const flushOf = (input: Known<(typeof flushKeys)[number] | "product.blowPressure">): number =>
  flushAir(
    { conductance: input["product.flush.conductance"], criticalRatio: input["product.airCriticalRatio"] },
    { pressure: input["product.blowPressure"], time: input["product.flush.time"], temperature: AIR_TEMPERATURE },
  );

function partAir(input: Known<"product.volume" | "product.blowPressure">): number {
  const blown = freeAir(blownVolume(input), input["product.blowPressure"]).added;
  return blown + (knows(input, flushKeys) ? flushOf(input) : 0);
}

const neededForce = (input: Known<(typeof clamp)[number]>): number =>
  clampForce({
    cavities: input["station.cavities"],
    projectedArea: input["product.projectedArea"],
    blowPressure: input["product.blowPressure"],
    pinchLength: input["product.pinchLength"],
    pinchLoad: input["product.pinchLoad"],
    margin: 1,
  });

export const airRules: readonly WindowRule[] = [
  fillRule("isothermal"),
  fillRule("adiabatic"),
  ventRule("isothermal"),
  ventRule("adiabatic"),
  windowRule(["product.volume", "product.blowPressure"], {
    quantity: "free air that the compressor adds for one bottle",
    meaning: "Air at ambient pressure that the compressor takes in for one part, with hose, pin and flush.",
    unit: "m³",
    source: "ISO 8778, 2003, clause 4 (from memory)",
    value: partAir,
  }),
  windowRule([...flushKeys, "product.blowPressure"], {
    quantity: "free air that flushes one bottle",
    meaning: "Air at ambient pressure that flows through one part while it cools.",
    unit: "m³",
    source: ISO,
    value: flushOf,
    applies: (input) => input["product.flush.time"] !== undefined,
  }),
  windowRule(
    [
      "product.volume",
      "product.blowPressure",
      "product.airSupply",
      "product.partMass",
      "product.flash",
      "station.throughput",
    ],
    {
      quantity: "compressor power for the air of this mold",
      meaning:
        "Electrical power that compresses the air of the parts of one mold to the supply pressure, mean over the cycle.",
      unit: "W",
      source:
        "Çengel & Boles, Thermodynamics, 5th ed., 2006, section 7-11 (from memory); air of ISO 8778, 2003, clause 4",
      value: (input) => {
        const partsPerSecond = input["station.throughput"] / (input["product.partMass"] + input["product.flash"]);
        const work = compressionWork(input["product.airSupply"], AIR_TEMPERATURE);
        return (partsPerSecond * partAir(input) * REFERENCE_DENSITY * work) / input["station.compressorEfficiency"];
      },
    },
  ),
  windowRule(clamp, {
    quantity: "clamp force, without margin",
    meaning: "Force that holds the mold closed against the blow pressure and the pinch-off.",
    unit: "N",
    source: BALANCE,
    value: neededForce,
    limits: (input) => ({ high: input["station.clampForce"] }),
    above: "Use a lower blow pressure, fewer cavities, or a stronger clamp.",
  }),
  windowRule([...clamp, "station.clampForce"], {
    quantity: "margin of the clamp force, of the force needed",
    meaning: "Clamp force of the machine above the needed force.",
    unit: "1",
    source: BALANCE,
    value: (input) => input["station.clampForce"] / neededForce(input) - 1,
  }),
];

// The part of the process window on blow air, its times, and the clamp force against its pressure.
import type { AirPath } from "#physics/air/airMassFlow.ts";
import { clampForce } from "#physics/air/clampForce.ts";
import { fillTime, type ChangeOfState } from "#physics/air/fillTime.ts";
import { freeAir } from "#physics/air/freeAir.ts";
import { ATMOSPHERE } from "#physics/air/standardAir.ts";
import { ventTime } from "#physics/air/ventTime.ts";
import type { Known } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";
import { windowRule, type WindowRule } from "./windowRule.ts";

const bottle = [
  "product.volume",
  "product.blowPressure",
  "product.airConductance",
] as const satisfies readonly WindowKey[];
const clamp = [
  "station.cavities",
  "product.projectedArea",
  "product.blowPressure",
  "product.pinchLength",
  "product.pinchLoad",
] as const satisfies readonly WindowKey[];
const BALANCE = "balance of forces; the pinch line load has no published value";
const ISO = "ISO 6358-1, 2013, clause 3; balance of mass and heat";
/** °C of the air in line and bottle. */
const AIR_TEMPERATURE = 20;

const pathOf = (input: Known<"product.airConductance">): AirPath => ({
  conductance: input["product.airConductance"],
  criticalRatio: input["product.airCriticalRatio"],
});

/** The isothermal time is the longer bound, so that an estimate is on the safe side. */
function fillRule(change: ChangeOfState): WindowRule {
  return windowRule([...bottle, "product.airSupply"], {
    quantity: `fill time, ${change}`,
    ...(change === "isothermal" ? { estimates: "blow" } : {}),
    meaning:
      "Time until the part is filled to the blow pressure. Isothermal is the slower bound, adiabatic the faster one.",
    unit: "s",
    source: ISO,
    value: (input) => {
      const to = input["product.blowPressure"] + ATMOSPHERE;
      const supply = input["product.airSupply"] + ATMOSPHERE;
      const fill = { volume: input["product.volume"], from: ATMOSPHERE, to, supply, temperature: AIR_TEMPERATURE };
      return fillTime(pathOf(input), fill, change);
    },
    limits: (input) => ({ high: input["station.steps.blow"] }),
    above: "Blow longer, or use a wider path or a supply pressure well above the blow pressure.",
  });
}

function ventRule(change: ChangeOfState): WindowRule {
  return windowRule([...bottle, "product.ventTo"], {
    quantity: `vent time, ${change}`,
    ...(change === "isothermal" ? { estimates: "vent" } : {}),
    meaning:
      "Time until the pressure has fallen to `ventTo`. Isothermal is the slower bound, adiabatic the faster one.",
    unit: "s",
    source: ISO,
    value: (input) =>
      ventTime(
        pathOf(input),
        {
          volume: input["product.volume"],
          blowPressure: input["product.blowPressure"],
          ventTo: input["product.ventTo"],
          temperature: AIR_TEMPERATURE,
        },
        change,
      ),
    limits: (input) => ({ high: input["station.steps.vent"] }),
    above:
      "Vent longer or through a wider path. The mold must not open under pressure. A computed time is never a safe limit.",
  });
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
    meaning: "Air at ambient pressure that the compressor takes in for one part.",
    unit: "m³",
    source: "ISO 8778, 2003, clause 4 (from memory)",
    value: (input) => freeAir(input["product.volume"], input["product.blowPressure"]).added,
  }),
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

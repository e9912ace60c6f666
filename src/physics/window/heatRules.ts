// The part of the process window on the heat of the melt: into the screw, out through the molds, and the water that takes it away.
import { coolingWater } from "#physics/cooling/coolingWater.ts";
import { enthalpyChange } from "#physics/cooling/enthalpyChange.ts";
import { moldHeat, moldTemperature, phasesOf, temperaturesOf } from "./windowInput.ts";
import { windowRule, type WindowRule } from "./windowRule.ts";

const ENTHALPY =
  "Gaur & Wunderlich, Heat Capacity of Linear Macromolecules, Journal of Physical and Chemical Reference Data 10, 1981, p. 119 (from memory)";
const HEAT_FLOW =
  "Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., 2007, sections 3.1 and 8.3 (from memory)";

/** Pellets in the hopper, °C. */
const ROOM = 23;

export const heatRules: readonly WindowRule[] = [
  windowRule(["delivery.throughput"], {
    quantity: "heat into the melt",
    meaning:
      "Heat that barrel and drive put into the melt at the running rate, waits included, from pellets of 23 °C, with the heat of fusion.",
    unit: "W",
    source: ENTHALPY,
    value: (input) => input["delivery.throughput"] * enthalpyChange(phasesOf(input), ROOM, temperaturesOf(input).melt),
  }),
  windowRule(["station.throughput"], {
    quantity: "heat into the mold",
    meaning:
      "Heat that one mold removes from parts and flash between melt and demold temperature, mean over the cycle. Layers near the mold get colder, so the real heat is larger.",
    unit: "W",
    source: ENTHALPY,
    value: moldHeat,
  }),
  windowRule(["station.throughput"], {
    quantity: "cooling water for the mold",
    meaning: "Flow of water that takes up the heat of one mold with a rise of `waterRise`.",
    unit: "m³/s",
    source: HEAT_FLOW,
    value: (input) => coolingWater(moldHeat(input), input["station.waterRise"]),
  }),
  windowRule(["delivery.throughput"], {
    quantity: "heat into all molds",
    meaning:
      "Heat that the molds of the cell remove together, where all parts have this material and these temperatures.",
    unit: "W",
    source: ENTHALPY,
    value: (input) => {
      const { melt, demold } = temperaturesOf(input);
      return input["delivery.throughput"] * enthalpyChange(phasesOf(input), demold, melt);
    },
  }),
  windowRule(["station.throughput", "station.moldResistance"], {
    quantity: "mold temperature at this heat load",
    meaning: "Mean temperature of the cavity's wall under its heat load. The cooling times follow from it.",
    unit: "°C",
    source: HEAT_FLOW,
    value: moldTemperature,
    limits: (input) => ({ high: temperaturesOf(input).demold }),
    above: "The mold cannot cool the part at this rate. Improve its cooling, use colder water, or run slower.",
    applies: (input) => input["station.moldResistance"] !== undefined,
  }),
];

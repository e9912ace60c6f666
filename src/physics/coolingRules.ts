// The part of the process window that asks how long the wall must stay in the mold.
import { coolableWall } from "./coolableWall.ts";
import { coolingTime } from "./coolingTime.ts";
import { oneTermCoolingTime } from "./oneTermCoolingTime.ts";
import { plausibleRanges } from "./plausibleRanges.ts";
import type { WallCooling } from "./wallCooling.ts";
import { wallTemperature } from "./wallTemperature.ts";
import { temperaturesOf, type Known, type WindowInput } from "./windowInput.ts";
import { windowRule, type Limits, type WindowRule } from "./windowRule.ts";

const SLAB = "Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, sections 3.3, 3.4 and 3.11 (from memory)";
const ONE_TERM = "Ballman & Shusman, Modern Plastics 37, 1959, p. 126 (from memory)";
const CONTACT = "station.moldContact";

/** Where no contact was given it counts as perfect: up to a third too short, so a time is then a lower bound. */
function wallOf(input: WindowInput): Omit<WallCooling, "wall"> {
  const { melt, mold } = temperaturesOf(input);
  return {
    diffusivity: input.material.coolingDiffusivity.value,
    conductivity: input.material.conductivity.value,
    meltTemperature: melt,
    moldTemperature: mold,
    moldContact: input[CONTACT] ?? Infinity,
  };
}

/** The wall touches the mold from the blow until the vent; absent where no cool time was given. */
function timeInMold(input: WindowInput): number | undefined {
  const cool = input["station.steps.cool"];
  return cool === undefined ? undefined : cool + (input["station.steps.blow"] ?? 0);
}

const enoughTime = (input: WindowInput): Limits => ({ high: timeInMold(input) });
const LONGER =
  "Cool longer, make this place thinner, run the mold colder or the melt cooler; give station.moldContact if known.";

function timeTo(wall: "product.wall.thickest" | "product.wall.mean", quantity: string): WindowRule {
  const place = wall === "product.wall.mean" ? "mean" : "inside face";
  return windowRule([wall], {
    quantity,
    unit: "s",
    source: SLAB,
    value: (input) => coolingTime({ ...wallOf(input), wall: input[wall] }, place, temperaturesOf(input).demold),
    limits: enoughTime,
    above: LONGER,
  });
}

function coolingShare(input: Known<"station.steps.cool" | "station.steps.drop" | "station.steps.close">): number {
  const others = ["drop", "close", "blow", "vent", "open", "remove"] as const;
  const cool = input["station.steps.cool"];
  return cool / others.reduce((sum, step) => sum + (input[`station.steps.${step}`] ?? 0), cool);
}

export const coolingRules: readonly WindowRule[] = [
  timeTo("product.wall.thickest", "cooling time of the thickest place to its inside face"),
  timeTo("product.wall.mean", "cooling time of the mean wall to its mean temperature"),
  windowRule(["product.wall.thickest"], {
    quantity: "cooling time of the thickest place, one term and perfect contact",
    unit: "s",
    source: ONE_TERM,
    value: (input) =>
      oneTermCoolingTime(
        { ...wallOf(input), wall: input["product.wall.thickest"] },
        "inside face",
        temperaturesOf(input).demold,
      ),
  }),
  windowRule(["product.wall.thickest", "station.steps.cool"], {
    quantity: "inside face of the thickest place at the vent",
    unit: "°C",
    source: SLAB,
    value: (input) =>
      wallTemperature(
        { ...wallOf(input), wall: input["product.wall.thickest"] },
        "inside face",
        timeInMold(input) ?? 0,
      ),
    limits: (input) => ({ high: temperaturesOf(input).demold }),
    above: LONGER,
  }),
  windowRule(["station.steps.cool"], {
    quantity: "thickest place that the cooling time allows",
    unit: "m",
    source: SLAB,
    value: (input) =>
      coolableWall(wallOf(input), "inside face", {
        time: timeInMold(input) ?? 0,
        demoldTemperature: temperaturesOf(input).demold,
      }),
    limits: (input) => ({ low: input["product.wall.thickest"] }),
    below: LONGER,
  }),
  windowRule(["station.steps.cool", "station.steps.drop", "station.steps.close"], {
    quantity: plausibleRanges.coolingShare.quantity,
    unit: "1",
    source: plausibleRanges.coolingShare.source,
    value: coolingShare,
    limits: () => plausibleRanges.coolingShare,
    below: "Unusual, not wrong: check the cool time and the other steps for a slip.",
    above: "Unusual, not wrong: a colder mold or a thinner thickest place may be worth more than faster motions.",
  }),
];

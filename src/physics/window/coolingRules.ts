// The part of the process window on the cooling of the wall in the mold.
import { coolableWall } from "#physics/cooling/coolableWall.ts";
import { coolingTime } from "#physics/cooling/coolingTime.ts";
import type { WallCooling } from "#physics/cooling/wallCooling.ts";
import { wallTemperature } from "#physics/cooling/wallTemperature.ts";
import { inflationTime } from "./inflation.ts";
import { temperaturesOf, type CompleteInput, type CoolingCriterion } from "./windowInput.ts";
import { windowRule, type Limits, type NamingInput, type WindowRule } from "./windowRule.ts";

const SLAB = "Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, sections 3.3, 3.4 and 3.11 (from memory)";
const ONE_TERM = "Ballman & Shusman, Modern Plastics 37, 1959, p. 126 (from memory), in its exact form";

const placeOf = (input: NamingInput): CoolingCriterion => input.coolingTo ?? "hottest point";
const placeText = (input: NamingInput): string => (placeOf(input) === "mean" ? "mean temperature" : "hottest point");

function wallOf(input: CompleteInput): Omit<WallCooling, "wall"> {
  const { melt, mold } = temperaturesOf(input);
  return {
    diffusivity: input.material.coolingDiffusivity.value,
    conductivity: input.material.conductivity.value,
    meltTemperature: melt,
    moldTemperature: mold,
    moldContact: input["station.moldContact"],
    ...insideAir(input),
  };
}

/** Without `product.insideAir` the inside counts as insulated, so the computed cooling is slower than the real one. */
function insideAir(input: CompleteInput): Pick<WallCooling, "insideAir"> {
  const transfer = input["product.insideAir.transfer"];
  const temperature = input["product.insideAir.temperature"];
  return transfer === undefined ? {} : { insideAir: { transfer, temperature } };
}

/** The wall touches the mold from the end of inflation until the vent; absent where no cool time is given. */
function timeInContact(input: CompleteInput): number | undefined {
  const cool = input["station.steps.cool"];
  return cool === undefined ? undefined : cool + (input["station.steps.blow"] ?? 0) - inflationTime(input);
}

const enoughTime = (input: CompleteInput): Limits => ({ high: timeInContact(input) });
const LONGER =
  "Cool longer, make this place thinner, or run the mold or the melt cooler. Give station.moldContact if it is known.";

export const coolingRules: readonly WindowRule[] = [
  windowRule(["product.wall.thickest"], {
    quantity: (input) => `cooling time of the thickest place, ${placeText(input)}`,
    estimates: "cool",
    meaning:
      "Time from the end of inflation until no point of the thickest place is above the demold temperature. It sets the cool step.",
    unit: "s",
    source: SLAB,
    value: (input) =>
      coolingTime(
        { ...wallOf(input), wall: input["product.wall.thickest"] },
        placeOf(input),
        temperaturesOf(input).demold,
      ),
    limits: enoughTime,
    above: LONGER,
  }),
  windowRule(["product.wall.mean"], {
    quantity: "cooling time of the mean wall to its mean temperature",
    meaning:
      "Time until the mean temperature of the mean wall is the demold temperature. The thickest place takes longer.",
    unit: "s",
    source: SLAB,
    value: (input) =>
      coolingTime({ ...wallOf(input), wall: input["product.wall.mean"] }, "mean", temperaturesOf(input).demold),
    limits: enoughTime,
    above: LONGER,
  }),
  windowRule(["product.wall.thickest"], {
    quantity: "cooling time of the thickest place, perfect contact",
    meaning:
      "Cooling time where the wall has the temperature of the mold at its face: a lower bound for every contact.",
    unit: "s",
    source: ONE_TERM,
    value: (input) =>
      coolingTime(
        { ...wallOf(input), moldContact: Infinity, wall: input["product.wall.thickest"] },
        placeOf(input),
        temperaturesOf(input).demold,
      ),
  }),
  windowRule(["product.wall.thickest"], {
    quantity: ({ assumed = [] }) =>
      assumed.includes("station.moldContact") ? "contact of wall and mold, assumed" : "contact of wall and mold",
    meaning: "Heat transfer from wall to mold. It falls where the part shrinks away from the mold.",
    unit: "W/(m² K)",
    source: "station.moldContact; where absent common practice, no published source",
    value: (input) => input["station.moldContact"],
  }),
  windowRule(["product.wall.thickest", "station.steps.cool"], {
    quantity: (input) => `${placeText(input)} of the thickest place at the vent`,
    meaning: "Temperature of the thickest place when the mold vents. It must not be above the demold temperature.",
    unit: "°C",
    source: SLAB,
    value: (input) =>
      wallTemperature(
        { ...wallOf(input), wall: input["product.wall.thickest"] },
        placeOf(input),
        timeInContact(input) ?? 0,
      ),
    limits: (input) => ({ high: temperaturesOf(input).demold }),
    above: LONGER,
  }),
  windowRule(["station.steps.cool"], {
    quantity: "thickest place that the cooling time allows",
    meaning: "Largest wall thickness that cools to the demold temperature in the given time.",
    unit: "m",
    source: SLAB,
    value: (input) =>
      coolableWall(wallOf(input), placeOf(input), {
        time: timeInContact(input) ?? 0,
        demoldTemperature: temperaturesOf(input).demold,
      }),
    limits: (input) => ({ low: input["product.wall.thickest"] }),
    below: LONGER,
  }),
];

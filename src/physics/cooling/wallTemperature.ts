// The temperature in a blown wall while it cools, as a sum of profiles.
import exp from "@stdlib/math-base-special-exp";
import { invariant } from "#foundation/invariant.ts";
import { biotNumber } from "./biotNumber.ts";
import { fourierNumber } from "./fourierNumber.ts";
import { slabMode, type SlabMode } from "./slabMode.ts";
import { contactWeight, type FaceBiots } from "./slabRoot.ts";
import type { WallCooling, WallPlace } from "./wallCooling.ts";

/** Profiles below exp(−40) do not change a double. */
const DECAYED = 40;
/** Enough down to Fo = 2.5e-5, less than 1 ms in any blown wall. */
const MOST_PROFILES = 400;

/**
 * Temperature at a place of a wall after some time in the mold.
 *
 *     T(x, t) = T∞(x) + Σₙ cₙ Xₙ(x) exp(−ζₙ² Fo)
 *     perfect contact, inside insulated: (T − T_w)/(T_m − T_w) = Σₘ (4/π) (−1)^m/(2m + 1) exp(−(2m + 1)² π² Fo/4)
 *     and for the mean: Σₘ 8/((2m + 1)² π²) exp(−(2m + 1)² π² Fo/4)
 *
 * Units: °C; time in s.
 * Shape: falls from the melt temperature to T∞, the straight line between air and mold (the mold temperature alone when
 * the inside is insulated).
 * Holds for: a wall that is thin against its radius, constant diffusivity, heat of fusion only as part of that diffusivity.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, sections 3.3, 3.4 and 3.11 (from memory)
 * Throws: BrokenInvariant for a wall, contact or time that is not physical.
 *
 * @example
 * wallTemperature({ wall: 0.04, diffusivity: 18.8e-6, conductivity: 63.9, meltTemperature: -20, moldTemperature: 60, moldContact: 500 }, "inside face", 480) // 43.0
 */
export function wallTemperature(cooling: WallCooling, place: WallPlace, time: number): number {
  return temperatureCourse(cooling, place)(time);
}

/** The temperature over time, with the profiles computed once; for root finding. */
export function temperatureCourse(cooling: WallCooling, place: WallPlace): (time: number) => number {
  const { wall, diffusivity, conductivity, meltTemperature } = cooling;
  invariant(wall > 0 && diffusivity > 0 && cooling.moldContact > 0, "a wall can be cooled", { ...cooling });
  const biots: FaceBiots = {
    inside: biotNumber(cooling.insideAir?.transfer ?? 0, wall, conductivity),
    outside: biotNumber(cooling.moldContact, wall, conductivity),
  };
  const final = finalProfile(cooling, biots);
  const modes: SlabMode[] = [];
  return (time) => {
    invariant(time >= 0, "a wall cools forward in time", { time });
    if (time === 0) return meltTemperature;
    const fourier = fourierNumber(diffusivity, time, wall);
    let temperature = final[place];
    for (let index = 0; index < MOST_PROFILES; index += 1) {
      const mode = (modes[index] ??= slabMode(index, biots));
      const decay = mode.root * mode.root * fourier;
      if (decay > DECAYED) break;
      const start = (meltTemperature - final["inside face"]) * mode.level - final.rise * mode.slope;
      temperature += start * valueAt(mode, place) * exp(-decay);
    }
    return temperature;
  };
}

function valueAt(mode: SlabMode, place: WallPlace): number {
  if (place === "mean") return mode.mean;
  return place === "inside face" ? mode.insideFace : mode.moldFace;
}

type FinalProfile = Readonly<Record<WallPlace | "rise", number>>;

/** The final temperature: a straight line from the inside face that rises by `rise` to the mold face. */
function finalProfile(cooling: WallCooling, biots: FaceBiots): FinalProfile {
  const [inside, outside] = [contactWeight(biots.inside), contactWeight(biots.outside)];
  const air = cooling.insideAir?.temperature ?? cooling.moldTemperature;
  const whole = inside + (1 - inside) * outside;
  const rise = (inside * outside * (cooling.moldTemperature - air)) / whole;
  const insideFace = (inside * air + (1 - inside) * outside * cooling.moldTemperature) / whole;
  return { "inside face": insideFace, "mold face": insideFace + rise, mean: insideFace + rise / 2, rise };
}

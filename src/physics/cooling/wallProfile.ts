// The temperature over the thickness of a cooling wall at one time, as a sum of profiles.
import exp from "@stdlib/math-base-special-exp";
import { invariant } from "#foundation/invariant.ts";
import { biotNumber } from "./biotNumber.ts";
import { fourierNumber } from "./fourierNumber.ts";
import { modeSlope, modeValue, slabMode, type SlabMode } from "./slabMode.ts";
import { contactWeight, type FaceBiots } from "./slabRoot.ts";
import type { WallCooling } from "./wallCooling.ts";

/** Profiles below exp(−40) do not change a double. */
const DECAYED = 40;
/** Enough down to Fo = 2.5e-5, less than 1 ms in any blown wall. */
const MOST_PROFILES = 400;

/** The final temperature: a straight line from the inside face that rises by `rise` to the mold face. */
interface FinalProfile {
  readonly insideFace: number;
  readonly rise: number;
}

export interface WallProfile {
  readonly final: FinalProfile;
  readonly terms: readonly { readonly mode: SlabMode; readonly weight: number }[];
}

/** The profile over time, with its modes computed once; for root finding. */
export function profileCourse(cooling: WallCooling): (time: number) => WallProfile {
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
    const fourier = fourierNumber(diffusivity, time, wall);
    const terms: { mode: SlabMode; weight: number }[] = [];
    for (let index = 0; index < MOST_PROFILES; index += 1) {
      const mode = (modes[index] ??= slabMode(index, biots));
      const decay = mode.root * mode.root * fourier;
      if (decay > DECAYED) break;
      const start = (meltTemperature - final.insideFace) * mode.level - final.rise * mode.slope;
      terms.push({ mode, weight: start * exp(-decay) });
    }
    return { final, terms };
  };
}

function finalProfile(cooling: WallCooling, biots: FaceBiots): FinalProfile {
  const [inside, outside] = [contactWeight(biots.inside), contactWeight(biots.outside)];
  const air = cooling.insideAir?.temperature ?? cooling.moldTemperature;
  const whole = inside + (1 - inside) * outside;
  const rise = (inside * outside * (cooling.moldTemperature - air)) / whole;
  return { insideFace: (inside * air + (1 - inside) * outside * cooling.moldTemperature) / whole, rise };
}

/** The temperature at a place from 0, the inside face, to 1, the mold. */
export function profileAt({ final, terms }: WallProfile, place: number): number {
  return terms.reduce(
    (sum, { mode, weight }) => sum + weight * modeValue(mode, place),
    final.insideFace + final.rise * place,
  );
}

/** Its rise toward the mold at a place. */
export function profileSlope({ final, terms }: WallProfile, place: number): number {
  return terms.reduce((sum, { mode, weight }) => sum + weight * modeSlope(mode, place), final.rise);
}

export function profileMean({ final, terms }: WallProfile): number {
  return terms.reduce((sum, { mode, weight }) => sum + weight * mode.mean, final.insideFace + final.rise / 2);
}

// One profile of a cooling wall with its weights in an initial temperature.
import cos from "@stdlib/math-base-special-cos";
import sin from "@stdlib/math-base-special-sin";
import { contactWeight, slabRoot, type FaceBiots } from "./slabRoot.ts";

/** Profile X(x) = (1 − g) ζ cos ζx + g sin ζx over 0 ≤ x ≤ 1 from the inside face to the mold. */
export interface SlabMode {
  /** ζ: the profile decays as exp(−ζ² Fo). */
  readonly root: number;
  /** (1 − g) ζ and g, the weights of cosine and sine. */
  readonly cosine: number;
  readonly sine: number;
  readonly mean: number;
  /** ∫X dx / ∫X² dx: its weight in a wall that starts 1 above its final temperature. */
  readonly level: number;
  /** ∫xX dx / ∫X² dx: its weight in a wall that starts x above its final temperature. */
  readonly slope: number;
}

/**
 * The n-th (from 0) profile of a wall between two faces.
 *
 *     X(x) = (1 − g) ζ cos ζx + g sin ζx,   g = B_i / (1 + B_i)
 *
 * Units: none.
 * Shape: level · X(0) is the constant C₁ of the one-term charts when the inside is insulated.
 * Holds for: any two Biot numbers from 0 to Infinity that are not both 0.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, section 3.11 (from memory)
 * Throws: BrokenInvariant where both faces are insulated.
 *
 * @example
 * slabMode(0, { inside: 0, outside: 1 }).level * slabMode(0, { inside: 0, outside: 1 }).cosine // 1.1191
 */
export function slabMode(index: number, biots: FaceBiots): SlabMode {
  const root = slabRoot(index, biots);
  const sine = contactWeight(biots.inside);
  const cosine = (1 - sine) * root;
  const [s, c] = [sin(root), cos(root)];
  const mean = (cosine * s + sine * (1 - c)) / root;
  const moment = cosine * (s / root + (c - 1) / (root * root)) + sine * (s / (root * root) - c / root);
  const cross = (s * s) / root;
  const swing = (s * c) / (2 * root);
  const square = cosine * cosine * (1 / 2 + swing) + sine * sine * (1 / 2 - swing) + cosine * sine * cross;
  return {
    root,
    cosine,
    sine,
    mean,
    level: mean / square,
    slope: moment / square,
  };
}

/** X at a place. */
export function modeValue({ root, cosine, sine }: SlabMode, place: number): number {
  return cosine * cos(root * place) + sine * sin(root * place);
}

/** dX/dx at a place. */
export function modeSlope({ root, cosine, sine }: SlabMode, place: number): number {
  return root * (sine * cos(root * place) - cosine * sin(root * place));
}

// The numbers at which a temperature profile fits a wall and both its faces.
import cos from "@stdlib/math-base-special-cos";
import sin from "@stdlib/math-base-special-sin";
import { PI } from "./pi.ts";
import { rootBetween } from "./rootBetween.ts";

/** Biot numbers of the two faces: 0 insulated, Infinity perfect contact. */
export interface FaceBiots {
  readonly inside: number;
  readonly outside: number;
}

/** A face as grip · θ ± slack · dθ/dx = 0 with grip + slack = 1, so that perfect contact needs no infinite number. */
export function gripOf(biot: number): number {
  return biot === Infinity ? 1 : biot / (1 + biot);
}

/**
 * The n-th (from 0) root ζ of the condition that both faces set to a profile through a wall.
 *
 *     (ζ² − B_i B_o) sin ζ = ζ (B_i + B_o) cos ζ;   insulated inside: ζ tan ζ = B_o
 *
 * Units: none; B_i and B_o are the Biot numbers of inside and mold face.
 * Shape: exactly one root above nπ and up to (n + 1)π; it rises with either Biot number.
 * Holds for: any two Biot numbers from 0 to Infinity that are not both 0.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, section 3.11 and appendix IV (from memory)
 * Throws: BrokenInvariant where both faces are insulated.
 *
 * @example
 * slabRoot(0, { inside: 0, outside: 1 }) // 0.8603
 */
export function slabRoot(index: number, biots: FaceBiots): number {
  const [inside, outside] = [gripOf(biots.inside), gripOf(biots.outside)];
  const [insideSlack, outsideSlack] = [1 - inside, 1 - outside];
  const mixed = inside * outsideSlack + outside * insideSlack;
  const misfit = (root: number) =>
    (insideSlack * outsideSlack * root * root - inside * outside) * sin(root) - root * mixed * cos(root);
  // Just past the multiples of π: at 0 every condition is met by the profile that is nothing at all, and with perfect
  // contact on both sides the roots are multiples themselves.
  const justPast = (multiple: number) => multiple * PI + (multiple + 1) * 1e-12;
  return rootBetween(misfit, justPast(index), justPast(index + 1));
}

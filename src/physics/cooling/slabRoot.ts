// The eigenvalues of a temperature profile between the two faces of a wall.
import atan from "@stdlib/math-base-special-atan";
import { invariant } from "#foundation/invariant.ts";
import { PI } from "#physics/numeric/pi.ts";

/** Limit of Newton steps; a few suffice. */
const MOST_STEPS = 50;

/** Biot numbers of the two faces: 0 insulated, Infinity perfect contact. */
export interface FaceBiots {
  readonly inside: number;
  readonly outside: number;
}

/** The weight g of θ in the condition g · θ ± (1 − g) · dθ/dx = 0 of a face, so that perfect contact needs no infinite number. */
export function contactWeight(biot: number): number {
  return biot === Infinity ? 1 : biot / (1 + biot);
}

/**
 * The n-th (from 0) root ζ of the boundary condition of both faces.
 *
 *     (ζ² − B_i B_o) sin ζ = ζ (B_i + B_o) cos ζ;   insulated inside: ζ tan ζ = B_o
 *     or ζ = nπ + arctan(B_i/ζ) + arctan(B_o/ζ), each face shifting the profile by its own angle
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
export function slabRoot(index: number, { inside, outside }: FaceBiots): number {
  invariant(inside > 0 || outside > 0, "a wall is not insulated on both faces", { inside, outside });
  // From the left Newton steps cannot overshoot, because the slope of the residual falls with ζ.
  let root = index * PI;
  for (let step = 0; step < MOST_STEPS; step++) {
    const [inner, outer] = [shiftAt(inside, root), shiftAt(outside, root)];
    const next = root + (index * PI + inner.angle + outer.angle - root) / (1 + inner.fall + outer.fall);
    if (next <= root) break;
    root = next;
  }
  return root;
}

/** The angle by which a face shifts the profile, and its rate of fall with ζ. */
function shiftAt(biot: number, root: number): { readonly angle: number; readonly fall: number } {
  if (biot === 0) return { angle: 0, fall: 0 };
  if (biot === Infinity) return { angle: PI / 2, fall: 0 };
  return { angle: root === 0 ? PI / 2 : atan(biot / root), fall: biot / (root * root + biot * biot) };
}

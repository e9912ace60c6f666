// The melt that replaces the old color: the screw and a manifold as two stirred tanks in series.
import exp from "@stdlib/math-base-special-exp";
import { invariant } from "#foundation/invariant.ts";
import { rootBetween } from "#physics/numeric/rootBetween.ts";

/**
 * Share of old material that leaves a manifold after a mass has passed a screw and the manifold, both stirred tanks.
 *
 *     c = x·a·(e^(−m/a) − e^(−m/b))/(a − b) + e^(−m/b), for a = b: x·(m/a)·e^(−m/a) + e^(−m/a); a screw, b manifold
 *
 * Units: kg in, share out.
 * Shape: numbers.
 * Holds for: complete mixing in each tank, which for a screw gives an upper bound; no melt sticks to the walls.
 * Source: Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, chapter 14, tanks in series (from memory)
 * Throws: BrokenInvariant where a hold-up is not above 0 or the mass is below 0.
 * @example
 * oldShare({ screw: 1, manifold: 1 }, 3) // 0.1991482735
 */
export function oldShare(
  {
    screw: a,
    manifold: b,
    screwShare: x = 1,
  }: { readonly screw: number; readonly manifold: number; readonly screwShare?: number },
  mass: number,
): number {
  invariant(a > 0 && b > 0 && mass >= 0, "hold-ups are above 0 and the mass is not below", { a, b, mass });
  const own = exp(-mass / b);
  if (Math.abs(a - b) < 1e-9 * a) return x * (mass / a) * exp(-mass / a) + own;
  return (x * a * (exp(-mass / a) - own)) / (a - b) + own;
}

/**
 * Melt through the dies of several manifolds, one after another, until the share of old material is below a limit in each, kg.
 *
 *     for each manifold the mass at which both c of `oldShare` and the screw's own share x·e^(−m/a) = the residue
 *
 * Units: kg.
 * Shape: a number.
 * Holds for: residues from 1e-6 to 0.5; the screw stays stirred while one manifold after the other is purged.
 * Source: Levenspiel, Chemical Reaction Engineering, 3rd ed., 1999, chapter 14, tanks in series (from memory)
 * Throws: BrokenInvariant where a hold-up is not above 0.
 * @example
 * purgeMass({ screw: 1, manifold: 1, manifolds: 1, residue: 0.01 }) // 6.6383520680
 */
export function purgeMass({
  screw,
  manifold,
  manifolds,
  residue,
}: {
  readonly screw: number;
  readonly manifold: number;
  readonly manifolds: number;
  readonly residue: number;
}): number {
  let [total, screwShare] = [0, 1];
  for (let each = 0; each < manifolds; each++) {
    const most = 60 * (screw + manifold);
    const excess = (mass: number): number =>
      Math.max(oldShare({ screw, manifold, screwShare }, mass), screwShare * exp(-mass / screw)) - residue;
    // After the first maximum the share only falls.
    const from = excess(0) > 0 ? 0 : most;
    const mass = from === most ? 0 : rootBetween(excess, 0, most);
    total += mass;
    screwShare *= exp(-mass / screw);
  }
  return total;
}

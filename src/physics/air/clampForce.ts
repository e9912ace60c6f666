// The force that keeps a mold closed against the blow pressure and pinches off the flash.

/**
 * Clamp force of one station.
 *
 *     F = z (A p + l q) m
 *
 * Units: z cavities, projected area A in m², gauge pressure p in Pa, pinch-off length l in m per cavity, line load q in
 * N/m, margin m ≥ 1 as a factor; F in N.
 * Shape: proportional to pressure and area.
 * Holds for: pressure and pinch-off at the same time. The line load has no published value and no default.
 * Source: Derived here from the balance of forces on a closed mold half
 * Throws: nothing.
 *
 * @example
 * clampForce({ cavities: 2, projectedArea: 0.018, blowPressure: 700000, pinchLength: 0.09, pinchLoad: 100000, margin: 1 }) // 43200
 */
export function clampForce(clamp: {
  readonly cavities: number;
  readonly projectedArea: number;
  readonly blowPressure: number;
  readonly pinchLength: number;
  readonly pinchLoad: number;
  readonly margin: number;
}): number {
  const opening = clamp.projectedArea * clamp.blowPressure;
  const pinching = clamp.pinchLength * clamp.pinchLoad;
  return clamp.cavities * (opening + pinching) * clamp.margin;
}

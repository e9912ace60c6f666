// The time that the screw needs to replace a shot.

/**
 * Recharge time from a plasticating rate.
 *
 *     t = m / ṁ
 *
 * Units: m in kg, ṁ in kg/s while the screw turns; t in s.
 * Shape: proportional to the shot.
 * Holds for: a rate measured while recharging, not averaged over a cycle with its waits.
 * Source: Derived here from the conservation of mass
 * Throws: nothing.
 *
 * @example
 * rechargeTime(0.110, 110 / 3600) // 3.6
 */
export function rechargeTime(shotMass: number, rate: number): number {
  return shotMass / rate;
}

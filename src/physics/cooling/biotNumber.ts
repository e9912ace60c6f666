// The resistance to cooling inside a wall relative to that at its face.

/**
 * Biot number of a face of a wall.
 *
 *     Bi = h s / k
 *
 * Units: h in W/(m² K), s in m, k in W/(m K); Bi has none.
 * Shape: 0 for an insulated face, Infinity for perfect contact.
 * Holds for: any face whose heat flow is proportional to a temperature difference.
 * Source: Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., 2007, section 5.2 (from memory)
 * Throws: nothing.
 *
 * @example
 * biotNumber(500, 0.04, 63.9) // 0.313
 */
export function biotNumber(transfer: number, wall: number, conductivity: number): number {
  return (transfer * wall) / conductivity;
}

// The resistance of a melt to stretching by its own weight.

/**
 * Elongational viscosity of a slowly stretched melt.
 *
 *     η_E = 3 η₀
 *
 * Units: Pa s.
 * Shape: proportional to the zero-shear viscosity.
 * Holds for: slow stretching; strain-hardening melts (LDPE, branched PC) sag less.
 * Source: Trouton, On the Coefficient of Viscous Traction and its Relation to that of Viscosity, Proceedings of the Royal Society A 77, 1906, p. 426 (from memory)
 * Throws: nothing.
 *
 * @example
 * elongationalViscosity(20000) // 60000
 */
export function elongationalViscosity(zeroShearViscosity: number): number {
  return 3 * zeroShearViscosity;
}

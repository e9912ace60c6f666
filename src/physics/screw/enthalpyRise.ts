// The heat that a kilogram of plastic takes up from pellet to melt.

/**
 * Heat to bring a plastic from one temperature to another, melting its crystals.
 *
 *     Δh = c (T_m − T_0) + λ
 *
 * Units: c in J/(kg K), temperatures in °C, heat of fusion λ in J/kg; Δh in J/kg.
 * Shape: linear; λ is about 31 % of the total of HDPE.
 * Holds for: a mean specific heat over the range, without the melting peak.
 * Source: Society of the Plastics Industry, Plastics Engineering Handbook, 4th ed., 1976, chapter on extrusion; the heat of fusion added
 * Throws: nothing.
 *
 * @example
 * enthalpyRise({ specificHeat: 2302.74, from: 23.889, to: 218.333, heatOfFusion: 0 }) // 447754
 */
export function enthalpyRise(heating: {
  readonly specificHeat: number;
  readonly from: number;
  readonly to: number;
  readonly heatOfFusion: number;
}): number {
  return heating.specificHeat * (heating.to - heating.from) + heating.heatOfFusion;
}

// The energy of the screw's drive for a kilogram of melt.

/** 15 to 5 lb/h per hp: Society of the Plastics Industry, Plastics Engineering Handbook, 4th ed., 1976 (read), in J/kg. */
export const usualDriveEnergy = { low: 0.3946e6, high: 1.1837e6 } as const;

/**
 * Specific energy of the drive.
 *
 *     e = P / ṁ
 *
 * Units: P in W, ṁ in kg/s; e in J/kg.
 * Shape: 10 lb/h per hp are 592 kJ/kg.
 * Holds for: power at the screw while it turns.
 * Source: Society of the Plastics Industry, Plastics Engineering Handbook, 4th ed., 1976, chapter on extrusion
 * Throws: nothing.
 *
 * @example
 * specificDriveEnergy(745.7, 10 * 0.000125998) // 591835
 */
export function specificDriveEnergy(power: number, rate: number): number {
  return power / rate;
}

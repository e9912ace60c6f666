// The stroke of a screw for a shot and its cushion.
import { PI } from "#physics/numeric/pi.ts";

/**
 * Stroke of a reciprocating screw.
 *
 *     x = 4 m (1 + c) / (ρ π D²)
 *
 * Units: m in kg, cushion c as a share of the shot, ρ the MELT density in kg/m³, D in m; x in m.
 * Shape: half the diameter needs four times the stroke.
 * Holds for: melt that fills the barrel. The longest usual stroke is about 4 D (common practice, no published source).
 * Source: Derived here from the conservation of mass
 * Throws: nothing.
 *
 * @example
 * shotStroke({ mass: 0.240, cushion: 0.1, meltDensity: 760, screwDiameter: 0.0635 }) // 0.1097
 */
export function shotStroke(shot: {
  readonly mass: number;
  readonly cushion: number;
  readonly meltDensity: number;
  readonly screwDiameter: number;
}): number {
  const area = (PI * shot.screwDiameter * shot.screwDiameter) / 4;
  return (shot.mass * (1 + shot.cushion)) / (shot.meltDensity * area);
}

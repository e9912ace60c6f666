// The rise of the melt temperature with the rate of the screw.

/** Two measurements: at the rate `from` the melt has its stated temperature, at `per` more it is hotter by `rise`. */
export interface RiseWithRate {
  readonly from: number;
  readonly rise: number;
  readonly per: number;
}

/**
 * Rise of the melt temperature above the stated one, from the plasticating rate.
 *
 *     ΔT = rise (ṁ − from) / per
 *
 * Units: ṁ, from and per in kg/s; rise and ΔT in K.
 * Shape: linear; negative below the rate at which the temperature was stated.
 * Holds for: rates near the two measurements, the same barrel temperatures and back pressure.
 * Source: Derived here as a straight line through two measurements; a rise with the rate is common practice, no published source
 * Throws: nothing.
 *
 * @example
 * meltRise(0.035, { from: 0.030, rise: 4, per: 0.0025 }) // 8.0
 */
export function meltRise(rate: number, { from, rise, per }: RiseWithRate): number {
  return (rise * (rate - from)) / per;
}

// Time relative to the time that heat needs to cross a wall.

/**
 * Fourier number of a wall that is cooled from one side.
 *
 *     Fo = α t / s²
 *
 * Units: α in m²/s, t in s, s in m; Fo has none.
 * Shape: proportional to time; a wall twice as thick takes four times as long to the same number.
 * Holds for: the whole wall s between the cooled and the other face (half the wall where both faces are cooled equally).
 * Source: Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., 2007, section 5.2 (from memory)
 * Throws: nothing.
 *
 * @example
 * fourierNumber(18.8e-6, 480, 0.04) // 5.64
 */
export function fourierNumber(diffusivity: number, time: number, wall: number): number {
  return (diffusivity * time) / (wall * wall);
}

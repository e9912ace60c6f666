// What the cooling of a blown wall depends on: cold mold on one side, air on the other.

export interface WallCooling {
  /** Thickness, m. */
  readonly wall: number;
  /** Effective thermal diffusivity between melt and demold temperature, m²/s. */
  readonly diffusivity: number;
  /** Thermal conductivity of the plastic, W/(m K). */
  readonly conductivity: number;
  /** °C, the same all through the wall at the start. */
  readonly meltTemperature: number;
  /** Of the cavity's surface, °C. */
  readonly moldTemperature: number;
  /** Heat that passes from plastic to mold, W/(m² K), above 0; Infinity for perfect contact. */
  readonly moldContact: number;
  /** Air inside that takes heat as well; absent where the inside counts as insulated. */
  readonly insideAir?: {
    /** °C */
    readonly temperature: number;
    /** W/(m² K) */
    readonly transfer: number;
  };
}

/** Where in the wall a temperature is asked for; the inside face is the last to cool when only the mold cools. */
export type WallPlace = "inside face" | "mold face" | "mean";

// The inputs of the cooling of a blown wall between the cold mold and the air inside.

export interface WallCooling {
  /** Thickness, m. */
  readonly wall: number;
  /** Effective thermal diffusivity between melt and demold temperature, m²/s. */
  readonly diffusivity: number;
  /** Thermal conductivity of the plastic, W/(m K). */
  readonly conductivity: number;
  /** °C, the same throughout the wall at the start. */
  readonly meltTemperature: number;
  /** Of the cavity's surface, °C. */
  readonly moldTemperature: number;
  /** Heat transfer from plastic to mold, W/(m² K), above 0; Infinity for perfect contact. */
  readonly moldContact: number;
  /** Air inside that cools as well; absent where the inside counts as insulated. */
  readonly insideAir?: {
    /** °C */
    readonly temperature: number;
    /** W/(m² K) */
    readonly transfer: number;
  };
}

/** The place of a temperature in the wall. The hottest point is the inside face where only the mold cools, else within the wall. */
export type WallPlace = "hottest point" | "inside face" | "mold face" | "mean";

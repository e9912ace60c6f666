// What the process window must know of a plastic, each value with its range, its source and how far to trust it.

/** `read`: seen in the named source. `medium` and `low`: from memory of it, agreed upon more or less widely. */
export type Confidence = "read" | "medium" | "low";

export interface Datum {
  readonly value: number;
  /** The range of blow molding grades; the value is a middle, not a law. */
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly confidence: Confidence;
}

export interface Material {
  /** As a scenario names it. */
  readonly name: string;
  readonly fullName: string;
  /** Of the solid at room temperature: W/(m K), kg/m³, J/(kg K). Its diffusivity is worked out, never stored. */
  readonly conductivity: Datum;
  readonly density: Datum;
  readonly specificHeat: Datum;
  /** kg/m³: what turns a shot's mass into volume. */
  readonly meltDensity: Datum;
  /** m²/s between melt and demold temperature: the freezing of crystals is inside this number. */
  readonly coolingDiffusivity: Datum;
  /** J/kg of the grade as it crystallizes; 0 for what does not. */
  readonly heatOfFusion: Datum;
  /** °C */
  readonly meltTemperature: Datum;
  readonly moldTemperature: Datum;
  readonly demoldTemperature: Datum;
  /** Pa s in slow shear at the melt temperature: it decides the sag. */
  readonly zeroShearViscosity: Datum;
  /** Pa s at a shear rate of 100 1/s, and n of the power law around it: they decide the stress in the die. */
  readonly dieViscosity: Datum;
  readonly powerLawIndex: Datum;
  /** Pa at the wall, from which gross melt fracture is to be expected. */
  readonly fractureStress: Datum;
  /** Seconds at melt temperature before it suffers; absent where an hour does no harm worth a warning. */
  readonly timeAtHeat?: Datum;
}

/** The shear rate at which dieViscosity is stated, 1/s. */
export const DIE_REFERENCE_RATE = 100;

type Place = Pick<Datum, "source" | "confidence">;
type DatumMaker = (value: number, low: number, high: number) => Datum;

/** A maker of data that all stand in the same place. */
export function dataFrom(source: string, confidence: Confidence): DatumMaker {
  const place: Place = { source, confidence };
  return (value, low, high) => ({ value, low, high, ...place });
}

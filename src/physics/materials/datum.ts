// One value of a material with its range, its source and its confidence.

/** `read`: read in the named source. `medium` and `low`: from memory, with more or less agreement among sources. */
export type Confidence = "read" | "medium" | "low";

export interface Datum {
  readonly value: number;
  /** The range of blow molding grades. */
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly confidence: Confidence;
}

type Place = Pick<Datum, "source" | "confidence">;
type DatumMaker = (value: number, low: number, high: number) => Datum;

/** A maker of data that share a source. */
export function dataFrom(source: string, confidence: Confidence): DatumMaker {
  const place: Place = { source, confidence };
  return (value, low, high) => ({ value, low, high, ...place });
}

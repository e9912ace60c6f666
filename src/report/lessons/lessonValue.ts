// A value of a lesson as it was found, and its words in a text.
import type { CircuitOwner } from "#analysis/ideal/idealCircuit.ts";
import { grouped, percent, seconds } from "#report/words/digits.ts";
import { ownerName } from "#report/words/tradeWords.ts";

/** What a value calls all stations together. */
export const allStations = "stations" satisfies CircuitOwner["kind"];

export type LessonValue =
  | { readonly unit: "s" | "share" | "ratio" | "an hour" | "count"; readonly number: number }
  | { readonly unit: "name"; readonly name: string };

/** Lessons speak of molds, not of stations. */
const nameOf = (name: string): string => (name === allStations ? "the molds" : ownerName(name));

/** As `3.57 s`, `28 %`, `2.34`, `583`, `the screw`. */
export function wordsOfValue(value: LessonValue): string {
  if (value.unit === "name") return nameOf(value.name);
  const { unit, number } = value;
  if (unit === "s") return seconds(number);
  if (unit === "share") return percent(number);
  if (unit === "ratio") return number.toFixed(2);
  return grouped(Math.round(number));
}

// A value of a lesson as it was found, and its words in a text.
import { PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import { grouped, percent, seconds } from "#report/words/digits.ts";

export type LessonValue =
  | { readonly unit: "s" | "share" | "ratio" | "an hour" | "count"; readonly number: number }
  | { readonly unit: "name"; readonly name: string };

/** Names that a cell has beside those of its stations, as a sentence calls them. */
const common: Readonly<Record<string, string>> = {
  [PLASTICATOR]: "the screw",
  [VALVE]: "the valve",
  stations: "the molds",
  crew: "the crew",
};

/** As `3.57 s`, `28 %`, `2.34`, `583`, `the screw`. */
export function wordsOfValue(value: LessonValue): string {
  if (value.unit === "name") return common[value.name] ?? value.name;
  const { unit, number } = value;
  if (unit === "s") return seconds(number);
  if (unit === "share") return percent(number);
  if (unit === "ratio") return number.toFixed(2);
  return grouped(Math.round(number));
}

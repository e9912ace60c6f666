// What layouts are chosen by: a measure that all of them have, found by its name, and which way is better.
import { COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import { CELL, type MeasureValue } from "#analysis/replication/measures.ts";

export interface Criterion {
  readonly resource: string;
  readonly measure: string;
  readonly unit: string;
  readonly better: "more" | "less";
}

export const usualCriterion = "good parts per hour";

/** Beginnings of the names of measures of which less is better; of all others more is. */
const lessIsBetter = ["seconds per shot", "cycle time", "reject", "lost", "excess", "purged", "virgin", "surplus"];

/** The measures that all layouts have, as `--by` names them; those of a station with its name before a colon. */
export function criteria(layouts: readonly (readonly MeasureValue[])[]): ReadonlyMap<string, Criterion> {
  const [first = [], ...others] = layouts.map((values) => new Map(values.map((value) => [nameOf(value), value])));
  return new Map(
    [...first]
      .filter(([name, { unit }]) => others.every((other) => other.get(name)?.unit === unit))
      .map(([name, { resource, measure, unit }]) => [
        name,
        { resource, measure, unit, better: betterOf(measure, unit) },
      ]),
  );
}

function nameOf({ resource, measure }: MeasureValue): string {
  return resource === CELL ? measure : `${resource}: ${measure}`;
}

/** Amounts of money are costs: their unit is a currency and no unit of a rate, a time or a share. */
function betterOf(measure: string, unit: string): Criterion["better"] {
  const isCost = !["1/h", "kg/h", "s", "share"].includes(unit);
  return isCost || lessIsBetter.some((beginning) => measure.startsWith(beginning)) ? "less" : "more";
}

/** By its whole name, or by its beginning where only one measure begins so; `cost` is that of 1,000 good parts. */
export function criterionNamed(text: string, known: ReadonlyMap<string, Criterion>): Criterion | undefined {
  const wanted = plain(text);
  const names = [...known.keys()];
  const begun = wanted === "" ? [] : names.filter((name) => plain(name).startsWith(wanted));
  const exact = names.find((name) => plain(name) === wanted);
  const usual = wanted === "cost" ? COST_MEASURE : undefined;
  const name = exact ?? usual ?? (begun.length === 1 ? begun[0] : undefined);
  return name === undefined ? undefined : known.get(name);
}

/** `1,000` and `1000` are one number. */
const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replaceAll(/(?<=\d),(?=\d)/gu, "");

// The layouts of a comparison that can be the best in a measure of the cell.
import { areComparable } from "#analysis/indicators/costStudy.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { amongBest } from "#analysis/statistics/amongBest.ts";
import { CONFIDENCE } from "#analysis/statistics/interval.ts";
import { differenceOfTerms, errorOf } from "./controlled.ts";
import type { Study } from "./study.ts";
import { measureOf } from "./summarizeMeasures.ts";

/** The largest mean first; none where a study lacks the measure or no replication has it in all. */
export function bestLayouts(studies: readonly Study[], measure: string, sign: 1 | -1 = 1): readonly Study[] {
  const summaries = studies.map((study) => measureOf(study.measures, CELL, measure));
  const found = summaries.map((summary) => summary?.controlled?.values ?? summary?.values ?? []);
  const whole = Array.from({ length: Math.min(...found.map(({ length }) => length)) }, (_, i) => i).filter((i) =>
    found.every((values) => typeof values[i] === "number"),
  );
  if (whole.length === 0) return [];
  const mean = (study: Study): number => sign * (measureOf(study.measures, CELL, measure)?.interval.mean ?? 0);
  const unseen = (one: number, other: number): number =>
    errorOf(differenceOfTerms(summaries[one]?.controlled?.terms, summaries[other]?.controlled?.terms));
  const signed = found.map((values) => whole.map((i) => sign * (values[i] ?? 0)));
  return amongBest(signed, CONFIDENCE, unseen)
    .map((place) => studies[place]!)
    .toSorted((one, other) => mean(other) - mean(one));
}

/** Whether the costs of all are sums of the same items in the same currency. */
export function haveComparableCosts([first, ...others]: readonly Study[]): boolean {
  const hasCosts = first !== undefined && first.costs !== null;
  return hasCosts && others.every(({ costs }) => areComparable(first.costs, costs));
}

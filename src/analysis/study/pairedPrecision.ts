// A wanted precision in a comparison: replications of all scenarios are added until the differences are as precise.
import { CONFIDENCE } from "#analysis/statistics/interval.ts";
import { pairsAgainst } from "./against.ts";
import { differenceOfTerms, errorOf } from "./controlled.ts";
import { isPrecise, replicationsFrom, type OutputSample } from "./wantedPrecision.ts";
import { outputOf, outputWanted, type StudyState } from "./study.ts";
import type { MeasureSummary } from "./summarizeMeasures.ts";

/**
 * The same states with the number of replications that the differences need so far; as they are where no precision is wanted. Half
 * widths hold for all pairs at once, and are shares of the output of the base of each pair.
 */
export function withPairedPrecision(states: readonly StudyState[], against?: string): readonly StudyState[] {
  const [first] = states;
  const precision = first?.scenario.run.precision;
  const pairs = pairsAgainst(states, against);
  if (!first || precision === undefined || pairs.length === 0) return states;
  const replications = first.paired?.replications ?? first.scenario.run.replications;
  const begun = states.map((state) => ({ ...state, paired: { replications, isSettled: false, isReached: false } }));
  if (states.some(isStuck) || begun.some((state) => outputWanted(state).length > 0)) return begun;
  const outputs = new Map(states.map((state) => [state, outputOf(state)]));
  const samples = pairs.map(([base, other]) => differenceOf(outputs.get(base), outputs.get(other), pairs.length));
  const needed = Math.max(...samples.map((sample) => replicationsFrom(sample, precision)));
  const paired = {
    replications: needed,
    isSettled: needed === replications,
    isReached: samples.every((sample) => isPrecise(sample, precision)),
  };
  return states.map((state) => ({ ...state, paired }));
}

const isStuck = ({ answers }: StudyState): boolean => answers.some(({ standstill }) => standstill !== null);

function differenceOf(
  base: MeasureSummary | undefined,
  other: MeasureSummary | undefined,
  comparisons: number,
): OutputSample {
  const [one, second] = [base, other].map((summary) => summary?.controlled?.values ?? summary?.values ?? []);
  const values = one!.flatMap((value, i) => {
    const counterpart = second![i] ?? null;
    return value === null || counterpart === null ? [] : [counterpart - value];
  });
  return {
    values,
    unseen: errorOf(differenceOfTerms(base?.controlled?.terms, other?.controlled?.terms)),
    reference: base?.interval.mean ?? null,
    confidence: 1 - (1 - CONFIDENCE) / comparisons,
  };
}

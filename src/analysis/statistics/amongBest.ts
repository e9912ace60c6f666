// Which of several layouts can be the best, from replications paired by common random numbers.
import { CONFIDENCE } from "./interval.ts";
import { pairedDifference } from "./pairedDifference.ts";

/**
 * The places of the alternatives that no other one exceeds by more than the simultaneous half width of k − 1 comparisons. The true best
 * is among them with the confidence: it is lost only where one of k − 1 intervals fails (Bonferroni), for any correlation.
 * Source: Hsu, Annals of Statistics 12 (1984), 1136: multiple comparisons with the best (from memory); Bonferroni in place of a common
 * variance as Law, Simulation Modeling and Analysis, section 10.3 (from memory).
 *
 * @param values of each alternative, one a replication; more is better
 * @param unseen standard error of the difference of two places that the replications do not show
 */
export function amongBest(
  values: readonly (readonly number[])[],
  confidence = CONFIDENCE,
  unseen: (one: number, other: number) => number = () => 0,
): readonly number[] {
  const comparisons = Math.max(1, values.length - 1);
  const exceeds = (one: number, other: number): boolean => {
    const options = { comparisons, confidence, unseen: unseen(one, other) };
    const { mean, simultaneousHalfWidth } = pairedDifference(values[one]!, values[other]!, options);
    return mean > (simultaneousHalfWidth ?? 0);
  };
  return values.flatMap((_, own) => (values.some((__, other) => other !== own && exceeds(other, own)) ? [] : [own]));
}

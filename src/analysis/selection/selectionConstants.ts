// The constant of the sequential selection, from the number of layouts, the confidence and the first replications.
import pow from "@stdlib/math-base-special-pow";
import { invariant } from "#foundation/invariant.ts";

/**
 * η = ½ ((2α / (k − 1))^(−2 / (n0 − 1)) − 1) and h² = 2 η (n0 − 1), for c = 1 and layouts that share random numbers.
 * Source: Kim and Nelson, ACM Transactions on Modeling and Computer Simulation 11 (2001) 251 (from memory).
 */
export function selectionConstants(
  layouts: number,
  confidence: number,
  firstReplications: number,
): { readonly eta: number; readonly h2: number } {
  invariant(layouts >= 2, "a selection has two layouts", { layouts });
  invariant(confidence > 0.5 && confidence < 1, "a confidence lies between one half and 1", { confidence });
  invariant(firstReplications >= 2, "a variance needs two replications", { firstReplications });
  const eta = (pow((2 * (1 - confidence)) / (layouts - 1), -2 / (firstReplications - 1)) - 1) / 2;
  return { eta, h2: 2 * eta * (firstReplications - 1) };
}

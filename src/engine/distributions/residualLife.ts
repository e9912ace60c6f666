// The time that is left of an interval when it is looked at, at any instant.
import type { Distribution } from "./distribution.ts";
import { distributionMean, distributionQuantile } from "./moments.ts";

/** Equally likely values of a residual life without a closed form. */
const VALUES = 2000;
/** Points of the quantile function that the integral is taken over. */
const POINTS = 20_000;

/**
 * The distribution of the time to the end of the interval under way, in a sequence of such intervals that has gone on for a long
 * time. Its distribution function is F_e(x) = (1/μ) ∫ from 0 to x of (1 − F(t)) dt. With x = Q(p), the quantile function of the
 * interval, this is F_e = (1/μ) (Q(p) (1 − p) + ∫ from 0 to p of Q(s) ds); between two values of Q it is a straight line.
 *
 * Shape: exponential and fixed intervals give their closed forms; of all others VALUES equally likely values.
 * Errors: none. Valid for a mean above 0.
 * Source: Cox, Renewal Theory (1962), chapter 5: the limiting distribution of the forward recurrence time (from memory).
 */
export function residualLife(interval: Distribution): Distribution {
  if (interval.kind === "exponential") return interval;
  if (interval.kind === "fixed") return { kind: "uniform", min: 0, max: interval.value };
  const mean = distributionMean(interval);
  const quantile = distributionQuantile(interval);
  const values: number[] = [];
  let integral = 0;
  let [last, lastShare] = [0, 0];
  for (let i = 0; i < POINTS; i++) {
    const p = (i + 0.5) / POINTS;
    const value = quantile(p);
    const share = (value * (1 - i / POINTS) + integral) / mean;
    integral += value / POINTS;
    for (; values.length < VALUES && share >= (values.length + 0.5) / VALUES;) {
      const wanted = (values.length + 0.5) / VALUES;
      values.push(share > lastShare ? last + ((value - last) * (wanted - lastShare)) / (share - lastShare) : value);
    }
    [last, lastShare] = [value, share];
  }
  while (values.length < VALUES) values.push(last);
  return { kind: "empirical", values };
}

// Times between stops: complete ones, and those that the end of the log cut off.
import alea from "seedrandom/lib/alea.js";
import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { pivotRanges } from "./bootstrap.ts";
import type { Family, Range } from "./family.ts";
import { exponential, lognormal, lognormalOf, momentsOf } from "./plainFamilies.ts";
import { fitWeibull, weibull } from "./weibullFamily.ts";

export interface CensoredTimes {
  readonly complete: Float64Array;
  /** Only known to be longer than these, which are above 0. */
  readonly censored: Float64Array;
}

export interface CensoredFit {
  readonly family: Family;
  readonly parameters: readonly number[];
  readonly logLikelihood: number;
}

type Fit = (times: CensoredTimes) => readonly number[] | undefined;

const fits: readonly (readonly [Family, Fit])[] = [
  [exponential, fitExponential],
  [weibull, ({ complete, censored }) => fitWeibull(complete, censored)],
  [lognormal, fitLognormal],
];

/** Exponential, Weibull and lognormal; complete times count with their density, others with the chance of being longer. */
export function fitCensored(times: CensoredTimes): readonly CensoredFit[] {
  return fits.flatMap(([family, fit]) => {
    const parameters = fit(times);
    if (parameters === undefined) return [];
    const density = family.logDensity(parameters);
    const probability = family.probability(parameters);
    const seen = times.complete.reduce((sum, value) => sum + density(value), 0);
    const unseen = times.censored.reduce((sum, value) => sum + ln(Math.max(1e-300, 1 - probability(value))), 0);
    return [{ family, parameters, logLikelihood: seen + unseen }];
  });
}

/** Intervals from renewal processes of the fitted distribution that are observed as long as the stops were. */
export function censoredRanges(
  { family, parameters }: CensoredFit,
  times: CensoredTimes,
  seed: string,
): readonly Range[] {
  const draw = alea(`${seed}/between/${family.kind}`);
  const next = family.sampler(parameters, () => Math.max(draw(), Number.MIN_VALUE));
  const observed = [...times.complete, ...times.censored].reduce((sum, value) => sum + value, 0);
  const fit = fits.find(([each]) => each === family)![1];
  return pivotRanges(family, parameters, () => fit(observe(next, observed)));
}

/** One renewal process up to a time: the last interval is cut off. */
function observe(next: () => number, until: number): CensoredTimes {
  const complete: number[] = [];
  let left = until;
  for (let time = next(); ; time = next()) {
    if (time >= left) return { complete: Float64Array.from(complete), censored: Float64Array.of(left) };
    complete.push(time);
    left -= time;
  }
}

function fitExponential({ complete, censored }: CensoredTimes): readonly number[] | undefined {
  const total = [...complete, ...censored].reduce((sum, value) => sum + value, 0);
  return complete.length > 0 && total > 0 ? [total / complete.length] : undefined;
}

const standardNormal = normalCdf.factory(0, 1);
const ROOT_TWO_PI = 2.5066282746310002;

/**
 * By the EM algorithm: a censored logarithm counts with its mean and variance beyond its limit.
 * Source: Dempster, Laird and Rubin, Journal of the Royal Statistical Society B 39 (1977) 1, section 4.3 [M].
 */
function fitLognormal({ complete, censored }: CensoredTimes): readonly number[] | undefined {
  if (complete.length < 2 || !complete.every((value) => value > 0)) return undefined;
  const logs = complete.map((value) => ln(value));
  const limits = censored.map((value) => ln(value));
  let [mu, sigma] = momentsOf(logs);
  if (!(sigma > 0)) return undefined;
  for (let i = 0; i < 10_000; i++) {
    const [nextMu, nextSigma] = expectedMoments(logs, limits, mu, sigma);
    const change = Math.abs(nextMu - mu) + Math.abs(nextSigma - sigma);
    [mu, sigma] = [nextMu, nextSigma];
    if (change <= 1e-11 * sigma) break;
  }
  return lognormalOf([mu, sigma]);
}

function expectedMoments(
  logs: Float64Array,
  limits: Float64Array,
  mu: number,
  sigma: number,
): readonly [mu: number, sigma: number] {
  const count = logs.length + limits.length;
  const beyond = limits.map((limit) => {
    const z = (limit - mu) / sigma;
    // Above 30 standard deviations the chance rounds to 0; the hazard is z there.
    return z > 30 ? z : exp((-z * z) / 2) / ROOT_TWO_PI / standardNormal(-z);
  });
  const sum = logs.reduce((total, value) => total + value, 0);
  const mean = (sum + beyond.reduce((total, hazard) => total + mu + sigma * hazard, 0)) / count;
  const squares = logs.reduce((total, value) => total + (value - mean) * (value - mean), 0);
  const expected = limits.reduce((total, limit, i) => {
    const [z, hazard] = [(limit - mu) / sigma, beyond[i]!];
    const away = mu + sigma * hazard - mean;
    return total + away * away + sigma * sigma * Math.max(0, 1 + z * hazard - hazard * hazard);
  }, 0);
  return [mean, Math.sqrt((squares + expected) / count)];
}

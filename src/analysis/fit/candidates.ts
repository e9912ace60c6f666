// Fits every family to the times of one step and suggests one of them, a constant or the measured values, with its reason.
import type { Distribution } from "#engine/distributions/distribution.ts";
import { parameterRanges, testFit, testedValues, type Tests } from "./bootstrap.ts";
import { families } from "./families.ts";
import { logLikelihood, type Family, type FittedKind, type Range } from "./family.ts";

export interface Candidate {
  readonly kind: FittedKind;
  readonly names: readonly string[];
  readonly parameters: readonly number[];
  readonly logLikelihood: number;
  /** Akaike's information criterion: 2 × parameters − 2 × log likelihood; the smallest is the best. */
  readonly aic: number;
  /** Only of those with the smallest criterion. */
  readonly tests?: Tests;
  /** 95 %; only of the suggested one. */
  readonly ranges?: readonly Range[];
  /** Why a scenario cannot have it. */
  readonly unfit?: string;
}

export interface Suggestion {
  readonly distribution: Distribution;
  readonly reason: string;
}

export interface StepFit {
  /** Best first. */
  readonly candidates: readonly Candidate[];
  /** Absent where too few values are known. */
  readonly suggestion?: Suggestion;
}

export interface StepValues {
  /** In rising order. */
  readonly sorted: Float64Array;
  /** Of all values, also those that are not in `sorted`. */
  readonly mean: number;
  readonly sd: number;
  /** The step in which the log writes its times. */
  readonly resolution: number;
}

/** Fewer values show nothing. */
export const fewestValues = 3;
/** Fewer values are used as they are. */
export const leastValues = 20;
/** Candidates with the smallest criterion that are tested. */
const mostTested = 3;
const level = 0.05;
/** A timer: nearly all values within this share of the median. Common practice, no published source. */
const timerShare = 0.005;
const timerPart = 0.98;
/** A log with coarser digits shows steps of its own, not a constant. */
const coarsestShare = 0.1;
/** Quantiles that stand for the measured values in a scenario. */
const quantiles = 50;

export function fitStep(values: StepValues, seed: string, among: readonly Family[] = families): StepFit {
  if (values.sorted.length < fewestValues) return { candidates: [] };
  const timer = timerOf(values);
  if (timer !== undefined) return { candidates: [], suggestion: timer };
  const { sorted } = values;
  if (sorted.length < leastValues) {
    const reason = `${sorted.length} values are too few to choose a distribution; measure ${leastValues} or more`;
    return { candidates: [], suggestion: measured(sorted, reason) };
  }
  const fitted = fitFamilies(sorted, among);
  const possible = fitted.filter(({ candidate }) => candidate.unfit === undefined).slice(0, mostTested);
  const tested = possible.map(({ family, candidate }) => tests(family, candidate, values, seed));
  const best = tested.find(({ tests: found }) => found !== undefined && found.andersonDarlingP > level);
  const candidates = fitted.map(({ family, candidate }) => {
    const withTests = tested.find(({ kind }) => kind === candidate.kind) ?? candidate;
    if (withTests.kind !== best?.kind) return withTests;
    return { ...withTests, ranges: parameterRanges(family, candidate.parameters, sorted, seed) };
  });
  return { candidates, suggestion: best === undefined ? misfit(sorted, tested) : fitting(best, tested, fitted) };
}

interface Fitted {
  readonly family: Family;
  readonly candidate: Candidate;
}

/** All families by their criterion. */
export function fitFamilies(sorted: Float64Array, among: readonly Family[] = families): readonly Fitted[] {
  const fitted = among.flatMap((family) => {
    const parameters = family.fit(sorted);
    if (parameters === undefined || !parameters.every(Number.isFinite)) return [];
    const likelihood = logLikelihood(family, parameters, sorted);
    if (!Number.isFinite(likelihood)) return [];
    const unfit = unfitness(family.kind, parameters);
    const { kind, parameters: names } = family;
    const aic = 2 * names.length - 2 * likelihood;
    const candidate = {
      kind,
      names,
      parameters,
      logLikelihood: likelihood,
      aic,
      ...(unfit === undefined ? {} : { unfit }),
    };
    return [{ family, candidate }];
  });
  return fitted.toSorted((one, other) => one.candidate.aic - other.candidate.aic);
}

function tests(family: Family, candidate: Candidate, { sorted, sd, resolution }: StepValues, seed: string): Candidate {
  // A resolution far below the spread changes nothing.
  const found = testFit(family, thinned(sorted, testedValues), seed, resolution > sd / 100 ? resolution : 0);
  return found === undefined ? candidate : { ...candidate, tests: found };
}

/** Evenly spaced among values in rising order. */
export function thinned(sorted: Float64Array, most: number): Float64Array {
  if (sorted.length <= most) return sorted;
  return Float64Array.from({ length: most }, (_, i) => sorted[Math.floor(((i + 0.5) * sorted.length) / most)]!);
}

/** The limits of `scenario/distributions`, and those of common sense. */
function unfitness(kind: FittedKind, [first = 0, second = 0]: readonly number[]): string | undefined {
  if (kind === "normal" && first < 3 * second) return "more than 0.1 % of its draws would be below 0";
  if (kind === "weibull" && (second < 0.5 || second > 20)) return "its shape is outside 0.5 to 20";
  if (kind === "gamma" && second * second > 2 * first * first) return "its sd is more than 1.414 times the mean";
  if (kind === "lognormal" && second > 10 * first) return "its sd is more than 10 times the mean";
  return (kind === "triangular" || kind === "uniform") && first < 0 ? "its min is below 0" : undefined;
}

function timerOf({ sorted, resolution }: StepValues): Suggestion | undefined {
  const median = sorted[Math.floor(sorted.length / 2)]!;
  // As many short values as long ones may be slips.
  const slips = Math.ceil(0.01 * (sorted.length - 1));
  const [low, high] = [sorted[slips]!, sorted[sorted.length - 1 - slips]!];
  const digit = Math.min(resolution, coarsestShare * median);
  // The tolerance accepts a difference of one digit in spite of rounding.
  const close = Math.max(timerShare * median, digit) * (1 + 1e-9);
  const near = sorted.filter((value) => Math.abs(value - median) <= close);
  if (near.length < timerPart * sorted.length || high - low > 2 * close) return undefined;
  const value = near.reduce((sum, each) => sum + each, 0) / near.length;
  const others = sorted.length - near.length;
  const rest = others === 0 ? "" : `; ${others} other ${others === 1 ? "value is" : "values are"} not in it`;
  const isCoarse = near.at(-1)! - near[0]! > timerShare * median;
  const why =
    near[0] === near.at(-1)
      ? "a timer: the values are equal"
      : isCoarse && digit > timerShare * median
        ? `the values lie within one digit of the log, ${digit} s, so that it shows no spread`
        : `a timer: the values lie within ${Number((farthest(near, median) * 1000).toPrecision(2))} ms of the median`;
  return { distribution: { kind: "fixed", value }, reason: `${why}${rest}` };
}

const farthest = (sorted: Float64Array, from: number): number => Math.max(from - sorted[0]!, sorted.at(-1)! - from);

function fitting(best: Candidate, tested: readonly Candidate[], fitted: readonly Fitted[]): Suggestion {
  const family = fitted.find(({ candidate }) => candidate.kind === best.kind)!.family;
  const p = Number(best.tests!.andersonDarlingP.toPrecision(2));
  const place = tested.indexOf(best);
  const before = tested.slice(0, place).map(({ kind }) => kind);
  const first = place === 0 ? "smallest AIC" : `smallest AIC of those that pass (${before.join(", ")} fails)`;
  const reason = `${first}; Anderson-Darling p = ${p}`;
  return { distribution: family.distribution(best.parameters), reason };
}

function misfit(sorted: Float64Array, tested: readonly Candidate[]): Suggestion {
  const p = tested.reduce((most, { tests: found }) => Math.max(most, found?.andersonDarlingP ?? 0), 0);
  const reason =
    tested.length === 0
      ? "no distribution of a scenario can have such values"
      : `no distribution passes Anderson-Darling (best p = ${Number(p.toPrecision(2))})`;
  return measured(sorted, `${reason}; the measured values stand for themselves`);
}

function measured(sorted: Float64Array, reason: string): Suggestion {
  const values = sorted.length <= quantiles ? sorted : thinned(sorted, quantiles);
  return { distribution: { kind: "empirical", values: [...values] }, reason };
}

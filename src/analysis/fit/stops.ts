// The stops of one station: how long they take, and the times between them, of which the last is cut off by the log's end.
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { censoredRanges, fitCensored, type CensoredFit, type CensoredTimes } from "./censored.ts";
import type { Candidate, Suggestion } from "./candidates.ts";
import { exponential, lognormal } from "./plainFamilies.ts";
import { weibull } from "./weibullFamily.ts";
import { Series, keptValues, type SeriesSummary } from "./series.ts";

/** Fewer complete times cannot show more than a mean. */
const leastTimes = 5;

/** The runs of one log with the last instant of each, which all stops share. */
export class Runs {
  readonly ends = new Map<string, number>();

  add({ run, start, seconds }: StepRecord): void {
    if (start !== undefined) this.ends.set(run, Math.max(this.ends.get(run) ?? -Infinity, start + seconds));
  }
}

export class Stops {
  readonly #repairs: Series;
  readonly #complete: number[] = [];
  readonly #lastEnds = new Map<string, number>();

  constructor(seed: string) {
    this.#repairs = new Series(seed);
  }

  /** The time to the first stop is left out: the log does not show when it began. */
  add({ seconds, start, hour, run }: StepRecord): void {
    this.#repairs.add(seconds, start, hour);
    if (start === undefined) return;
    const last = this.#lastEnds.get(run);
    if (last !== undefined && start > last && this.#complete.length < keptValues) this.#complete.push(start - last);
    this.#lastEnds.set(run, start + seconds);
  }

  between({ ends }: Runs): CensoredTimes {
    const censored = [...this.#lastEnds]
      .map(([run, last]) => (ends.get(run) ?? last) - last)
      .filter((time) => time > 0);
    return { complete: Float64Array.from(this.#complete), censored: Float64Array.from(censored) };
  }

  repairs(): SeriesSummary {
    return this.#repairs.summary();
  }
}

/** A repair has no longest time. */
export const timesFamilies = [exponential, weibull, lognormal] as const;

export interface TimesFit {
  readonly candidates: readonly Candidate[];
  readonly suggestion?: Suggestion;
}

/** Exponential, Weibull or lognormal by AIC; the exponential alone for few times. */
export function fitTimes(times: CensoredTimes, seed: string): TimesFit {
  const { complete, censored } = times;
  const fitted = fitCensored(times)
    .filter(({ family }) => complete.length >= leastTimes || family.kind === "exponential")
    .map((fit) => ({ fit, candidate: candidateOf(fit) }))
    .toSorted((one, other) => one.candidate.aic - other.candidate.aic);
  const best = fitted.find(({ candidate }) => candidate.unfit === undefined);
  if (best === undefined) return { candidates: [] };
  const ranges = censoredRanges(best.fit, times, seed);
  const cut = censored.length === 0 ? "" : `, ${censored.length} cut off by the log's end`;
  const reason =
    complete.length < leastTimes
      ? `only ${complete.length} complete ${complete.length === 1 ? "time" : "times"}${cut}: no more than a mean`
      : `smallest AIC of ${complete.length} complete times${cut}`;
  return {
    candidates: fitted.map(({ candidate }) => (candidate === best.candidate ? { ...candidate, ranges } : candidate)),
    suggestion: { distribution: best.fit.family.distribution(best.fit.parameters), reason },
  };
}

function candidateOf({ family, parameters, logLikelihood }: CensoredFit): Candidate {
  const [, shape = 1] = parameters;
  const isUnfit = family.kind === "weibull" && (shape < 0.5 || shape > 20);
  return {
    kind: family.kind,
    names: family.parameters,
    parameters,
    logLikelihood,
    aic: 2 * parameters.length - 2 * logLikelihood,
    ...(isUnfit ? { unfit: "its shape is outside 0.5 to 20" } : {}),
  };
}

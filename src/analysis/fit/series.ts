// The times of one step of one station in bounded memory: exact moments, and a random part of the values.
import alea from "seedrandom/lib/alea.js";
import { Autocorrelation, Moments, Trend } from "./moments.ts";
import { thinned } from "./candidates.ts";

/** Values of each step that are kept; above, each value has the same chance to be among them (reservoir sampling). */
export const keptValues = 10_000;
/** Common practice, no published source. */
const shiftNames = ["06 to 14 h", "14 to 22 h", "22 to 06 h"] as const;
/** The normal quantile of a simultaneous 95 % interval of three differences. */
const THREE_PAIRS = 2.394;
const NORMAL_975 = 1.959963984540054;
/** Smaller differences matter to no cell. */
const leastShare = 0.01;
/** Below this correlation two kinds of times alternate. Common practice, no published source. */
const inTurnBelow = -0.5;
/** So many times the median is more often a slip than a time. Common practice, no published source. */
const farTimes = 20;

interface Estimate {
  readonly value: number;
  readonly halfWidth: number;
}

export interface SeriesSummary {
  readonly count: number;
  readonly mean: number;
  readonly sd: number;
  readonly min: number;
  readonly max: number;
  /** Of one value and the next. */
  readonly autocorrelation?: Estimate;
  /** Change over the whole log, in seconds. */
  readonly drift?: Estimate;
  readonly warnings: readonly string[];
  /** In the order of the log. */
  readonly values: Float64Array;
  readonly sorted: Float64Array;
  readonly resolution: number;
}

export class Series {
  readonly #moments = new Moments();
  readonly #autocorrelation = new Autocorrelation();
  readonly #trend = new Trend();
  readonly #shifts = shiftNames.map(() => new Moments());
  readonly #kept: { readonly order: number; readonly value: number }[] = [];
  readonly #draw: () => number;

  constructor(seed: string) {
    this.#draw = alea(seed);
  }

  add(value: number, start: number | undefined, hour: number | undefined): void {
    this.#moments.add(value);
    this.#autocorrelation.add(value);
    const order = this.#moments.count;
    this.#trend.add(start ?? order, value);
    if (hour !== undefined) this.#shifts[Math.floor(((hour + 18) % 24) / 8)]!.add(value);
    if (order <= keptValues) this.#kept.push({ order, value });
    else {
      const place = Math.floor(this.#draw() * order);
      if (place < keptValues) this.#kept[place] = { order, value };
    }
  }

  summary(): SeriesSummary {
    const { count, mean, sd, min, max } = this.#moments;
    const values = Float64Array.from(
      this.#kept.toSorted((one, other) => one.order - other.order).map(({ value }) => value),
    );
    const r = this.#autocorrelation.value(this.#moments);
    // Correlated values count for fewer.
    const inflation = Math.sqrt(Math.max(1, (1 + (r ?? 0)) / Math.max(0.01, 1 - (r ?? 0))));
    const trend = this.#trend.slope();
    const autocorrelation =
      r === undefined ? undefined : { value: r, halfWidth: NORMAL_975 * Math.sqrt((1 - r * r) / count) };
    const drift = trend && {
      value: trend.slope * trend.span,
      halfWidth: NORMAL_975 * trend.error * trend.span * inflation,
    };
    const sorted = values.toSorted();
    return {
      count,
      mean,
      sd,
      min,
      max,
      values,
      sorted,
      resolution: resolutionOf(sorted),
      ...(autocorrelation === undefined ? {} : { autocorrelation }),
      ...(drift === undefined ? {} : { drift }),
      warnings: [
        ...farWarnings(sorted, max),
        ...orderWarnings(count, mean, autocorrelation, drift),
        ...this.#shiftWarnings(mean, inflation),
      ],
    };
  }

  #shiftWarnings(mean: number, inflation: number): readonly string[] {
    const shifts = this.#shifts
      .map((moments, i) => ({ moments, name: shiftNames[i]! }))
      .filter(({ moments }) => moments.count > 1);
    const pairs = shifts.flatMap((one, i) => shifts.slice(i + 1).map((other) => [one, other] as const));
    return pairs.flatMap(([one, other]) => {
      const difference = other.moments.mean - one.moments.mean;
      const variance = [one, other].reduce((sum, { moments }) => sum + (moments.sd * moments.sd) / moments.count, 0);
      const half = THREE_PAIRS * Math.sqrt(variance) * inflation;
      if (Math.abs(difference) <= Math.max(half, leastShare * mean)) return [];
      const longer = difference > 0 ? other.name : one.name;
      const shorter = difference > 0 ? one.name : other.name;
      return [`${longer} takes ${shown(Math.abs(difference))} ± ${shown(half)} s longer than ${shorter}`];
    });
  }
}

const shown = (value: number): string => String(Number(value.toPrecision(2)));

/** Mean and fit include these values. */
function farWarnings(sorted: Float64Array, max: number): readonly string[] {
  const median = sorted[Math.floor(sorted.length / 2)] ?? max;
  if (max <= farTimes * median) return [];
  return [
    `its longest time, ${shown(max)} s, is ${shown(max / median)} times the median; correct the log if it is a slip`,
  ];
}

function orderWarnings(
  count: number,
  mean: number,
  autocorrelation: Estimate | undefined,
  drift: Estimate | undefined,
): readonly string[] {
  const isCorrelated =
    autocorrelation !== undefined &&
    count >= 20 &&
    Math.abs(autocorrelation.value) > Math.max(0.2, autocorrelation.halfWidth);
  const drifts =
    drift !== undefined && count >= 20 && Math.abs(drift.value) > Math.max(drift.halfWidth, leastShare * mean);
  const r = autocorrelation?.value ?? 0;
  const inTurn = `long and short times come in turn (correlation ${shown(r)}), as where it serves stations or products in turn; fit those apart`;
  const alike = `one value and the next are correlated (${shown(r)}), which a drawn time is not`;
  return [
    ...(isCorrelated ? [r < inTurnBelow ? inTurn : alike] : []),
    ...(drifts ? [`it drifts by ${shown(drift.value)} ± ${shown(drift.halfWidth)} s over the log`] : []),
  ];
}

/** The smallest power of ten, or half or fifth of one, of which all of some values are multiples; 0 below a microsecond. */
function resolutionOf(sorted: Float64Array): number {
  const some = thinned(sorted, 200);
  const isMultiple = (step: number): boolean =>
    some.every((value) => Math.abs(value / step - Math.round(value / step)) < 1e-6 * Math.max(1, value / step / 1e6));
  return [60, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001, 1e-4, 1e-5].find(isMultiple) ?? 0;
}

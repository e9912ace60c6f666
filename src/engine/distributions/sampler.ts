// A distribution as the core draws from it, in ticks: a quantile table with its location and scale, and exact draws where no table helps.
import { invariant } from "#foundation/invariant.ts";
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, UPPER_TAIL } from "#core/border/numbers.ts";
import type { Distribution } from "./distribution.ts";
import { distributionMean, distributionQuantile } from "./moments.ts";
import { quantileTable } from "./quantileTable.ts";
import { standardizedDistribution } from "./standardizedDistribution.ts";

/** Ticks in a second: the clock counts whole microseconds. */
export const TICKS_PER_SECOND = 1e6;

/**
 * A drawn rate is never below this share of the mean rate. A rate of 0 would last for ever, and what delivers
 * less than a tenth is not slow but stopped; stops are described as stops.
 */
export const SLOWEST_SHARE = 0.1;

const FINEST_CELL = 1 / (CELLS * FINER);
/** Below this u and above 1 minus it the table is not interpolated: there the quantile bends too much, or has no end. */
const END = EXACT_CELLS * FINEST_CELL;

/** Half the distance of two neighboring uniform numbers: the end that the quantile of an unbounded distribution cannot take. */
const SMALLEST_UNIFORM = 1 / 8589934592;

/** Points of the mean of mass / rate on either side of the table. */
const END_POINTS = 8;

const NO_TABLE = new Float64Array(0);

interface SamplerOptions {
  readonly unit: number;
  readonly massMilligrams?: number;
  /** The values of an empirical distribution come in their order. */
  readonly inOrder?: boolean;
}

/** One uniform number a draw: ticks rise with u, or, for the time that a drawn rate takes, fall with u. */
export class Sampler {
  /** True where every draw is the same, so that no uniform number need be drawn. */
  readonly isFixed: boolean;
  /** Its quantile table, which the core interpolates; empty where every draw is exact. */
  readonly table: Float64Array;
  readonly location: number;
  readonly scale: number;
  /** Of a time at a drawn rate: kg/s × ticks give mg; 0 where the distribution is that of the ticks themselves. */
  readonly mass: number;
  /** No value below this is taken. */
  readonly least: number;
  /** Ticks that are taken in this order instead of draws; absent where times are drawn. */
  readonly sequence?: Float64Array;
  readonly #distribution: Distribution;
  readonly #unit: number;
  readonly #quantile: (p: number) => number;
  #mean: number | undefined;

  /** `unit` is the ticks in one unit of the distribution: 1e6 for seconds on a clock of microseconds. */
  constructor(distribution: Distribution, options: SamplerOptions) {
    this.#distribution = distribution;
    this.#unit = options.unit;
    this.#quantile = distributionQuantile(distribution);
    this.mass = options.massMilligrams ?? 0;
    this.least = this.mass > 0 ? SLOWEST_SHARE * distributionMean(distribution) * options.unit : 0;
    if (distribution.kind === "empirical") {
      invariant(distribution.values.length > 0, "an empirical distribution has values");
      this.isFixed = new Set(distribution.values).size === 1;
      if (options.inOrder === true)
        this.sequence = Float64Array.from(distribution.values, (value) => Math.round(value * options.unit));
      this.table = NO_TABLE;
      this.location = 0;
      this.scale = 0;
    } else {
      const { form, location, scale } = standardizedDistribution(distribution);
      this.isFixed = scale === 0;
      this.table = this.isFixed ? NO_TABLE : quantileTable(form);
      this.location = location * options.unit;
      this.scale = scale * options.unit;
    }
  }

  /** The time in microseconds that this mass takes at a rate in kg/s, drawn once for the whole mass. */
  static ofRate(distribution: Distribution, massMilligrams: number): Sampler {
    invariant(distributionMean(distribution) > 0, "a rate is above 0 on average", { distribution });
    invariant(massMilligrams > 0, "a mass is above 0", { massMilligrams });
    return new Sampler(distribution, { unit: 1, massMilligrams });
  }

  /** The draw that belongs to u in [0, 1), without the table; rounded once, never below 0. */
  exactTicks(u: number): number {
    const value = this.#valueAt(u);
    return Math.floor((this.mass > 0 ? this.#timeAt(value) : value) + 0.5);
  }

  /** Mean of the draws before they are rounded; of a time at a drawn rate within 1e-5 of it. */
  get meanTicks(): number {
    this.#mean ??= this.mass === 0 ? distributionMean(this.#distribution) * this.#unit : this.#meanAtRate();
    return this.#mean;
  }

  #valueAt(u: number): number {
    return this.#quantile(Math.min(1 - SMALLEST_UNIFORM, Math.max(SMALLEST_UNIFORM, u))) * this.#unit;
  }

  /** Mean of mass / rate. */
  #meanAtRate(): number {
    if (this.#distribution.kind === "empirical") {
      const { values } = this.#distribution;
      return values.reduce((sum, rate) => sum + this.#timeAt(rate), 0) / values.length;
    }
    if (this.isFixed) return this.#timeAt(this.location);
    let ends = 0;
    for (let point = 0.5; point < END_POINTS; point++) {
      const u = (END * point) / END_POINTS;
      ends += (this.#timeAt(this.#valueAt(u)) + this.#timeAt(this.#valueAt(1 - u))) / END_POINTS;
    }
    const body = sumOfInverses(this, BODY + CELLS / FINER, BODY + CELLS - CELLS / FINER) / CELLS;
    const lower = sumOfInverses(this, LOWER_TAIL + EXACT_CELLS, LOWER_TAIL + CELLS) * FINEST_CELL;
    const upper = sumOfInverses(this, UPPER_TAIL, UPPER_TAIL + CELLS - EXACT_CELLS) * FINEST_CELL;
    return END * ends + this.mass * (body + lower + upper);
  }

  #timeAt(rate: number): number {
    return this.mass / Math.max(this.least, rate);
  }
}

/**
 * Of a rate that lies on straight lines between the nodes of its table: the sum, over the cells from one node to another, of the mean of
 * 1 / rate in the cell. Gauss's two points lie (high − low) / √12 from the middle of a cell.
 */
function sumOfInverses({ table, location, scale, least }: Sampler, first: number, last: number): number {
  let sum = 0;
  let low = Math.max(least, location + scale * table[first]!);
  for (let node = first + 1; node <= last; node++) {
    const high = Math.max(least, location + scale * table[node]!);
    const middle = (low + high) / 2;
    const width = high - low;
    sum += middle / (middle * middle - (width * width) / 12);
    low = high;
  }
  return sum;
}

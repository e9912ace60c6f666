// Turns one uniform number into a whole number of ticks that follows a law.
import { invariant } from "#foundation/invariant.ts";
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, UPPER_TAIL } from "#core/border/numbers.ts";
import type { Distribution } from "./distribution.ts";
import { lawMean } from "./law.ts";
import { quantileTable } from "./quantileTable.ts";
import { standardLaw, standardQuantile, type StandardForm } from "./standardLaw.ts";
import { tables } from "./tables.ts";

/** Ticks in a second: the clock counts whole microseconds. */
export const TICKS_PER_SECOND = 1e6;

/**
 * A drawn rate is never below this share of the law's mean rate. A rate of 0 would last for ever, and what delivers
 * less than a tenth is not slow but stopped; stops are described as stops.
 */
export const SLOWEST_SHARE = 0.1;

/** Below this u and above 1 minus it the table has finer cells. */
const TAIL = 1 / FINER;
const FINEST_CELL = TAIL / CELLS;
const END = EXACT_CELLS * FINEST_CELL;

/** Half the distance of two neighboring uniform numbers: the end that the quantile of an unbounded law cannot take. */
const SMALLEST_UNIFORM = 1 / 8589934592;

/** Points of the mean of mass / rate on either side of the table. */
const END_POINTS = 8;

const NO_VALUES = new Float64Array(0);
const NO_SHAPE: StandardForm = { kind: "uniform", shape: 0 };

/**
 * Draws by inversion, one uniform a draw: ticks rise with u, or, for the time that a drawn rate takes, fall with u.
 *
 * Inner cells of the quantile table are interpolated; mean and standard deviation are within 1e-4 of the exact law's
 * up to a coefficient of variation of 1.4, Weibull up to 2.2 (measured by tests/theory/engine/sampler.test.ts).
 * One class with the same fields for all laws: the loop that draws then always calls the same code.
 */
export class Sampler {
  /** True where every draw is the same, so that no uniform need be drawn. */
  readonly isFixed: boolean;
  private readonly isTabled: boolean;
  private mean: number | undefined;
  private readonly law: Distribution;
  private readonly form: StandardForm;
  /** Its quantile table; empty where it has none. */
  readonly table: Float64Array;
  /** The sorted values of an empirical law; empty for all other laws. */
  private readonly values: Float64Array;
  readonly location: number;
  readonly scale: number;
  /** Of a time at a drawn rate: kg/s × ticks give mg; 0 where the law is that of the ticks themselves. */
  readonly mass: number;
  /** No value of the law below this is taken. */
  readonly least: number;
  private readonly unit: number;

  /** `unit` is the ticks in one unit of the law: 1e6 for seconds on a clock of microseconds. */
  constructor(law: Distribution, options: { readonly unit: number; readonly massMilligrams?: number }) {
    const empirical = law.kind === "empirical";
    invariant(!empirical || law.values.length > 0, "an empirical law has values");
    const standard = empirical ? { form: NO_SHAPE, location: 0, scale: 0 } : standardLaw(law);
    this.law = law;
    this.form = standard.form;
    this.table = standard.scale > 0 ? quantileTable(standard.form) : NO_VALUES;
    this.values = empirical ? Float64Array.from(law.values, (value) => value * options.unit).toSorted() : NO_VALUES;
    this.isTabled = standard.scale > 0;
    this.location = standard.location * options.unit;
    this.scale = standard.scale * options.unit;
    this.mass = options.massMilligrams ?? 0;
    this.unit = options.unit;
    this.least = this.mass > 0 ? SLOWEST_SHARE * lawMean(law) * options.unit : 0;
    this.isFixed = standard.scale === 0 && this.values[0] === this.values.at(-1);
  }

  /** The time in microseconds that this mass takes at a rate in kg/s, drawn once for the whole mass. */
  static ofRate(law: Distribution, massMilligrams: number): Sampler {
    invariant(lawMean(law) > 0, "a rate is above 0 on average", { law });
    invariant(massMilligrams > 0, "a mass is above 0", { massMilligrams });
    return new Sampler(law, { unit: 1, massMilligrams });
  }

  /** The draw that belongs to u in [0, 1); rounded once, never below 0. */
  ticks(u: number): number {
    // The body of the table first, and in one piece: fifteen draws of sixteen end here.
    let value: number;
    if (this.isTabled && u >= TAIL && u < 1 - TAIL) {
      const place = u * CELLS;
      const cell = Math.floor(place);
      const low = this.table[cell] as number;
      value = this.location + this.scale * (low + ((this.table[cell + 1] as number) - low) * (place - cell));
    } else value = this.quantile(u);
    if (value < this.least) value = this.least;
    if (this.mass > 0) value = this.mass / value;
    // Twice as fast as Math.round, and the same for every value at or above 0 that a clock can tell apart.
    return Math.floor(value + 0.5);
  }

  /** Mean of the draws before they are rounded; of a time at a drawn rate within 1e-5 of it. */
  get meanTicks(): number {
    this.mean ??= this.averageTicks();
    return this.mean;
  }

  private averageTicks(): number {
    if (this.mass === 0) return lawMean(this.law) * this.unit;
    if (this.isFixed) return this.mass / this.quantile(0);
    if (!this.isTabled) return this.values.reduce((sum, value) => sum + this.timeAt(value), 0) / this.values.length;
    let ends = 0;
    for (let point = 0.5; point < END_POINTS; point++) {
      const u = (END * point) / END_POINTS;
      ends += (this.timeAt(this.exactQuantile(u)) + this.timeAt(this.exactQuantile(1 - u))) / END_POINTS;
    }
    return (
      END * ends +
      this.sumOfCells(BODY + CELLS / FINER, BODY + CELLS - CELLS / FINER) / CELLS +
      FINEST_CELL * this.sumOfCells(LOWER_TAIL + EXACT_CELLS, LOWER_TAIL + CELLS) +
      FINEST_CELL * this.sumOfCells(UPPER_TAIL, UPPER_TAIL + CELLS - EXACT_CELLS)
    );
  }

  private timeAt(rate: number): number {
    return this.mass / Math.max(this.least, rate);
  }

  private sumOfCells(first: number, last: number): number {
    return this.mass * tables().sumOfInverses(this, first, last);
  }

  /** The outermost cells are not interpolated: there the quantile bends too much, or has no end. */
  private quantile(u: number): number {
    if (this.scale === 0 || u < END || u >= 1 - END) return this.exactQuantile(u);
    if (u < TAIL) return this.interpolate(LOWER_TAIL, u / FINEST_CELL);
    if (u >= 1 - TAIL) return this.interpolate(UPPER_TAIL, (u - (1 - TAIL)) / FINEST_CELL);
    return this.interpolate(BODY, u * CELLS);
  }

  private interpolate(firstNode: number, place: number): number {
    const cell = Math.floor(place);
    const low = this.table[firstNode + cell] as number;
    const high = this.table[firstNode + cell + 1] as number;
    return this.location + this.scale * (low + (high - low) * (place - cell));
  }

  private exactQuantile(u: number): number {
    const count = this.values.length;
    if (count > 0) return this.values[Math.min(count - 1, Math.floor(u * count))] as number;
    if (this.scale === 0) return this.location;
    const p = Math.min(1 - SMALLEST_UNIFORM, Math.max(SMALLEST_UNIFORM, u));
    return this.location + this.scale * standardQuantile(this.form, p);
  }
}

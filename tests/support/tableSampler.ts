// A second account of how the core draws: the same quantile table, read in floating point by the uniform number itself.
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, UPPER_TAIL } from "#core/border/numbers.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { Sampler } from "#engine/distributions/sampler.ts";

/** Below this u and above 1 minus it the table has finer cells. */
const TAIL = 1 / FINER;
const FINEST_CELL = TAIL / CELLS;
const END = EXACT_CELLS * FINEST_CELL;

export class TableSampler extends Sampler {
  static override ofRate(law: Distribution, massMilligrams: number): TableSampler {
    return new TableSampler(law, { unit: 1, massMilligrams });
  }

  /** The draw that belongs to u in [0, 1). */
  ticks(u: number): number {
    // The body of the table first, and in one piece: the benchmark's kernels draw fifteen times of sixteen from it.
    let value: number;
    if (this.scale > 0 && u >= TAIL && u < 1 - TAIL) value = this.#interpolate(BODY, u * CELLS);
    else if (this.scale === 0 || u < END || u >= 1 - END) return this.exactTicks(u);
    else if (u < TAIL) value = this.#interpolate(LOWER_TAIL, u / FINEST_CELL);
    else value = this.#interpolate(UPPER_TAIL, (u - (1 - TAIL)) / FINEST_CELL);
    if (value < this.least) value = this.least;
    if (this.mass > 0) value = this.mass / value;
    // Twice as fast as Math.round, and the same for every value at or above 0 that a clock can tell apart.
    return Math.floor(value + 0.5);
  }

  #interpolate(firstNode: number, place: number): number {
    const cell = Math.floor(place);
    const low = this.table[firstNode + cell] as number;
    const high = this.table[firstNode + cell + 1] as number;
    return this.location + this.scale * (low + (high - low) * (place - cell));
  }
}

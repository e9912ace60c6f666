// An independent computation of the core's draws [C]: it reads the same quantile table at a uniform number in floating point.
import { BODY, CELLS, EXACT_CELLS, FINER, LOWER_TAIL, UPPER_TAIL } from "#core/border/numbers.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { Sampler } from "#engine/distributions/sampler.ts";

/** Below this u and above 1 minus it the table has finer cells. */
const TAIL = 1 / FINER;
const FINEST_CELL = TAIL / CELLS;
const END = EXACT_CELLS * FINEST_CELL;

export class TableSampler extends Sampler {
  static override ofRate(distribution: Distribution, massMilligrams: number): TableSampler {
    return new TableSampler(distribution, { unit: 1, massMilligrams });
  }

  /** The draw for u in [0, 1). */
  ticks(u: number): number {
    // The body of the table comes first: 15 of 16 draws of the benchmark's kernels read it.
    let value: number;
    if (this.scale > 0 && u >= TAIL && u < 1 - TAIL) value = this.#interpolate(BODY, u * CELLS);
    else if (this.scale === 0 || u < END || u >= 1 - END) return this.exactTicks(u);
    else if (u < TAIL) value = this.#interpolate(LOWER_TAIL, u / FINEST_CELL);
    else value = this.#interpolate(UPPER_TAIL, (u - (1 - TAIL)) / FINEST_CELL);
    if (value < this.least) value = this.least;
    if (this.mass > 0) value = this.mass / value;
    // Twice as fast as Math.round, with the same result for every value of a clock at or above 0.
    return Math.floor(value + 0.5);
  }

  #interpolate(firstNode: number, place: number): number {
    const cell = Math.floor(place);
    const low = this.table[firstNode + cell] as number;
    const high = this.table[firstNode + cell + 1] as number;
    return this.location + this.scale * (low + (high - low) * (place - cell));
  }
}

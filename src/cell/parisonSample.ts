// Gathers the parisons of one station: all of them as long as they are few, then a fair part of them.
import type { ParisonRecord } from "./parisonRecord.ts";

/** Of one station in one replication. */
const mostKept = 1024;
const allLots = 4_294_967_296;

interface Parison {
  readonly drop: number;
  readonly hang: number;
  readonly atHeat: number | null;
}

export class ParisonSample {
  readonly #station: string;
  #count = 0;
  /** A parison is kept where its lot is below this. */
  #limit = allLots;
  #kept: (Parison & { readonly lot: number })[] = [];
  #longestHang: number | null = null;
  #longestAtHeat: number | null = null;
  #mostSagging: ParisonRecord["mostSagging"] = null;

  constructor(station: string) {
    this.#station = station;
  }

  add(parison: Parison): void {
    const { drop, hang, atHeat } = parison;
    this.#count++;
    this.#longestHang = Math.max(this.#longestHang ?? 0, hang);
    if (atHeat !== null) this.#longestAtHeat = Math.max(this.#longestAtHeat ?? 0, atHeat);
    const most = this.#mostSagging;
    if (most === null || drop / 6 + hang / 2 > most.drop / 6 + most.hang / 2) this.#mostSagging = { drop, hang };
    const lot = lotOf(this.#count);
    if (lot >= this.#limit) return;
    this.#kept.push({ ...parison, lot });
    if (this.#kept.length > mostKept) {
      this.#limit /= 2;
      this.#kept = this.#kept.filter((each) => each.lot < this.#limit);
    }
  }

  record(): ParisonRecord {
    return {
      station: this.#station,
      parisons: this.#count,
      drops: this.#kept.map(({ drop }) => drop),
      hangs: this.#kept.map(({ hang }) => hang),
      timesAtHeat: this.#kept.flatMap(({ atHeat }) => atHeat ?? []),
      longestHang: this.#longestHang,
      longestAtHeat: this.#longestAtHeat,
      mostSagging: this.#mostSagging,
    };
  }
}

/**
 * A lot from 0 to 2^32 that hangs on the number alone: no random draw is spent, and no rhythm of the cell falls in step with it,
 * as it would with every second or fourth parison. Multipliers from memory of a public-domain hash finalizer.
 */
function lotOf(number: number): number {
  let mixed = Math.imul(number, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) >>> 0;
}

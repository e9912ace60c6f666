// Gathers the parisons of one station: all of them as long as they are few, then a fair part of them.
import type { ParisonRecord } from "#cell/records/parisonRecord.ts";

/** Of one station in one replication. */
export const mostKept = 1024;
export const allLots = 4_294_967_296;

/** Stands for a time that is not known, and for the longest of none. */
const NONE = -1;

export class ParisonSample {
  readonly #station: string;
  #count = 0;
  /** A parison is kept where its lot is below this. */
  #limit = allLots;
  // A list for each fact, of a size that stays: a short run gathers thousands before anything is compiled.
  readonly #lots = new Float64Array(mostKept + 1);
  readonly #drops = new Float64Array(mostKept + 1);
  readonly #hangs = new Float64Array(mostKept + 1);
  readonly #timesAtHeat = new Float64Array(mostKept + 1);
  #kept = 0;
  #longestHang = NONE;
  #longestAtHeat = NONE;
  #mostSag = NONE;
  #mostSagging: ParisonRecord["mostSagging"] = null;

  constructor(station: string) {
    this.#station = station;
  }

  add(drop: number, hang: number, atHeat: number | null): void {
    const number = ++this.#count;
    const heat = atHeat ?? NONE;
    if (hang > this.#longestHang) this.#longestHang = hang;
    if (heat > this.#longestAtHeat) this.#longestAtHeat = heat;
    const sag = drop / 6 + hang / 2;
    if (sag > this.#mostSag) {
      this.#mostSag = sag;
      this.#mostSagging = { drop, hang };
    }
    const lot = lotOf(number);
    if (lot >= this.#limit) return;
    const place = this.#kept++;
    this.#lots[place] = lot;
    this.#drops[place] = drop;
    this.#hangs[place] = hang;
    this.#timesAtHeat[place] = heat;
    if (place === mostKept) this.#halve();
  }

  #halve(): void {
    this.#limit /= 2;
    const lots = this.#lots;
    let kept = 0;
    for (let i = 0; i < this.#kept; i++) {
      if (lots[i]! >= this.#limit) continue;
      lots[kept] = lots[i]!;
      this.#drops[kept] = this.#drops[i]!;
      this.#hangs[kept] = this.#hangs[i]!;
      this.#timesAtHeat[kept] = this.#timesAtHeat[i]!;
      kept++;
    }
    this.#kept = kept;
  }

  record(): ParisonRecord {
    const kept = (list: Float64Array): Float64Array => list.slice(0, this.#kept);
    return {
      station: this.#station,
      parisons: this.#count,
      drops: kept(this.#drops),
      hangs: kept(this.#hangs),
      timesAtHeat: kept(this.#timesAtHeat).filter((time) => time !== NONE),
      longestHang: this.#longestHang === NONE ? null : this.#longestHang,
      longestAtHeat: this.#longestAtHeat === NONE ? null : this.#longestAtHeat,
      mostSagging: this.#mostSagging,
    };
  }
}

/**
 * A lot from 0 to 2^32 that hangs on the number alone: no random draw is spent, and no rhythm of the cell falls in step with it,
 * as it would with every second or fourth parison. Multipliers from memory of a public-domain hash finalizer.
 */
export function lotOf(number: number): number {
  let mixed = Math.imul(number, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) >>> 0;
}

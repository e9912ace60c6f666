// Gathers the parisons of one station: all of them as long as they are few, then a fair part of them.
import type { ParisonRecord } from "./parisonRecord.ts";

/** Of one station in one replication. */
const mostKept = 1024;
const allLots = 4_294_967_296;

export class ParisonSample {
  readonly #station: string;
  #count = 0;
  /** A parison is kept where its lot is below this. */
  #limit = allLots;
  // A list for each fact: a short run gathers thousands before anything is compiled.
  #lots: number[] = [];
  #drops: number[] = [];
  #hangs: number[] = [];
  #timesAtHeat: (number | null)[] = [];
  #longestHang: number | null = null;
  #longestAtHeat: number | null = null;
  #mostSag = -1;
  #mostSagging: ParisonRecord["mostSagging"] = null;

  constructor(station: string) {
    this.#station = station;
  }

  add(drop: number, hang: number, atHeat: number | null): void {
    this.#count++;
    if (this.#longestHang === null || hang > this.#longestHang) this.#longestHang = hang;
    if (atHeat !== null && (this.#longestAtHeat === null || atHeat > this.#longestAtHeat)) this.#longestAtHeat = atHeat;
    const sag = drop / 6 + hang / 2;
    if (sag > this.#mostSag) {
      this.#mostSag = sag;
      this.#mostSagging = { drop, hang };
    }
    const lot = lotOf(this.#count);
    if (lot >= this.#limit) return;
    this.#lots.push(lot);
    this.#drops.push(drop);
    this.#hangs.push(hang);
    this.#timesAtHeat.push(atHeat);
    if (this.#lots.length > mostKept) this.#halve();
  }

  #halve(): void {
    this.#limit /= 2;
    const lots = this.#lots;
    const stays = (_: unknown, i: number): boolean => lots[i]! < this.#limit;
    this.#drops = this.#drops.filter(stays);
    this.#hangs = this.#hangs.filter(stays);
    this.#timesAtHeat = this.#timesAtHeat.filter(stays);
    this.#lots = lots.filter(stays);
  }

  record(): ParisonRecord {
    return {
      station: this.#station,
      parisons: this.#count,
      drops: this.#drops,
      hangs: this.#hangs,
      timesAtHeat: this.#timesAtHeat.filter((time) => time !== null),
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

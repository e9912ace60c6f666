// Gathers the times in contact of the shots of one station: all of them as long as they are few, then a representative part.
import type { ContactRecord } from "#cell/records/parisonRecord.ts";
import { allLots, lotOf, mostKept } from "./parisonSample.ts";

export class ContactSample {
  /** A shot with fewer is under-cooled. */
  readonly #leastTicks: number;
  readonly #secondsATick: number;
  #shots = 0;
  #underCooled = 0;
  #shortest = Infinity;
  #limit = allLots;
  #kept: { readonly lot: number; readonly ticks: number }[] = [];

  constructor(leastTicks: number, ticksASecond: number) {
    this.#leastTicks = leastTicks;
    this.#secondsATick = 1 / ticksASecond;
  }

  add(ticks: number): void {
    const lot = lotOf(++this.#shots);
    if (ticks < this.#leastTicks) this.#underCooled++;
    if (ticks < this.#shortest) this.#shortest = ticks;
    if (lot >= this.#limit) return;
    this.#kept.push({ lot, ticks });
    if (this.#kept.length <= mostKept) return;
    this.#limit /= 2;
    this.#kept = this.#kept.filter((each) => each.lot < this.#limit);
  }

  record(): ContactRecord {
    return {
      shots: this.#shots,
      underCooled: this.#underCooled,
      contacts: Float64Array.from(this.#kept, ({ ticks }) => ticks * this.#secondsATick),
      shortest: this.#shots === 0 ? null : this.#shortest * this.#secondsATick,
    };
  }
}

// How long work really takes, against what was expected of it.

/** Seconds; a shorter first task shows how long the program takes to warm up. */
const longFirst = 0.3;

export class Pace {
  #expected = 0;
  #taken = 0;
  #isCold = true;

  /** Seconds of work that is done. */
  add(expected: number, taken: number): void {
    const says = !this.#isCold || taken > longFirst;
    this.#isCold = false;
    if (!says) return;
    this.#expected += expected;
    this.#taken += taken;
  }

  /** Of work that is expected to take so long; as expected, as long as nothing is done. */
  secondsOf(expected: number): number {
    return this.#expected > 0 ? (expected * this.#taken) / this.#expected : expected;
  }
}

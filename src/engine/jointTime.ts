// The time that several resources spend together in one class of states after another: at each instant in the lowest that any of them is in.

/** Classes are small numbers; the lowest one that is present stands for all resources together. */
export class JointTime {
  /** Ticks in each class since the observation began; up to date after `settle`. */
  readonly ticks: Float64Array;
  /** How many resources are in each class now. */
  readonly #present: Int32Array;
  #now = 0;
  #since = 0;

  constructor(classes: number, first: Iterable<number>) {
    this.ticks = new Float64Array(classes);
    this.#present = new Int32Array(classes);
    for (const each of first) this.#present[each]!++;
    this.#now = this.#lowest();
  }

  /** A resource leaves one class for another. */
  move(before: number, after: number, tick: number): void {
    this.#present[before]!--;
    this.#present[after]!++;
    if (after < this.#now) this.#change(after, tick);
    else if (before === this.#now && this.#present[before] === 0) this.#change(this.#lowest(), tick);
  }

  settle(tick: number): void {
    this.ticks[this.#now]! += tick - this.#since;
    this.#since = tick;
  }

  restart(tick: number): void {
    this.ticks.fill(0);
    this.#since = tick;
  }

  #change(to: number, tick: number): void {
    this.settle(tick);
    this.#now = to;
  }

  #lowest(): number {
    return Math.max(
      0,
      this.#present.findIndex((count) => count > 0),
    );
  }
}

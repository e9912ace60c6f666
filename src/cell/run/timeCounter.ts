// Counts times of a run, each different one, in a room that does not grow with the run.
import type { CountedTimes } from "#cell/records/countedTimes.ts";

/** So many different times are kept as they are; then times that agree in so many binary digits count as one. */
export const mostDifferent = 1 << 17;
const keptDigits = 1 << 16;

/** Share by which a time may then be wrong: half of the last digit kept. */
export const mostError = 1 / (2 * keptDigits);

export class TimeCounter {
  #counts = new Map<number, number>();
  #isExact = true;

  /** Whole ticks. */
  add(ticks: number): void {
    const time = this.#isExact ? ticks : rounded(ticks);
    this.#counts.set(time, (this.#counts.get(time) ?? 0) + 1);
    if (this.#isExact && this.#counts.size > mostDifferent) this.#round();
  }

  restart(): void {
    this.#counts = new Map();
    this.#isExact = true;
  }

  /** In seconds. */
  counted(ticksPerSecond: number): CountedTimes {
    const times = Float64Array.from(this.#counts.keys()).toSorted();
    let count = 0;
    const upTo = times.map((time) => (count += this.#counts.get(time)!));
    return { seconds: times.map((time) => time / ticksPerSecond), upTo };
  }

  #round(): void {
    const exact = this.#counts;
    this.#counts = new Map();
    this.#isExact = false;
    for (const [ticks, count] of exact) {
      const time = rounded(ticks);
      this.#counts.set(time, (this.#counts.get(time) ?? 0) + count);
    }
  }
}

/** The middle of all times that agree in the digits kept. */
function rounded(ticks: number): number {
  let width = 1;
  while (ticks >= 2 * keptDigits * width) width *= 2;
  return width === 1 ? ticks : Math.floor(ticks / width) * width + width / 2;
}

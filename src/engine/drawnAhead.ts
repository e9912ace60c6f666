// A stream's numbers, drawn some way ahead: the loop of the simulation then reads an array where it would call a closure.
import type { Stream } from "./stream.ts";

/** Measured on the two-station cell: a call from the one place that draws for all steps costs some ten times the draw itself. */
const block = 32;

export class DrawnAhead {
  private readonly stream: Stream;
  private readonly numbers = new Float64Array(block);
  private used = block;

  constructor(stream: Stream) {
    this.stream = stream;
  }

  /** The next number of the stream, in its own order. */
  next(): number {
    if (this.used === block) this.fill();
    return this.numbers[this.used++]!;
  }

  /** The number given last. */
  last(): number {
    return this.numbers[this.used - 1]!;
  }

  private fill(): void {
    const { stream, numbers } = this;
    for (let i = 0; i < block; i++) numbers[i] = stream();
    this.used = 0;
  }
}

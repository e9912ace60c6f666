// The numbers that change while a simulation runs, side by side in two arrays; who keeps some of them sees only those.
import { invariant } from "#foundation/invariant.ts";

/**
 * The loop of the simulation reads and writes everything through these two arrays: for each further array the compiler
 * would check once more, at every use, what it is, how long it is and where it lies.
 */
export class Memory {
  readonly wholes: Int32Array;
  readonly reals: Float64Array;
  #wholesGiven = 0;
  #realsGiven = 0;

  constructor(room: { readonly wholes: number; readonly reals: number }) {
    this.wholes = new Int32Array(room.wholes);
    this.reals = new Float64Array(room.reals);
  }

  takeWholes(values: ArrayLike<number>): Int32Array {
    const part = this.wholes.subarray(this.#wholesGiven, (this.#wholesGiven += values.length));
    invariant(part.length === values.length, "the memory has room for every whole number", {
      room: this.wholes.length,
    });
    part.set(values);
    return part;
  }

  takeReals(values: ArrayLike<number>): Float64Array {
    const part = this.reals.subarray(this.#realsGiven, (this.#realsGiven += values.length));
    invariant(part.length === values.length, "the memory has room for every real number", { room: this.reals.length });
    part.set(values);
    return part;
  }
}

/** Where a part begins in the array that holds it. */
export function placeOf(part: Int32Array | Float64Array): number {
  return part.byteOffset / part.BYTES_PER_ELEMENT;
}

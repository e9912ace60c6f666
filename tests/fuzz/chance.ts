// The random choices of one fuzz case: the same seed and number always give the same case.
import alea from "seedrandom/lib/alea.js";

export interface Chance {
  /** True with this probability. */
  readonly is: (probability: number) => boolean;
  /** A whole number from 0 to `count` − 1. */
  readonly below: (count: number) => number;
  readonly of: <Item>(items: readonly Item[]) => Item;
}

export function chanceOf(seed: string, number: number): Chance {
  const draw = alea(`${seed}/${number}`);
  const below = (count: number): number => Math.floor(draw() * count);
  return { is: (probability) => draw() < probability, below, of: (items) => items[below(items.length)]! };
}

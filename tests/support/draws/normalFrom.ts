// Standard normal numbers from a seed.
import seedrandom from "seedrandom";

/** Box and Muller. */
export function normalFrom(seed: string): () => number {
  const uniform = seedrandom.alea(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

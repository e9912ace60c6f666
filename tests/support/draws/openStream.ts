// The uniform numbers of a stream as seedrandom gives them, from the first one on.
import alea from "seedrandom/lib/alea.js";
import { streamName } from "#engine/distributions/stream.ts";

/** Gives the next uniform number in [0, 1), a multiple of 2^-32 that may be 0. */
export type Stream = () => number;

export function openStream(seed: string, replication: number, resource: string, step: string): Stream {
  return alea(streamName(seed, replication, resource, step));
}

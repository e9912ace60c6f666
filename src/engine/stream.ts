// Opens the stream of uniform numbers that belongs to one step of one resource in one replication.
import alea from "seedrandom/lib/alea.js";

/** Gives the next uniform number in [0, 1), a multiple of 2^-32 that may be 0. */
export type Stream = () => number;

/**
 * The same names always open the same stream, whoever asks and in whatever order: no worker, counter or clock has a
 * say. Two layouts of a cell thus give the same step the same luck (common random numbers).
 */
export function openStream(seed: string, replication: number, resource: string, step: string): Stream {
  return alea(`${escapeName(seed)}/${replication}/${escapeName(resource)}/${escapeName(step)}`);
}

/** Keeps `a/b` + `c` apart from `a` + `b/c`; the escape sign itself is escaped first, so that nothing can imitate it. */
function escapeName(name: string): string {
  return name.replaceAll("%", "%25").replaceAll("/", "%2F");
}

// Opens the stream of uniform numbers that belongs to one step of one resource in one replication.
import alea from "seedrandom/lib/alea.js";

/** Gives the next uniform number in [0, 1), a multiple of 2^-32 that may be 0. */
export type Stream = () => number;

/**
 * The same names always open the same stream, whoever asks and in whatever order: no worker, counter or clock has a
 * say. Two layouts of a cell thus give the same step the same luck (common random numbers).
 */
export function openStream(seed: string, replication: number, resource: string, step: string): Stream {
  return alea(streamName(seed, replication, resource, step));
}

/** The generators of many streams side by side, as the core draws from them: of each stream s0, s1, s2 and carry c. */
export function openStreams(
  seed: string,
  replication: number,
  names: readonly { readonly resource: string; readonly step: string }[],
): Float64Array {
  return Float64Array.from(
    names.flatMap(({ resource, step }) => {
      const { s0, s1, s2, c } = alea(streamName(seed, replication, resource, step), { state: true }).state();
      return [s0, s1, s2, c];
    }),
  );
}

function streamName(seed: string, replication: number, resource: string, step: string): string {
  return `${escapeName(seed)}/${replication}/${escapeName(resource)}/${escapeName(step)}`;
}

/** Keeps `a/b` + `c` apart from `a` + `b/c`; the escape sign itself is escaped first, so that nothing can imitate it. */
function escapeName(name: string): string {
  return name.replaceAll("%", "%25").replaceAll("/", "%2F");
}

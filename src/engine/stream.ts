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

/** Numbers that a stream's generator keeps from draw to draw. */
export const STREAM_SIZE = 4;
/** Which of them is the number given last. */
export const LAST = 2;

/** Constants of alea, Baagøe's multiply-with-carry generator: its multiplier, and the unit of its numbers. */
export const MULTIPLIER = 2091639;
export const UNIT = 2.3283064365386963e-10;

/**
 * The generators of many streams side by side, for a loop that draws without a call: of each stream s0, s1, s2 and carry c.
 * The next number is t - floor(t), t being MULTIPLIER × s0 + UNIT × c; then s0, s1, s2, c become s1, s2, the number, floor(t).
 */
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

// Opens the streams of uniform numbers, one for each step of each resource in one replication.
import alea from "seedrandom/lib/alea.js";

/**
 * Where the generators of many streams begin, side by side: of each stream the four numbers s0, s1, s2 and c of alea, which seedrandom
 * seeds. The core draws on from there with a generator of its own (`core/state/draws.ts`). seedrandom is the reference for it:
 * tests/theory/engine/generator.test.ts compares millions of numbers bit for bit.
 */
export function openStreams(
  seed: string,
  replication: number,
  names: readonly { readonly resource: string; readonly step: string }[],
): Float64Array {
  const states = names.map(({ resource, step }) =>
    alea(streamName(seed, replication, resource, step), { state: true }).state(),
  );
  return Float64Array.from(states.flatMap(({ s0, s1, s2, c }) => [s0, s1, s2, c]));
}

/** The first number of a stream, in [0, 1). */
export function firstUniform(seed: string, replication: number, resource: string, step: string): number {
  return alea(streamName(seed, replication, resource, step))();
}

/**
 * The seed of a stream: the same names always open the same stream, in whatever order streams are opened and on whatever worker.
 * Two layouts of a cell thus give the same step the same numbers (common random numbers).
 */
export function streamName(seed: string, replication: number, resource: string, step: string): string {
  return `${escapeName(seed)}/${replication}/${escapeName(resource)}/${escapeName(step)}`;
}

/** Keeps `a/b` + `c` apart from `a` + `b/c`; the escape sign itself is escaped first, so that no name can imitate it. */
function escapeName(name: string): string {
  return name.replaceAll("%", "%25").replaceAll("/", "%2F");
}

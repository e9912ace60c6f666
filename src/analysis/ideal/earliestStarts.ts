// The earliest periodic schedule of a timed event graph at its own period.
import { edgeAt, type CycleRatio, type TimedGraph } from "./timedGraph.ts";

/**
 * Start of each node in ticks, relative to `origin`, a node of a critical circuit. It is the longest path from there; each token
 * subtracts one period. Nodes that no path reaches start at 0.
 *
 * Source: Baccelli, Cohen, Olsder and Quadrat, Synchronization and Linearity (1992), chapter 3: the columns of the star of the
 * normalized matrix at critical nodes are eigenvectors (from memory).
 */
export function earliestStarts(graph: TimedGraph, ratio: CycleRatio, origin: number): readonly number[] {
  const period = ratio.ticks / ratio.tokens;
  const starts = new Float64Array(graph.nodes).fill(-Infinity);
  starts[origin] = 0;
  for (let round = 0; round < graph.nodes; round++) {
    let moved = false;
    for (let i = 0; i < graph.edges.length; i++) {
      const { from, to, weight, tokens } = edgeAt(graph, i);
      const start = starts[from]! + weight - tokens * period;
      // A period that is not a whole number of ticks causes rounding, which must not count as a longer path.
      if (start > starts[to]! + roundingTicks) {
        starts[to] = start;
        moved = true;
      }
    }
    if (!moved) break;
  }
  return Array.from(starts, (start) => (start === -Infinity ? 0 : start));
}

const roundingTicks = 1e-3;

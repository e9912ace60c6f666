// The heaviest circuit through every edge of a timed event graph, relative to the maximum cycle ratio.
import { edgeAt, reducedWeight, type CycleRatio, type TimedGraph } from "./timedGraph.ts";

/**
 * Edge indices of the circuits, each once, smallest node first; an edge on no circuit adds none.
 * An edge's heaviest circuit is the edge and the longest way back from its end. No circuit is heavier than the
 * ratio, so longest ways exist and pass no node twice.
 */
export function heaviestCircuits(graph: TimedGraph, ratio: CycleRatio): readonly (readonly number[])[] {
  const outgoing = edgesBy(graph, "from");
  const found = new Map<string, readonly number[]>();
  edgesBy(graph, "to").forEach((incoming, node) => {
    if (incoming.length === 0) return;
    const into = longestWays(graph, ratio, outgoing, node);
    for (const edge of incoming) {
      const way = wayBetween(graph, into, node, edgeAt(graph, edge).from);
      if (way === null) continue;
      const circuit = fromSmallestNode(graph, [...way, edge]);
      found.set(circuit.join(" "), circuit);
    }
  });
  return [...found.values()];
}

function edgesBy(graph: TimedGraph, end: "from" | "to"): readonly (readonly number[])[] {
  const edges: number[][] = Array.from({ length: graph.nodes }, () => []);
  graph.edges.forEach((edge, index) => edges[edge[end]]?.push(index));
  return edges;
}

/** The last edge of the longest way from `source` to each node, -1 at the source and where there is no way. */
function longestWays(
  graph: TimedGraph,
  ratio: CycleRatio,
  outgoing: readonly (readonly number[])[],
  source: number,
): Int32Array {
  const weight = new Float64Array(graph.nodes);
  const tokens = new Float64Array(graph.nodes);
  const into = new Int32Array(graph.nodes).fill(-1);
  const waiting = new Uint8Array(graph.nodes);
  const queue = [source];
  for (let next = 0; next < queue.length; next++) {
    const node = queue[next] as number;
    waiting[node] = 0;
    for (const index of outgoing[node] as readonly number[]) {
      const edge = edgeAt(graph, index);
      const newWeight = (weight[node] as number) + edge.weight;
      const newTokens = (tokens[node] as number) + edge.tokens;
      const known = edge.to === source || (into[edge.to] as number) >= 0;
      const gain = { weight: newWeight - (weight[edge.to] as number), tokens: newTokens - (tokens[edge.to] as number) };
      if (known && reducedWeight(gain, ratio) <= 0) continue;
      weight[edge.to] = newWeight;
      tokens[edge.to] = newTokens;
      into[edge.to] = index;
      if (waiting[edge.to] === 0) queue.push(edge.to);
      waiting[edge.to] = 1;
    }
  }
  return into;
}

function wayBetween(graph: TimedGraph, into: Int32Array, source: number, target: number): readonly number[] | null {
  const way: number[] = [];
  for (let node = target; node !== source;) {
    const edge = into[node] as number;
    if (edge < 0) return null;
    way.push(edge);
    node = edgeAt(graph, edge).from;
  }
  return way.toReversed();
}

/** Starts at the smallest node, so that the same circuit found from different edges has the same list. */
function fromSmallestNode(graph: TimedGraph, circuit: readonly number[]): readonly number[] {
  const nodes = circuit.map((edge) => edgeAt(graph, edge).from);
  const first = nodes.indexOf(nodes.reduce((least, node) => Math.min(least, node), Infinity));
  return [...circuit.slice(first), ...circuit.slice(0, first)];
}

// The exact maximum cycle ratio of a timed event graph, which is the shortest period of any schedule.
import { circuitBehind } from "./findCircuit.ts";
import { edgeAt, reducedWeight, waySums, type CycleRatio, type TimedGraph } from "./timedGraph.ts";

/**
 * Starts from any circuit and continues with a heavier one until there is none. Each circuit is strictly heavier, so it ends.
 * Source: the negative-cycle method for the minimum ratio problem, Ahuja, Magnanti and Orlin, Network Flows, 5.7 (from memory).
 */
export function maximumCycleRatio(graph: TimedGraph, anyCircuit: readonly number[]): readonly number[] {
  let heaviest = anyCircuit;
  for (;;) {
    const heavier = circuitAbove(graph, cycleRatio(graph, heaviest));
    if (heavier === null) return heaviest;
    heaviest = heavier;
  }
}

export function cycleRatio(graph: TimedGraph, circuit: readonly number[]): CycleRatio {
  const { weight, tokens } = waySums(graph, circuit);
  const divisor = greatestDivisor(Math.abs(weight), tokens);
  return { ticks: weight / divisor, tokens: tokens / divisor };
}

/** Bellman-Ford: longest ways from any node. A circuit among the nodes' best edges is heavier than the ratio. */
function circuitAbove(graph: TimedGraph, ratio: CycleRatio): readonly number[] | null {
  const weight = new Float64Array(graph.nodes);
  const tokens = new Float64Array(graph.nodes);
  const into = new Int32Array(graph.nodes).fill(-1);
  for (;;) {
    if (!lengthen(graph, ratio, weight, tokens, into)) return null;
    const circuit = circuitAmong(graph, into);
    if (circuit !== null) return circuit;
  }
}

/** One round over all edges; false where no way became longer. */
function lengthen(
  graph: TimedGraph,
  ratio: CycleRatio,
  weight: Float64Array,
  tokens: Float64Array,
  into: Int32Array,
): boolean {
  let longer = false;
  for (let index = 0; index < graph.edges.length; index++) {
    const edge = edgeAt(graph, index);
    const newWeight = (weight[edge.from] as number) + edge.weight;
    const newTokens = (tokens[edge.from] as number) + edge.tokens;
    const gain = { weight: newWeight - (weight[edge.to] as number), tokens: newTokens - (tokens[edge.to] as number) };
    if (reducedWeight(gain, ratio) <= 0) continue;
    weight[edge.to] = newWeight;
    tokens[edge.to] = newTokens;
    into[edge.to] = index;
    longer = true;
  }
  return longer;
}

/** A circuit of the graph in which each node has at most the one edge `into` it. */
function circuitAmong(graph: TimedGraph, into: Int32Array): readonly number[] | null {
  const firstSeenFrom = new Int32Array(graph.nodes).fill(-1);
  for (let start = 0; start < graph.nodes; start++) {
    let node = start;
    while (firstSeenFrom[node] === -1) {
      firstSeenFrom[node] = start;
      const edge = into[node] as number;
      if (edge < 0) break;
      node = edgeAt(graph, edge).from;
      if (firstSeenFrom[node] === start) return circuitBehind(graph, into, node);
    }
  }
  return null;
}

function greatestDivisor(first: number, second: number): number {
  return second === 0 ? first : greatestDivisor(second, first % second);
}

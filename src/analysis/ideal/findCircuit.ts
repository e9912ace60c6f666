// Finds a circuit among chosen edges of a graph, or shows that there is none.
import { edgeAt, type TimedGraph } from "./timedGraph.ts";

/** Indices of the edges of one circuit in order, or null where the chosen edges have none. */
export function findCircuit(graph: TimedGraph, chosen: (edge: number) => boolean): readonly number[] | null {
  const missing = new Int32Array(graph.nodes);
  const outgoing: number[][] = Array.from({ length: graph.nodes }, () => []);
  graph.edges.forEach(({ from, to }, edge) => {
    if (!chosen(edge)) return;
    missing[to] = (missing[to] ?? 0) + 1;
    outgoing[from]?.push(edge);
  });
  const ready = Array.from(missing.keys()).filter((node) => missing[node] === 0);
  for (let node = ready.pop(); node !== undefined; node = ready.pop()) {
    for (const edge of outgoing[node] ?? []) {
      const { to } = edgeAt(graph, edge);
      missing[to] = (missing[to] ?? 0) - 1;
      if (missing[to] === 0) ready.push(to);
    }
  }
  return walkBack(graph, chosen, missing);
}

/** Every node that still misses an event has an edge from another such node, so that the way back must repeat a node. */
function walkBack(graph: TimedGraph, chosen: (edge: number) => boolean, missing: Int32Array): readonly number[] | null {
  const into = new Int32Array(graph.nodes).fill(-1);
  graph.edges.forEach(({ from, to }, edge) => {
    if (chosen(edge) && missing[from] !== 0 && missing[to] !== 0) into[to] = edge;
  });
  const start = into.findIndex((edge) => edge >= 0);
  return start < 0 ? null : circuitBehind(graph, into, start);
}

/** The circuit on the way back from `start` along each node's one incoming edge, or null at a dead end. */
export function circuitBehind(graph: TimedGraph, into: Int32Array, start: number): readonly number[] | null {
  const order = new Map<number, number>();
  const way: number[] = [];
  let node = start;
  while (!order.has(node)) {
    order.set(node, way.length);
    const edge = into[node] ?? -1;
    if (edge < 0) return null;
    way.push(edge);
    node = edgeAt(graph, edge).from;
  }
  return way.slice(order.get(node)).toReversed();
}

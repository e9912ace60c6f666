// A timed event graph: events are nodes, and an edge is the least time from an earlier event to a later one.

export interface TimedEdge {
  readonly from: number;
  readonly to: number;
  /** Whole ticks between the two events. */
  readonly weight: number;
  /** Event k of `to` waits for event k − tokens of `from`. */
  readonly tokens: number;
}

export interface TimedGraph {
  /** Nodes are numbered from 0. */
  readonly nodes: number;
  readonly edges: readonly TimedEdge[];
}

/** Ticks per token of a circuit, in lowest terms, because their quotient is not exact. */
export interface CycleRatio {
  readonly ticks: number;
  readonly tokens: number;
}

/** The exact sums over a way through the graph. */
export interface WaySums {
  readonly weight: number;
  readonly tokens: number;
}

export function waySums(graph: TimedGraph, way: readonly number[]): WaySums {
  const edges = way.map((edge) => edgeAt(graph, edge));
  return {
    weight: edges.reduce((sum, { weight }) => sum + weight, 0),
    tokens: edges.reduce((sum, { tokens }) => sum + tokens, 0),
  };
}

export function edgeAt(graph: TimedGraph, index: number): TimedEdge {
  return graph.edges[index] as TimedEdge;
}

/**
 * weight − tokens × ratio, times the tokens of the ratio: above 0 where a way is heavier than the ratio allows.
 * Sign and zero are exact for all safe integers; the value itself up to 2^53.
 */
export function reducedWeight({ weight, tokens }: WaySums, ratio: CycleRatio): number {
  const taken = weight * ratio.tokens;
  const allowed = tokens * ratio.ticks;
  const exact = Math.abs(taken) <= Number.MAX_SAFE_INTEGER && Math.abs(allowed) <= Number.MAX_SAFE_INTEGER;
  if (exact) return taken - allowed;
  return Number(BigInt(weight) * BigInt(ratio.tokens) - BigInt(tokens) * BigInt(ratio.ticks));
}

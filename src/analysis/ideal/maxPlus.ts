// The period of a timed event graph, the circuits that set it, and the slack of all other circuits.
import { invariant } from "#foundation/invariant.ts";
import { findCircuit } from "./findCircuit.ts";
import { heaviestCircuits } from "./heaviestCircuits.ts";
import { cycleRatio, maximumCycleRatio } from "./maximumCycleRatio.ts";
import { edgeAt, reducedWeight, waySums, type CycleRatio, type TimedGraph } from "./timedGraph.ts";

export interface Circuit {
  readonly nodes: readonly number[];
  /** Edge i leads from node i to the next; the last one back to the first. */
  readonly edges: readonly number[];
  readonly weight: number;
  readonly tokens: number;
  /** Ticks per token. */
  readonly ratio: number;
  /** Ticks by which the whole circuit may grow before it sets the period. */
  readonly slack: number;
  /** Exact: no other circuit has a higher ratio. */
  readonly critical: boolean;
}

export type MaxPlus =
  /** A circuit without tokens: each of its events waits for itself. */
  | { readonly kind: "deadlock"; readonly nodes: readonly number[]; readonly edges: readonly number[] }
  /** No circuit sets a period. */
  | { readonly kind: "acyclic" }
  | {
      readonly kind: "periodic";
      /** The period of each event is ticks / tokens. */
      readonly ratio: CycleRatio;
      /** The heaviest circuit through every edge, each once: the critical ones first, then by slack. */
      readonly circuits: readonly Circuit[];
      /** The first of the circuits. */
      readonly critical: Circuit;
      /** Least slack of the circuits through the node; null on no circuit. */
      readonly slackOf: (node: number) => number | null;
    };

/**
 * Source: Baccelli, Cohen, Olsder and Quadrat, Synchronization and Linearity (1992), chapters 2 and 3 (from memory):
 * the period of a timed event graph is the largest weight / tokens of its circuits.
 */
export function maxPlus(graph: TimedGraph): MaxPlus {
  checkGraph(graph);
  const stuck = findCircuit(graph, (edge) => edgeAt(graph, edge).tokens === 0);
  if (stuck !== null) return { kind: "deadlock", nodes: nodesOf(graph, stuck), edges: stuck };
  const any = findCircuit(graph, () => true);
  if (any === null) return { kind: "acyclic" };
  const ratio = cycleRatio(graph, maximumCycleRatio(graph, any));
  const circuits = heaviestCircuits(graph, ratio)
    .map((edges) => describeCircuit(graph, edges, ratio))
    .toSorted((a, b) => a.slack - b.slack);
  const [critical] = circuits;
  invariant(critical?.critical, "the heaviest circuit is critical", { ratio });
  const slacks = leastSlacks(graph.nodes, circuits);
  return { kind: "periodic", ratio, circuits, critical, slackOf: (node) => slacks[node] ?? null };
}

function describeCircuit(graph: TimedGraph, edges: readonly number[], ratio: CycleRatio): Circuit {
  const { weight, tokens } = waySums(graph, edges);
  const excess = reducedWeight({ weight, tokens }, ratio);
  const slack = excess === 0 ? 0 : -excess / ratio.tokens;
  return { nodes: nodesOf(graph, edges), edges, weight, tokens, ratio: weight / tokens, slack, critical: excess === 0 };
}

function leastSlacks(nodes: number, circuits: readonly Circuit[]): readonly (number | null)[] {
  const least: (number | null)[] = Array.from({ length: nodes }, () => null);
  for (const { nodes: passed, slack } of circuits) {
    for (const node of passed) least[node] = Math.min(least[node] ?? Infinity, slack);
  }
  return least;
}

function nodesOf(graph: TimedGraph, edges: readonly number[]): readonly number[] {
  return edges.map((edge) => edgeAt(graph, edge).from);
}

function checkGraph({ nodes, edges }: TimedGraph): void {
  const isNode = (node: number) => Number.isInteger(node) && node >= 0 && node < nodes;
  for (const edge of edges) {
    invariant(isNode(edge.from) && isNode(edge.to), "an edge joins nodes of its graph", { edge, nodes });
    invariant(Number.isSafeInteger(edge.weight), "a weight is a whole number of ticks", { edge });
    invariant(Number.isSafeInteger(edge.tokens) && edge.tokens >= 0, "tokens are counted", { edge });
  }
}

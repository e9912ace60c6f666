// Holds periods, critical circuits and slacks to textbook matrices and to an enumeration of all circuits.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { maxPlus, type MaxPlus } from "#analysis/ideal/maxPlus.ts";
import type { TimedEdge, TimedGraph } from "#analysis/ideal/timedGraph.ts";

const edge = (from: number, to: number, weight: number, tokens: number): TimedEdge => ({ from, to, weight, tokens });

function periodic(graph: TimedGraph): Extract<MaxPlus, { kind: "periodic" }> {
  const answer = maxPlus(graph);
  if (answer.kind !== "periodic") throw new Error(`expected a period, not ${answer.kind}`);
  return answer;
}

/** The entry in row i, column j of a max-plus matrix is the delay from x_j(k) to x_i(k + 1). */
function graphOf(matrix: readonly (readonly number[])[]): TimedGraph {
  const edges = matrix.flatMap((row, to) => row.map((weight, from) => edge(from, to, weight, 1)));
  return { nodes: matrix.length, edges };
}

describe("textbook matrices", () => {
  test("[[3, 7], [2, 4]] has cycle mean 4.5", () => {
    // Baccelli, Cohen, Olsder and Quadrat, Synchronization and Linearity, ch. 1 [M+C].
    const { ratio, critical } = periodic(graphOf([[3, 7], [2, 4]])); // prettier-ignore
    expect(ratio).toEqual({ ticks: 9, tokens: 2 });
    expect(critical).toMatchObject({ nodes: [0, 1], weight: 9, tokens: 2, ratio: 4.5, slack: 0, critical: true });
  });

  test("[[2, 5], [3, 3]] has cycle mean 4", () => {
    // Heidergott, Olsder and van der Woude, Max Plus at Work, ch. 0 [M+C].
    const { ratio, slackOf, circuits } = periodic(graphOf([[2, 5], [3, 3]])); // prettier-ignore
    expect(ratio).toEqual({ ticks: 4, tokens: 1 });
    expect([slackOf(0), slackOf(1)]).toEqual([0, 0]);
    expect(circuits.map(({ slack }) => slack)).toEqual([0, 1, 2]);
  });
});

describe("a cell with all times fixed", () => {
  // Periods of the reciprocating cell computed independently of this project [C]: recharge 4.0, drop 1.8, valve 0.25, close 0.6,
  // mold time 11.0 s.
  /** One node for each station, in rotation; `backWays` are the parallel times from drop to recharge, ms. */
  function cell(stations: number, backWays: readonly number[]): TimedGraph {
    const edges = Array.from({ length: stations }, (_, station) => {
      const next = (station + 1) % stations;
      const turns = backWays.map((back) => edge(station, next, 250 + 1800 + back + 4000, next === 0 ? 1 : 0));
      return [...turns, edge(station, station, 250 + 1800 + 11_000, 1)];
    });
    return { nodes: stations, edges: edges.flat() };
  }
  const secondsPerShot = (stations: number, backWays: readonly number[]) => {
    const { ratio } = periodic(cell(stations, backWays));
    return ratio.ticks / ratio.tokens / stations / 1000;
  };

  test("has the computed period when the recharge begins with the valve in neutral", () => {
    expect([1, 2, 3, 4].map((stations) => secondsPerShot(stations, [250]))).toEqual([13.05, 6.525, 6.3, 6.3]);
  });

  test("has the computed period when the recharge begins with the mold closed", () => {
    expect([1, 2, 3, 4].map((stations) => secondsPerShot(stations, [250, 600]))).toEqual([13.05, 6.65, 6.65, 6.65]);
  });

  test("has the slack of its other circuit in milliseconds a turn", () => {
    const { circuits, slackOf } = periodic(cell(2, [250]));
    // 13.05 s of the station against 2 × 6.3 s of the plasticator.
    expect(circuits.map(({ slack, critical }) => [slack, critical])).toEqual([[0, true], [0, true], [450, false]]); // prettier-ignore
    expect(slackOf(0)).toBe(0);
  });
});

test("equal circuits are all critical", () => {
  const graph = { nodes: 3, edges: [edge(0, 1, 2, 1), edge(1, 0, 2, 0), edge(0, 2, 3, 0), edge(2, 0, 1, 1)] };
  const { circuits, slackOf } = periodic(graph);
  expect(circuits.map(({ nodes, critical }) => [nodes, critical])).toEqual([[[0, 1], true], [[0, 2], true]]); // prettier-ignore
  expect([slackOf(1), slackOf(2)]).toEqual([0, 0]);
});

test("a circuit without tokens is a deadlock", () => {
  const graph = { nodes: 3, edges: [edge(0, 1, 5, 0), edge(1, 2, 0, 0), edge(2, 1, 0, 0), edge(2, 0, 1, 1)] };
  expect(maxPlus(graph)).toEqual({ kind: "deadlock", nodes: [1, 2], edges: [1, 2] });
});

test("a graph without circuits has no period", () => {
  expect(maxPlus({ nodes: 3, edges: [edge(0, 1, 5, 0), edge(0, 2, 5, 1), edge(1, 2, 1, 0)] })).toEqual({
    kind: "acyclic",
  });
  expect(maxPlus({ nodes: 0, edges: [] })).toEqual({ kind: "acyclic" });
});

test("a node on no circuit has no slack", () => {
  const { slackOf } = periodic({ nodes: 2, edges: [edge(0, 0, 5, 1), edge(0, 1, 9, 0)] });
  expect([slackOf(0), slackOf(1)]).toEqual([0, null]);
});

test("edges outside the graph, fractions of ticks and negative tokens violate an invariant", () => {
  expect(() => maxPlus({ nodes: 1, edges: [edge(0, 1, 1, 1)] })).toThrow("joins nodes");
  expect(() => maxPlus({ nodes: 1, edges: [edge(0, 0, 0.5, 1)] })).toThrow("whole number");
  expect(() => maxPlus({ nodes: 1, edges: [edge(0, 0, 1, -1)] })).toThrow("counted");
});

test("ratios that differ by one tick in 4e14 are distinguished", () => {
  // Rings of 400 and 399 events: (400 × 10¹² + 1)/400 and (399 × 10¹² + 1)/399 differ only in the last digits of a double.
  const ring = (first: number, length: number) =>
    Array.from({ length }, (_, index) =>
      edge(first + index, first + ((index + 1) % length), 1e12 + (index === 0 ? 1 : 0), 1),
    );
  const { ratio, critical, slackOf } = periodic({ nodes: 799, edges: [...ring(0, 400), ...ring(400, 399)] });
  expect(ratio).toEqual({ ticks: 399e12 + 1, tokens: 399 });
  expect(critical.nodes).toHaveLength(399);
  // (1/399 − 1/400) × 400 ticks.
  expect(slackOf(0)).toBeCloseTo(1 / 399, 9);
});

interface Enumerated {
  readonly edges: readonly number[];
  readonly weight: bigint;
  readonly tokens: bigint;
}

/** All elementary circuits, each from its smallest node. */
function everyCircuit({ nodes, edges }: TimedGraph): readonly Enumerated[] {
  const found: Enumerated[] = [];
  const extend = (start: number, node: number, path: readonly number[], visited: ReadonlySet<number>): void => {
    edges.forEach(({ from, to }, index) => {
      if (from !== node || to < start) return;
      if (to === start) found.push(sums([...path, index]));
      else if (!visited.has(to)) extend(start, to, [...path, index], new Set([...visited, to]));
    });
  };
  const sums = (path: readonly number[]): Enumerated => ({
    edges: path,
    weight: path.reduce((sum, index) => sum + BigInt(edges[index]?.weight ?? 0), 0n),
    tokens: path.reduce((sum, index) => sum + BigInt(edges[index]?.tokens ?? 0), 0n),
  });
  for (let start = 0; start < nodes; start++) extend(start, start, [], new Set([start]));
  return found;
}

const heavier = (a: Enumerated, b: Enumerated) => (b.weight * a.tokens > a.weight * b.tokens ? b : a);

function graphs(weight: fc.Arbitrary<number>, fewestTokens: number): fc.Arbitrary<TimedGraph> {
  return fc.integer({ min: 1, max: 6 }).chain((nodes) => {
    const node = fc.nat(nodes - 1);
    const anyEdge = fc.record({ from: node, to: node, weight, tokens: fc.integer({ min: fewestTokens, max: 3 }) });
    return fc.array(anyEdge, { maxLength: 12 }).map((edges) => ({ nodes, edges }));
  });
}

const weights = fc.oneof(fc.nat(12), fc.integer({ min: 1e12 - 3, max: 1e12 }), fc.integer({ min: -5, max: 5 }));

test("the kind of answer agrees with the enumeration", () => {
  fc.assert(
    fc.property(graphs(weights, 0), (graph) => {
      const circuits = everyCircuit(graph);
      const stuck = circuits.some(({ tokens }) => tokens === 0n);
      expect(maxPlus(graph).kind).toBe(stuck ? "deadlock" : circuits.length === 0 ? "acyclic" : "periodic");
    }),
  );
});

test("ratio, slacks and critical circuits agree with the enumeration", () => {
  fc.assert(
    fc.property(fc.oneof(graphs(weights, 1), graphs(fc.nat(3), 0)), (graph) => {
      const circuits = everyCircuit(graph);
      fc.pre(circuits.length > 0 && circuits.every(({ tokens }) => tokens > 0n));
      const most = circuits.reduce(heavier);
      const answer = periodic(graph);
      const { ratio } = answer;
      expect(BigInt(ratio.ticks) * most.tokens).toBe(most.weight * BigInt(ratio.tokens));

      // Slack times the tokens of the ratio, a whole number.
      const scaledSlack = ({ weight, tokens }: Enumerated) =>
        tokens * BigInt(ratio.ticks) - weight * BigInt(ratio.tokens);
      const leastSlack = (chosen: readonly Enumerated[]) => chosen.map(scaledSlack).reduce((a, b) => (b < a ? b : a));
      const toScaled = (slack: number) => slack * ratio.tokens;

      for (let node = 0; node < graph.nodes; node++) {
        const through = circuits.filter(({ edges }) => edges.some((index) => graph.edges[index]?.from === node));
        const slack = answer.slackOf(node);
        if (through.length === 0) expect(slack).toBeNull();
        else expectClose(toScaled(slack ?? NaN), Number(leastSlack(through)));
      }
      graph.edges.forEach((_, index) => {
        const through = circuits.filter(({ edges }) => edges.includes(index));
        const listed = answer.circuits.filter(({ edges }) => edges.includes(index));
        expect(listed.length > 0).toBe(through.length > 0);
        if (through.length === 0) return;
        expectClose(Math.min(...listed.map(({ slack }) => toScaled(slack))), Number(leastSlack(through)));
        expect(listed.some(({ critical }) => critical)).toBe(leastSlack(through) === 0n);
      });
      const known = new Map(circuits.map((circuit) => [circuit.edges.join(), circuit]));
      for (const listed of answer.circuits) {
        const same = known.get(listed.edges.join());
        expect(same && [Number(same.weight), Number(same.tokens)]).toEqual([listed.weight, listed.tokens]);
        expect(listed.critical).toBe(same && scaledSlack(same) === 0n);
      }
      expect(new Set(answer.circuits.map(({ edges }) => edges.join())).size).toBe(answer.circuits.length);
    }),
  );
});

function expectClose(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
}

// The order in which stations are served, as a timed event graph: fixed, or found by a run until it repeats.
import { cellFlow, type FlowNode } from "#cell/run/cellFlow.ts";
import { hasRole, shotRoles } from "#cell/words/cellTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { planOf } from "./planOf.ts";
import type { TimedEdge, TimedGraph } from "./timedGraph.ts";

/** A step of the graph; one of several equal stations stands for all. */
export interface GraphStep extends Omit<FlowNode, "occurrence" | "start" | "needed"> {
  /** Counts the shots of one period from 0. */
  readonly shot: number;
}

export interface OrderedShots {
  readonly method: "fixed order" | "order found by running";
  readonly graph: TimedGraph;
  readonly steps: readonly GraphStep[];
  /** One token of the graph is this many shots. */
  readonly shotsPerToken: number;
}

/** Shots of each run in the search for a repeating order. Most orders repeat soon, some only after a long transient. */
const searches = [300, 1200, 6000];
/** Steps of one run of the search: more, as of a hundred servers, take seconds and gigabytes. */
const mostSteps = 500_000;
/** The longest order of the search, in shots and in steps. The work on a graph grows with the cube of its steps. */
const longestOrder = 400;
const mostNodes = 750;

/** Undefined where no order repeats within the search, or the cell does not come to so many shots. */
export function orderedShots(scenario: Scenario): OrderedShots | undefined {
  const count = scenario.stations.length;
  // Servers after the molds and walking operators serve the first call. Their order comes from a run.
  if (scenario.takeaway || scenario.walk) return foundOrder(scenario);
  if (areEqual(scenario.stations) && scenario.valve.dispatch !== "priority") return knownOrder(scenario, 1);
  const sharesCrew = scenario.stations.some((station) => station.remove.by === "operator");
  if (scenario.valve.dispatch === "alternate" && !sharesCrew) return knownOrder(scenario, count);
  return foundOrder(scenario);
}

const isShot = (node: FlowNode): boolean => hasRole(node, ...shotRoles);

/** Equal except for their names, so that they take turns. */
export function areEqual(stations: readonly StationSpec[]): boolean {
  const described = stations.map((station) => JSON.stringify({ ...station, name: "", priority: 0, product: "" }));
  return new Set(described).size === 1;
}

/** The stations take turns in their order; a period of 1 folds equal stations into one. */
function knownOrder(scenario: Scenario, period: number): OrderedShots | undefined {
  const count = scenario.stations.length;
  const plan = planOf(scenario);
  // After this many turns no step depends on the initial state, such as a free operator or a shot in the chamber.
  const reserve = Math.max(...plan.program.table.places.map(({ tokens }) => tokens));
  const turns = 4 + Math.ceil((2 * reserve) / count);
  // A station may lag behind the others by as many turns as it has shots before it.
  const wanted = (turns + 2) * count;
  const nodes = cellFlow(plan, wanted);
  // A time of years is a typing error, or follows from one.
  if (nodes.filter(isShot).length < wanted) return undefined;
  const names = scenario.stations.map(({ name }) => name);
  const shots = shotNumbers(nodes, ({ process, occurrence }) => occurrence * count + names.indexOf(process));
  const first = (turns - 2) * count;
  const keyOf = (i: number): string => {
    const { process, kind, station, position } = nodes[i]!;
    const folded = period === 1 && station !== undefined ? kind : process;
    return `${folded}/${position}/${modulo(shots[i]!, period)}`;
  };
  const folded = fold(nodes, {
    isKept: (i) => shots[i]! >= first && shots[i]! < first + period,
    keyOf,
    tokensOf: (from, to) => Math.floor(shots[to]! / period) - Math.floor(shots[from]! / period),
    shotOf: (i) => modulo(shots[i]!, period),
  });
  return { method: "fixed order", shotsPerToken: period, ...folded };
}

/**
 * The shot of each node. The first step of a station's cycle counts it; any other node has the latest shot among its needs. The
 * first charge of a cold start has -1.
 */
function shotNumbers(nodes: readonly FlowNode[], numberOf: (first: FlowNode) => number): readonly number[] {
  const shots: number[] = [];
  for (const node of nodes) {
    const isOwn = node.kind === "station";
    const carriers = node.needed.filter((before) => !isOwn || nodes[before]!.process === node.process);
    shots.push(isOwn && node.position === 0 ? numberOf(node) : Math.max(-1, ...carriers.map((each) => shots[each]!)));
  }
  return shots;
}

/** Runs at mean times until all starts of one stretch of shots repeat in the next stretch, all later by the same time. */
function foundOrder(scenario: Scenario): OrderedShots | undefined {
  const plan = planOf(scenario);
  let stepsPerShot = 0;
  for (const shots of searches) {
    if (stepsPerShot * shots > mostSteps) return undefined;
    const nodes = cellFlow(plan, shots);
    const order = repeatedOrder(nodes);
    if (order) return order;
    stepsPerShot = nodes.length / shots;
  }
  return undefined;
}

/** The places of a server have one name in a flow, because an order of single places repeats late or never. */
function repeatedOrder(nodes: readonly FlowNode[]): OrderedShots | undefined {
  const drops = nodes.flatMap((node, i) => (isShot(node) ? [i] : []));
  const memory = longestTurn(nodes);
  for (let period = 1; period <= longestOrder && 2 * period < drops.length; period++) {
    const stretch = nodes[drops.at(-1)!]!.start - nodes[drops.at(-1 - period)!]!.start;
    const periods = Math.ceil((2 * memory) / Math.max(1, stretch)) + 2;
    if (period * periods >= drops.length) continue;
    if (drops.at(-1)! - drops.at(-1 - period)! > mostNodes) return undefined;
    if (repeats(nodes, drops, period, periods, stretch)) return foldWindow(nodes, drops, period, stretch);
  }
  return undefined;
}

/**
 * The longest time between two starts of a process, or from the start of a step to the start of a step that needs it. A state may
 * depend on steps that are this old.
 */
function longestTurn(nodes: readonly FlowNode[]): number {
  const before = new Map<string, number>();
  let longest = 0;
  for (const node of nodes) {
    longest = Math.max(longest, node.start - (before.get(node.process) ?? 0), node.ticks);
    for (const needed of node.needed) longest = Math.max(longest, node.start - nodes[needed]!.start);
    before.set(node.process, node.start);
  }
  return longest;
}

function repeats(
  nodes: readonly FlowNode[],
  drops: readonly number[],
  period: number,
  periods: number,
  stretch: number,
): boolean {
  const step = drops.at(-1)! - drops.at(-1 - period)!;
  const from = drops.at(-1 - period * (periods - 1))!;
  for (let i = drops.at(-1)!; i > from; i--) {
    const node = nodes[i]!;
    const earlier = nodes[i - step];
    const isSame =
      earlier?.process === node.process && earlier.position === node.position && node.start - earlier.start === stretch;
    // While a buffer fills, the starts repeat, but each needs an older part than the one before.
    if (!isSame || node.needed.some((before, k) => before - earlier.needed[k]! !== step)) return false;
  }
  return true;
}

function foldWindow(
  nodes: readonly FlowNode[],
  drops: readonly number[],
  period: number,
  stretch: number,
): OrderedShots {
  const begin = nodes[drops.at(-1 - period)!]!.start;
  let shot = 0;
  const shots = shotNumbers(nodes, () => shot++);
  const windowOf = (i: number): number => Math.floor((nodes[i]!.start - begin) / stretch);
  const ordinals = sameInstant(nodes);
  const folded = fold(nodes, {
    isKept: (i) => windowOf(i) === 0,
    keyOf: (i) =>
      `${nodes[i]!.process}/${nodes[i]!.position}/${modulo(nodes[i]!.start - begin, stretch)}/${ordinals[i]}`,
    tokensOf: (from, to) => windowOf(to) - windowOf(from),
    shotOf: (i) => modulo(shots[i]!, period),
  });
  return { method: "order found by running", shotsPerToken: period, ...folded };
}

/** Numbers the steps that start at one instant as the same step of equal places. */
function sameInstant(nodes: readonly FlowNode[]): readonly number[] {
  const seen = new Map<string, number>();
  return nodes.map(({ process, position, start }) => {
    const key = `${process}/${position}/${start}`;
    const number = seen.get(key) ?? 0;
    seen.set(key, number + 1);
    return number;
  });
}

/** The rules by which nodes of a run, given by number, become steps of a graph that repeats. */
interface Folding {
  readonly isKept: (node: number) => boolean;
  readonly keyOf: (node: number) => string;
  readonly tokensOf: (from: number, to: number) => number;
  readonly shotOf: (node: number) => number;
}

/** One graph step for every kept node, and an edge for each completion that it needed. */
function fold(
  nodes: readonly FlowNode[],
  folding: Folding,
): { readonly graph: TimedGraph; readonly steps: readonly GraphStep[] } {
  const kept = [...nodes.keys()].filter(folding.isKept);
  const numbers = new Map<string, number>();
  const steps: GraphStep[] = [];
  for (const i of kept) {
    const key = folding.keyOf(i);
    if (numbers.has(key)) continue;
    numbers.set(key, steps.length);
    const { occurrence: _occurrence, start: _start, needed: _needed, ...step } = nodes[i]!;
    steps.push({ ...step, shot: folding.shotOf(i) });
  }
  const edges = new Map<string, TimedEdge>();
  for (const i of kept) {
    for (const before of nodes[i]!.needed) {
      const from = numbers.get(folding.keyOf(before))!;
      const to = numbers.get(folding.keyOf(i))!;
      const tokens = folding.tokensOf(before, i);
      edges.set(`${from}/${to}/${tokens}`, { from, to, weight: nodes[before]!.ticks, tokens });
    }
  }
  return { graph: { nodes: steps.length, edges: [...edges.values()] }, steps };
}

function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}

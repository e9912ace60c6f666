// The ideal cycle: the period that the cell would keep if every step took its mean time, what sets it, and the slack of all else.
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { invariant } from "#foundation/invariant.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { AGING } from "#cell/layers/age.ts";
import { slowedBy } from "#cell/delivery/continuousExtrusion.ts";
import { maskedStation, PLASTICATOR, stationServed, VALVE } from "#cell/words/cycleNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { boundCircuits } from "./boundCircuits.ts";
import type { IdealCircuit } from "./idealCircuit.ts";
import { calmOf } from "./planOf.ts";
import { circuitBeyondTheMold, withOwnCircuits } from "./takeawayCircuits.ts";
import { CREW } from "./takeawayOwners.ts";
import { maxPlus, type Circuit } from "./maxPlus.ts";
import { areEqual, isStation, orderedShots, type GraphStep, type OrderedShots } from "./orderedShots.ts";
import { earliestStarts } from "./earliestStarts.ts";

/** A step in one period at mean times; seconds from the beginning of the first shot's valve shift. */
export interface IdealStep {
  readonly resource: string;
  readonly step: string;
  readonly station: string;
  readonly shot: number;
  readonly start: number;
  readonly end: number;
  readonly critical: boolean;
  /** All resources that it keeps busy, as a drop keeps screw, valve and station. */
  readonly occupies: readonly string[];
}

export interface IdealCycle {
  /** `bound`: no order of stations repeats; no cell of these times can be faster than this, and it may be slower. */
  readonly method: "fixed order" | "order found by running" | "bound";
  readonly secondsPerShot: number;
  /** Exactly so many ticks for so many shots. */
  readonly periodTicks: number;
  readonly shotsPerPeriod: number;
  /** The critical one first, then by slack. */
  readonly circuits: readonly IdealCircuit[];
  /** Least slack of the circuits through a step, in seconds; null where it is on none. */
  readonly slackOf: (resource: string, step: string) => number | null;
  /** Empty for a bound. */
  readonly schedule: readonly IdealStep[];
  /** Station circuit / plasticator circuit: the stations of this kind that keep the screw busy; null where stations differ. */
  readonly stationsNeeded: number | null;
}

/**
 * Times are the means of the sampled laws, in whole microseconds. The graph comes from running the cycle table itself, so that it
 * cannot disagree with the simulation; the period comes from the graph alone. Nothing stops in it.
 */
export function idealCycle(disturbed: Scenario): IdealCycle {
  const scenario = calmOf(disturbed);
  const order = orderedShots(scenario);
  if (!order) return boundCycle(scenario);
  const solved = maxPlus(order.graph);
  invariant(solved.kind === "periodic", "a cell that runs has a period", { kind: solved.kind });
  const periodTicks = solved.ratio.ticks;
  const shotsPerPeriod = solved.ratio.tokens * order.shotsPerToken;
  const isFolded = order.method === "fixed order" && order.shotsPerToken === 1 && scenario.stations.length > 1;
  const found = solved.circuits.map((circuit) => describe(circuit, order, scenario, isFolded));
  const circuits = heaviestByName(withOwnCircuits(found, order, solved.ratio, scenario));
  const slack = slackTable(order, solved.slackOf, scenario, isFolded);
  return {
    method: order.method,
    secondsPerShot: periodTicks / shotsPerPeriod / TICKS_PER_SECOND,
    periodTicks,
    shotsPerPeriod,
    circuits,
    slackOf: (resource, step) => slack.get(`${resource}/${step}`) ?? null,
    schedule: schedule(order, solved.ratio, solved.critical, scenario, isFolded),
    stationsNeeded: stationsNeeded(circuits, scenario),
  };
}

/** Circuits come heaviest first, equal ones by their numbers; of those that keep the same resource busy the others are short cuts through it. */
function heaviestByName(circuits: readonly IdealCircuit[]): IdealCircuit[] {
  // One that takes no time, as that of a ram which only watches, keeps nobody busy.
  const kept = circuits
    .filter(({ seconds, critical }) => seconds > 0 || critical)
    .filter((circuit, i, all) => all.findIndex((other) => other.name === circuit.name) === i);
  const slacks = [...new Set(kept.map(({ slackSeconds }) => slackSeconds))];
  return slacks.flatMap((slack) =>
    inReadingOrder(
      kept.filter(({ slackSeconds }) => slackSeconds === slack),
      ({ name }) => name,
    ),
  );
}

function describe(circuit: Circuit, order: OrderedShots, scenario: Scenario, isFolded: boolean): IdealCircuit {
  const all = circuit.nodes.map((node) => order.steps[node]!);
  const steps = all.filter((step) => step.ticks > 0);
  const owner = ({ resource }: GraphStep): string => (isFolded ? foldedOwner(resource, scenario) : resource);
  const shots = circuit.tokens * order.shotsPerToken;
  return {
    name: circuitName(all, scenario, isFolded),
    steps: steps.map((step) => `${owner(step)}: ${step.step}`),
    resources: [...new Set(steps.map(owner))],
    seconds: circuit.weight / TICKS_PER_SECOND,
    shots,
    secondsPerShot: circuit.weight / shots / TICKS_PER_SECOND,
    slackSeconds: circuit.slack / TICKS_PER_SECOND,
    critical: circuit.critical,
  };
}

/** Of equal stations each, and of their masks. */
function foldedOwner(resource: string, scenario: Scenario): string {
  if (isStation(resource, scenario)) return "each station";
  return maskedStation(resource, scenario.stations) === undefined ? resource : "each mask";
}

/** A circuit is named after the resource that it keeps busy all the way round. */
function circuitName(steps: readonly GraphStep[], scenario: Scenario, isFolded: boolean): string {
  const names = new Set(steps.map((step) => step.step));
  const stations = [...new Set(steps.map((step) => step.process))].filter((process) => isStation(process, scenario));
  const cooled = steps.filter((step) => step.step === "cool").map((step) => step.process);
  const mask = maskAlone(steps, scenario);
  if (mask !== undefined) return isFolded ? "each mask" : mask;
  const beyond = circuitBeyondTheMold(steps, scenario);
  if (beyond !== undefined) return beyond;
  if (names.has("recharge") || names.has("parison")) {
    if (cooled.length > 0) return "plasticator and station";
    const { delivery } = scenario;
    if (delivery.kind === "accumulator-head" && names.has("drop")) return chamberName(stations, isFolded);
    if (delivery.kind !== "reciprocating-screw" || delivery.rechargeStarts === "valve-neutral") return PLASTICATOR;
    return steps.some((step) => step.step === "close")
      ? "plasticator, by way of the closing mold"
      : "plasticator, by way of the valve";
  }
  if (cooled.length === 1 || (isFolded && cooled.length > 0)) return isFolded ? "each station" : cooled[0]!;
  if (names.has("travel in") && cooled.length === 0) return "die zone";
  if (names.has("shift to neutral") && cooled.length === 0) return VALVE;
  if (steps.every(({ step }) => step === "remove")) return stations.length > 0 ? CREW : steps[0]!.process;
  return [...new Set(steps.map(({ process }) => process))].toSorted().join(" and ");
}

/** The mask that does all of it, from one hand-over to the next. */
function maskAlone(steps: readonly GraphStep[], { stations }: Scenario): string | undefined {
  const busy = [...new Set(steps.filter(({ timed }) => timed).map(({ process }) => process))];
  return busy.length === 1 && maskedStation(busy[0]!, stations) !== undefined ? busy[0] : undefined;
}

function chamberName(stations: readonly string[], isFolded: boolean): string {
  if (isFolded) return "chamber of each head";
  return stations.length === 1 ? `chamber of ${stations[0]}` : "plasticator and chambers";
}

function slackTable(
  order: OrderedShots,
  slackOf: (node: number) => number | null,
  scenario: Scenario,
  isFolded: boolean,
): ReadonlyMap<string, number> {
  const table = new Map<string, number>();
  order.steps.forEach((step, node) => {
    const slack = slackOf(node);
    if (slack === null) return;
    for (const resource of isFolded ? unfolded(step.resource, scenario) : [step.resource]) {
      const key = `${resource}/${step.step}`;
      table.set(key, Math.min(table.get(key) ?? Infinity, slack / TICKS_PER_SECOND));
    }
  });
  return table;
}

/** All for which the step stands in a graph of equal stations: a station's own, or those of what is there for it. */
function unfolded(resource: string, { stations }: Scenario): readonly string[] {
  const names = stations.map(({ name }) => name);
  const served = stationServed(resource, names);
  return served === undefined ? [resource] : names.map((name) => resource.slice(0, -served.length) + name);
}

/** Every step as early as the period allows, each within the one period that is shown, until each station has had its turn. */
function schedule(
  order: OrderedShots,
  ratio: { readonly ticks: number; readonly tokens: number },
  critical: Circuit,
  scenario: Scenario,
  isFolded: boolean,
): IdealStep[] {
  const starts = earliestStarts(order.graph, ratio, critical.nodes[0]!);
  const onCircuit = new Set(critical.nodes);
  const period = ratio.ticks / ratio.tokens;
  const begins = order.steps.map(({ process, position }) => position === 0 && isStation(process, scenario));
  const first = Math.min(...starts.filter((_, node) => begins[node]));
  const names = scenario.stations.map((station) => station.name);
  const turns = isFolded ? names : [undefined];
  const length = turns.length * period;
  return turns
    .flatMap((turn, k) =>
      order.steps.flatMap((step, node) => {
        // Parts ripen beside whoever waits for them: that is nobody's step.
        if (!step.timed || step.process.startsWith(AGING)) return [];
        const start = modulo(starts[node]! - first + k * period, length);
        const served = stationServed(step.process, names);
        const station = served === undefined ? "" : (turn ?? served);
        const inTurn = (name: string): string =>
          stationServed(name, names) === undefined ? name : name.replace(served ?? "", station);
        const row = {
          resource: inTurn(step.resource),
          step: step.step,
          station,
          shot: (turn === undefined ? step.shot : k) + 1,
          start: start / TICKS_PER_SECOND,
          end: (start + step.ticks) / TICKS_PER_SECOND,
          critical: onCircuit.has(node),
          occupies: step.occupies.map(inTurn),
        };
        return [row];
      }),
    )
    .toSorted((a, b) => a.start - b.start || a.shot - b.shot || (a.resource < b.resource ? -1 : 1));
}

/** Into [0, by), a rounding below 0 counting as 0. */
function modulo(value: number, by: number): number {
  const rest = value - Math.floor(value / by) * by;
  return by - rest < 1e-3 ? 0 : rest;
}

function stationsNeeded(circuits: readonly IdealCircuit[], scenario: Scenario): number | null {
  if (!areEqual(scenario.stations)) return null;
  const count = scenario.stations.length;
  const station = circuits.find(
    (circuit) => circuit.name === "each station" || circuit.name === scenario.stations[0]!.name,
  );
  const plasticator = circuits
    .filter((circuit) => circuit.name.startsWith(PLASTICATOR))
    .toSorted((a, b) => b.secondsPerShot - a.secondsPerShot)[0];
  if (!station || !plasticator) return null;
  // A screw that was turned down to the molds could serve more of them.
  const full = scenario.delivery.kind === "continuous" ? slowedBy(scenario) : 1;
  return (station.secondsPerShot * count * full) / plasticator.secondsPerShot;
}

function boundCycle(scenario: Scenario): IdealCycle {
  const circuits = boundCircuits(scenario);
  const [heaviest] = circuits;
  invariant(heaviest, "a cell has at least one circuit", {});
  return {
    method: "bound",
    secondsPerShot: heaviest.secondsPerShot,
    periodTicks: Math.round(heaviest.secondsPerShot * TICKS_PER_SECOND),
    shotsPerPeriod: 1,
    circuits,
    slackOf: () => null,
    schedule: [],
    stationsNeeded: null,
  };
}

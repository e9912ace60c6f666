// The ideal cycle: the period of the cell when every step takes its mean time, the circuit that sets it, and all slacks.
import { codePointOrder } from "#foundation/codePointOrder.ts";
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { invariant } from "#foundation/invariant.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { slowedBy } from "#cell/delivery/continuousExtrusion.ts";
import { hasRole, type CellResource } from "#cell/words/cellTable.ts";
import { PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { boundCircuits } from "./boundCircuits.ts";
import { passesScrew, type IdealCircuit } from "./idealCircuit.ts";
import { undisturbedOf, planOf } from "./planOf.ts";
import { takeawayCircuit, withOwnCircuits } from "./takeawayCircuits.ts";
import { CREW } from "./takeawayOwners.ts";
import { maxPlus, type Circuit } from "./maxPlus.ts";
import { areEqual, orderedShots, type GraphStep, type OrderedShots } from "./orderedShots.ts";
import { earliestStarts } from "./earliestStarts.ts";

/** A step in one period at mean times; seconds from the beginning of the first shot's valve shift. */
export interface IdealStep {
  readonly resource: string;
  readonly step: string;
  readonly role: StepRole;
  readonly station: string;
  readonly shot: number;
  readonly start: number;
  readonly end: number;
  readonly critical: boolean;
  /** All resources that it keeps busy; a drop keeps screw, valve and station busy. */
  readonly occupies: readonly string[];
}

export interface IdealCycle {
  /** `bound`: no repeating order of stations is found. No cell with these times is faster than the bound, and it may be slower. */
  readonly method: "fixed order" | "order found by running" | "bound";
  readonly secondsPerShot: number;
  /** The exact period: `periodTicks` for `shotsPerPeriod` shots. */
  readonly periodTicks: number;
  readonly shotsPerPeriod: number;
  /** The critical one first, then by slack. */
  readonly circuits: readonly IdealCircuit[];
  /** Least slack of the circuits through a step, in seconds; null where it is on none. */
  readonly slackOf: (resource: string, step: string) => number | null;
  /** Empty for a bound. */
  readonly schedule: readonly IdealStep[];
  /** Station circuit / screw circuit: the number of such stations that keeps the screw busy; null where stations differ. */
  readonly stationsNeeded: number | null;
}

/**
 * Times are the means of the sampled distributions, in whole microseconds. The graph comes from a run of the cycle table itself, so
 * that it agrees with the simulation. The period comes from the graph alone. There are no stops.
 */
export function idealCycle(disturbed: Scenario): IdealCycle {
  const scenario = undisturbedOf(disturbed);
  const order = orderedShots(scenario);
  if (!order) return boundCycle(scenario);
  const solved = maxPlus(order.graph);
  invariant(solved.kind === "periodic", "a cell that runs has a period", { kind: solved.kind });
  const periodTicks = solved.ratio.ticks;
  const shotsPerPeriod = solved.ratio.tokens * order.shotsPerToken;
  const isFolded = order.method === "fixed order" && order.shotsPerToken === 1 && scenario.stations.length > 1;
  const found = solved.circuits.map((circuit) => describe(circuit, order, scenario, isFolded));
  const circuits = heaviestByName(withOwnCircuits(found, order, solved.ratio, scenario));
  const slack = slackTable(order, solved.slackOf, isFolded ? planOf(scenario).resources : []);
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

/** The heaviest circuit comes first, equal ones in reading order. Of circuits with one name only the heaviest counts. */
function heaviestByName(circuits: readonly IdealCircuit[]): IdealCircuit[] {
  // A circuit that takes no time, such as that of a ram that is only displayed, keeps no resource busy.
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
  const { resources } = planOf(scenario);
  const steps = all
    .filter((step) => step.ticks > 0)
    .map(({ resource, step, role }) => ({ resource: isFolded ? folded(resource, resources) : resource, step, role }));
  const shots = circuit.tokens * order.shotsPerToken;
  return {
    ...nameOf(all, scenario, isFolded),
    steps,
    resources: [...new Set(steps.map(({ resource }) => resource))],
    seconds: circuit.weight / TICKS_PER_SECOND,
    shots,
    secondsPerShot: circuit.weight / shots / TICKS_PER_SECOND,
    slackSeconds: circuit.slack / TICKS_PER_SECOND,
    critical: circuit.critical,
  };
}

const EACH_STATION = "each station";
const EACH_MASK = "each mask";

/** Equal stations share one name, and so do their masks. */
function folded(resource: string, resources: readonly CellResource[]): string {
  const kind = resources.find(({ name }) => name === resource)?.kind;
  return kind === "station" ? EACH_STATION : kind === "mask" ? EACH_MASK : resource;
}

type Named = Pick<IdealCircuit, "name" | "owner">;

/** A circuit has the name of the resource that it keeps busy all the time. */
function nameOf(steps: readonly GraphStep[], scenario: Scenario, isFolded: boolean): Named {
  const has = (...roles: readonly StepRole[]): boolean => steps.some((step) => hasRole(step, ...roles));
  const cooled = steps.filter((step) => hasRole(step, "mold.cool")).map(({ process }) => process);
  const named = maskAlone(steps, isFolded) ?? takeawayCircuit(steps, scenario);
  if (named !== undefined) return named;
  if (has("screw.recharge", "screw.extrude")) {
    if (cooled.length > 0) return { name: "plasticator and station", owner: null };
    const { delivery } = scenario;
    if (delivery.kind === "accumulator-head" && has("mold.drop")) return chamberNamed(steps, isFolded);
    const isPlain = delivery.kind !== "reciprocating-screw" || delivery.rechargeStarts === "valve-neutral";
    const way = isPlain ? "" : `, through the ${has("mold.close") ? "closing mold" : "valve"}`;
    return { name: `${PLASTICATOR}${way}`, owner: { kind: "screw" } };
  }
  const [name] = cooled;
  if (name !== undefined && isFolded) return { name: EACH_STATION, owner: { kind: "stations" } };
  if (name !== undefined && cooled.length === 1) return { name, owner: { kind: "station", name } };
  if (has("mold.travelIn", "mold.travelOut") && cooled.length === 0)
    return { name: "die zone", owner: { kind: "die zone" } };
  if (has("valve.toNeutral") && cooled.length === 0) return { name: VALVE, owner: { kind: "valve" } };
  if (steps.every((step) => hasRole(step, "mold.remove"))) return { name: CREW, owner: { kind: "crew" } };
  return { name: [...new Set(steps.map(({ process }) => process))].toSorted().join(" and "), owner: null };
}

/** The mask whose steps are all of the circuit, from one transfer of parts to the next. */
function maskAlone(steps: readonly GraphStep[], isFolded: boolean): Named | undefined {
  const [first, ...others] = new Map(steps.filter(({ timed }) => timed).map((step) => [step.process, step])).values();
  if (first?.kind !== "mask" || others.length > 0) return undefined;
  const name = first.process;
  return isFolded ? { name: EACH_MASK, owner: { kind: "masks" } } : { name, owner: { kind: "mask", name } };
}

function chamberNamed(steps: readonly GraphStep[], isFolded: boolean): Named {
  const stations = new Set(steps.filter(({ kind }) => kind === "station").map(({ process }) => process));
  if (!isFolded && stations.size !== 1) return { name: "plasticator and chambers", owner: null };
  return { name: `chamber of ${isFolded ? "each head" : [...stations].join("")}`, owner: { kind: "chambers" } };
}

function slackTable(
  order: OrderedShots,
  slackOf: (node: number) => number | null,
  resources: readonly CellResource[],
): ReadonlyMap<string, number> {
  const table = new Map<string, number>();
  order.steps.forEach((step, node) => {
    const slack = slackOf(node);
    if (slack === null) return;
    for (const resource of unfolded(step.resource, resources)) {
      const key = `${resource}/${step.step}`;
      table.set(key, Math.min(table.get(key) ?? Infinity, slack / TICKS_PER_SECOND));
    }
  });
  return table;
}

/** All resources that one folded resource stands for; `resources` is empty where stations differ. */
function unfolded(resource: string, resources: readonly CellResource[]): readonly string[] {
  const found = resources.find(({ name }) => name === resource);
  if (found?.station === undefined) return [resource];
  return resources.filter(({ kind, station }) => kind === found.kind && station !== undefined).map(({ name }) => name);
}

/** Every step as early as the period allows, over one period, or over one turn of each station where these are equal. */
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
  const begins = order.steps.map(({ kind, position }) => position === 0 && kind === "station");
  const first = Math.min(...starts.filter((_, node) => begins[node]));
  const names = scenario.stations.map((station) => station.name);
  const turns = isFolded ? names : [undefined];
  const length = turns.length * period;
  const { resources } = planOf(scenario);
  return turns
    .flatMap((turn, k) =>
      order.steps.flatMap((step, node) => {
        // Parts age before the server that waits for them, and keep no resource busy.
        if (!step.timed || step.kind === "age clock") return [];
        const start = modulo(starts[node]! - first + k * period, length);
        const station = step.station === undefined ? "" : (turn ?? step.station);
        const inTurn = (name: string): string => (turn === undefined ? name : inPlaceOf(name, turn, resources));
        const row = {
          resource: inTurn(step.resource),
          step: step.step,
          role: step.role,
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
    .toSorted(
      (a, b) => a.start - b.start || a.shot - b.shot || codePointOrder(a.resource, b.resource) || a.end - b.end,
    );
}

/** The resource of another station that corresponds to the named one. */
function inPlaceOf(resource: string, other: string, resources: readonly CellResource[]): string {
  const found = resources.find(({ name }) => name === resource);
  if (found?.station === undefined) return resource;
  return resources.find(({ kind, station }) => kind === found.kind && station === other)!.name;
}

/** In [0, by); a rounding error below 0 counts as 0. */
function modulo(value: number, by: number): number {
  const rest = value - Math.floor(value / by) * by;
  return by - rest < 1e-3 ? 0 : rest;
}

function stationsNeeded(circuits: readonly IdealCircuit[], scenario: Scenario): number | null {
  if (!areEqual(scenario.stations)) return null;
  const count = scenario.stations.length;
  const [first] = scenario.stations;
  const station = circuits.find(
    ({ owner }) => owner?.kind === "stations" || (owner?.kind === "station" && owner.name === first!.name),
  );
  const plasticator = circuits.filter(passesScrew).toSorted((a, b) => b.secondsPerShot - a.secondsPerShot)[0];
  if (!station || !plasticator) return null;
  // A screw that is turned down to the molds could serve more of them.
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

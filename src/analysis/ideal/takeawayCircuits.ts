// Circuits of the takeaway and the crew, and circuits of single resources that other resources set the pace for.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { hasRole } from "#cell/words/cellTable.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { CircuitOwner, CircuitStep, IdealCircuit } from "./idealCircuit.ts";
import type { GraphStep, OrderedShots } from "./orderedShots.ts";
import { CREW, isByOperator } from "./takeawayOwners.ts";
import type { CycleRatio } from "./timedGraph.ts";

/** An operator serves several resources in turn, and each of them waits in between. */
const CREW_AND_OTHERS = "crew, with the resources that wait for it";

const crew: CircuitOwner = { kind: "crew" };

/** A circuit that keeps the crew or a server busy, or passes them; undefined for all others. */
export function takeawayCircuit(
  steps: readonly GraphStep[],
  scenario: Scenario,
): Pick<IdealCircuit, "name" | "owner"> | undefined {
  if (!scenario.takeaway && !scenario.walk) return undefined;
  const timed = steps.filter((step) => step.ticks > 0);
  const servers = new Set(timed.filter(({ kind }) => kind === "server").map(({ process }) => process));
  const byOperator = timed.filter(isByOperator);
  if (byOperator.length > 0 && byOperator.length === timed.length && (scenario.walk || servers.size > 0))
    return { name: CREW, owner: crew };
  if (new Set(byOperator.map(({ process }) => process)).size > 1) return { name: CREW_AND_OTHERS, owner: crew };
  if (servers.size === 0) return undefined;
  const others = new Set(timed.filter(({ kind }) => kind !== "server").map(({ resource }) => resource));
  const inOrder = takeawayGroups(scenario).filter(({ name }) => servers.has(name));
  const name = [...[...others].toSorted(), ...inOrder.map((group) => group.name)].join(" and ");
  return { name, owner: others.size === 0 && servers.size === 1 ? { kind: "server", name } : null };
}

function eachOnce(steps: readonly GraphStep[]): readonly CircuitStep[] {
  const once = new Map(steps.map(({ resource, step, role }) => [`${resource}/${step}`, { resource, step, role }]));
  return [...once.values()];
}

type OwnCircuit = (
  name: string,
  owner: CircuitOwner,
  own: readonly GraphStep[],
  places: number,
) => readonly IdealCircuit[];

/**
 * Only the heaviest circuit of each edge is known, so a resource that does not set the pace may have none of its own. The work of a
 * server on the parts of a shot, in all its places at once, is such a circuit. So is the work of a station, the screw or the crew.
 */
function ownCircuits(
  { steps, shotsPerToken }: OrderedShots,
  ratio: CycleRatio,
  scenario: Scenario,
): readonly IdealCircuit[] {
  const circuit: OwnCircuit = (name, owner, own, places) => {
    const ticks = own.reduce((sum, step) => sum + step.ticks, 0);
    if (ticks === 0) return [];
    // Ticks by which the places together are idle in the time of these shots.
    const idle = places * ratio.ticks - ticks * ratio.tokens;
    const shots = places * shotsPerToken;
    return [
      {
        name,
        owner,
        steps: eachOnce(own),
        resources: [...new Set(own.map((step) => step.resource))],
        seconds: ticks / TICKS_PER_SECOND,
        shots,
        secondsPerShot: ticks / shots / TICKS_PER_SECOND,
        slackSeconds: idle / ratio.tokens / TICKS_PER_SECOND,
        critical: idle === 0,
      },
    ];
  };
  const byOperator = steps.filter(isByOperator);
  const stations = scenario.stations.flatMap(({ name }) =>
    circuit(
      name,
      { kind: "station", name },
      steps.filter((step) => step.process === name),
      1,
    ),
  );
  const servers = takeawayGroups(scenario).flatMap(({ name, places }) =>
    circuit(
      name,
      { kind: "server", name },
      steps.filter((step) => step.role === "server.work" && step.process === name),
      places.length,
    ),
  );
  const own = circuit(CREW, crew, byOperator, scenario.operators);
  return [...stations, ...screw(steps, scenario, circuit), ...servers, ...own];
}

/** A reciprocating screw delivers through the valve, and recharges only while the valve is in neutral. */
function screw(steps: readonly GraphStep[], { delivery }: Scenario, circuit: OwnCircuit): readonly IdealCircuit[] {
  if (delivery.kind !== "reciprocating-screw" || delivery.rechargeStarts === "mold-closed") return [];
  const turn = steps.filter((step) => hasRole(step, "screw.recharge", "valve.toPort", "mold.drop", "valve.toNeutral"));
  return circuit(PLASTICATOR, { kind: "screw" }, turn, 1);
}

/** Adds the circuits of single resources. A circuit of several resources that is lighter than the heaviest of these is left out. */
export function withOwnCircuits(
  found: readonly IdealCircuit[],
  order: OrderedShots,
  ratio: CycleRatio,
  scenario: Scenario,
): readonly IdealCircuit[] {
  if (!scenario.takeaway && !scenario.walk) return found;
  const own = ownCircuits(order, ratio, scenario);
  const names = new Set(own.map(({ name }) => name));
  const heaviest = Math.max(...own.map(({ secondsPerShot }) => secondsPerShot));
  const known = found.filter((each) => names.has(each.name) || each.secondsPerShot >= heaviest);
  const all = [...known, ...own].toSorted((one, other) => other.secondsPerShot - one.secondsPerShot);
  return all
    .filter((circuit, i) => all.findIndex(({ name }) => name === circuit.name) === i)
    .toSorted((one, other) => one.slackSeconds - other.slackSeconds);
}

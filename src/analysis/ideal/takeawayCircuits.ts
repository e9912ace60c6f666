// Circuits that lead through the takeaway or the crew: their names, and what each server and the crew keep busy by themselves.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { serverOf, takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCircuit } from "./idealCircuit.ts";
import type { GraphStep, OrderedShots } from "./orderedShots.ts";
import { CREW, isByHand } from "./takeawayOwners.ts";
import type { CycleRatio } from "./timedGraph.ts";

/** An operator who goes from one to the other, and is waited for in between. */
const CREW_AND_OTHERS = "crew, with those who wait for it";

/** The crew, a server, or all whom a circuit leads through that has to do with either; undefined for those that have not. */
export function circuitBeyondTheMold(steps: readonly GraphStep[], scenario: Scenario): string | undefined {
  if (!scenario.takeaway && !scenario.walk) return undefined;
  const timed = steps.filter((step) => step.ticks > 0);
  const servers = [...new Set(timed.flatMap(({ process }) => serverOf(process, scenario) ?? []))];
  const byHand = timed.filter((step) => isByHand(step, scenario));
  if (byHand.length > 0 && byHand.length === timed.length && (scenario.walk || servers.length > 0)) return CREW;
  if (new Set(byHand.map(({ process }) => process)).size > 1) return CREW_AND_OTHERS;
  if (servers.length === 0) return undefined;
  const others = [...new Set(timed.map(({ resource }) => resource))].filter(
    (name) => serverOf(name, scenario) === undefined,
  );
  const inOrder = takeawayGroups(scenario).filter(({ name }) => servers.includes(name));
  return [...others.toSorted(), ...inOrder.map(({ name }) => name)].join(" and ");
}

type OwnCircuit = (name: string, own: readonly GraphStep[], places: number) => readonly IdealCircuit[];

/**
 * Of each edge only the heaviest circuit is known, so that whoever is paced by others may be on none of his own. What a server needs
 * for the parts of a shot, all of its places at work all the time, is one all the same; so is what a station, the screw, the crew needs.
 */
function ownCircuits(
  { steps, shotsPerToken }: OrderedShots,
  ratio: CycleRatio,
  scenario: Scenario,
): readonly IdealCircuit[] {
  const circuit: OwnCircuit = (name, own, places) => {
    const ticks = own.reduce((sum, step) => sum + step.ticks, 0);
    if (ticks === 0) return [];
    // Ticks by which the places together are idle in the time of these shots.
    const spare = places * ratio.ticks - ticks * ratio.tokens;
    const shots = places * shotsPerToken;
    return [
      {
        name,
        steps: [...new Set(own.map((step) => `${step.resource}: ${step.step}`))],
        resources: [...new Set(own.map((step) => step.resource))],
        seconds: ticks / TICKS_PER_SECOND,
        shots,
        secondsPerShot: ticks / shots / TICKS_PER_SECOND,
        slackSeconds: spare / ratio.tokens / TICKS_PER_SECOND,
        critical: spare === 0,
      },
    ];
  };
  const byHand = steps.filter((step) => isByHand(step, scenario));
  const stations = scenario.stations.flatMap(({ name }) =>
    circuit(
      name,
      steps.filter((step) => step.process === name),
      1,
    ),
  );
  const servers = takeawayGroups(scenario).flatMap(({ name, places, server }) =>
    circuit(
      name,
      steps.filter((step) => step.step === server.name && serverOf(step.process, scenario) === name),
      places.length,
    ),
  );
  return [...stations, ...screw(steps, scenario, circuit), ...servers, ...circuit(CREW, byHand, scenario.operators)];
}

/** A reciprocating screw delivers through the valve, and recharges only while that is in neutral. */
function screw(steps: readonly GraphStep[], { delivery }: Scenario, circuit: OwnCircuit): readonly IdealCircuit[] {
  if (delivery.kind !== "reciprocating-screw" || delivery.rechargeStarts === "mold-closed") return [];
  const turn = ["recharge", "shift to port", "drop", "shift to neutral"];
  return circuit(
    PLASTICATOR,
    steps.filter(({ step }) => turn.includes(step)),
    1,
  );
}

/** What only some resource needs by itself is no ring of several; lighter than the heaviest of those, such a ring tells nothing. */
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

// What binds the run most, equal stations taken together, and how far the next resource is from binding it.
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { BEYOND } from "#cell/delivery/commonAccumulator.ts";
import { maskedStation, PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import { serverOf } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { slackPerShot } from "#analysis/ideal/idealCircuit.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { areEqual } from "#analysis/ideal/orderedShots.ts";
import { sharesCrew } from "./elasticity.ts";
import { CREW, isByHand } from "#analysis/ideal/takeawayOwners.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export interface LeadingStep {
  readonly step: string;
  /** Several where equal stations share the step. */
  readonly resources: readonly string[];
  /** Share of the critical path. */
  readonly share: Interval;
}

export interface RunnerUp {
  /** `plasticator`, `crew`, `stations` (all of them), the name of a station or a server, or what an accumulator or a die has besides. */
  readonly name: string;
  /** Seconds a shot by which its circuit may grow before it sets the ideal cycle. */
  readonly slackPerShot: number;
}

const STATIONS = "stations";
const MASKS = "masks";
const CHAMBERS = "chambers";
const DIE_ZONE = "die zone";

/** The largest share comes first. */
export function leadingSteps(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly LeadingStep[] {
  const stations = scenario.stations.map(({ name }) => name);
  const isShared = areEqual(scenario.stations);
  const groups = new Map<string, { step: string; resources: string[]; places: number[] }>();
  (answers[0]?.criticalShares ?? []).forEach(({ resource, step: told }, place) => {
    // A recharge that a common accumulator tells in two parts is one.
    const step = told === BEYOND ? "recharge" : told;
    const isMask = maskedStation(resource, scenario.stations) !== undefined;
    const shared = stations.includes(resource) ? STATIONS : isMask ? MASKS : resource;
    const owner = isShared ? shared : resource;
    const key = JSON.stringify([owner, step]);
    const group = groups.get(key) ?? { step, resources: [], places: [] };
    group.resources.push(resource);
    group.places.push(place);
    groups.set(key, group);
  });
  return [...groups.values()]
    .map(({ step, resources, places }) => {
      const sum = ({ criticalShares }: ReplicationAnswer): number =>
        places.reduce((total, place) => total + (criticalShares[place]?.share ?? 0), 0);
      const named = inReadingOrder(resources, (resource) => resource);
      return { step, resources: named, share: meanInterval(answers.map(sum)) };
    })
    .toSorted((one, other) => other.share.mean - one.share.mean);
}

/** Of the circuits that keep another resource busy than the leading step's, the one with the least slack. */
export function runnerUp(scenario: Scenario, leading: LeadingStep | undefined, ideal: IdealCycle): RunnerUp | null {
  if (!leading) return null;
  const first = ideal.circuits[0]?.name ?? "";
  const leader = ownerOfStep(scenario, leading, ownerOfCircuit(scenario, first, ideal), ideal);
  const others = ideal.circuits.flatMap((circuit) => {
    const owner = ownerOfCircuit(scenario, circuit.name, ideal);
    return owner === null || owner === leader ? [] : [{ name: owner, slackPerShot: slackPerShot(circuit, ideal) }];
  });
  return others.toSorted((one, other) => one.slackPerShot - other.slackPerShot)[0] ?? null;
}

/** With a reciprocating screw the valve never binds alone; a removal that leads, and for which stations wait, is the crew's. */
function ownerOfStep(
  scenario: Scenario,
  leading: LeadingStep,
  critical: string | null,
  ideal: IdealCycle,
): string | null {
  const [resource = ""] = leading.resources;
  // A drop may bind for the valve's sake, a recharge for its chamber's.
  const isOnCritical = ideal.circuits[0]?.steps.some((step) => step.endsWith(`: ${leading.step}`)) === true;
  if (isOnCritical && isOfItsOwn(critical)) return critical;
  if (isByHand({ process: resource, step: leading.step }, scenario) && sharesCrew(scenario)) return CREW;
  const server = serverOf(resource, scenario);
  if (server !== undefined) return server;
  if (resource === PLASTICATOR) return PLASTICATOR;
  if (resource === VALVE) return critical;
  if (maskedStation(resource, scenario.stations) !== undefined) return ownerOfMask(scenario, resource);
  return ownerOfStation(scenario, resource, ideal);
}

function ownerOfMask({ stations }: Scenario, name: string): string {
  return areEqual(stations) ? MASKS : name;
}

function isOfItsOwn(owner: string | null): boolean {
  return owner === CHAMBERS || owner === DIE_ZONE || owner === VALVE;
}

function ownerOfStation(scenario: Scenario, name: string, ideal: IdealCycle): string {
  return areEqual(scenario.stations) || ideal.method === "bound" ? STATIONS : name;
}

/** Null for a circuit that runs through several resources and so belongs to none. */
function ownerOfCircuit(scenario: Scenario, name: string, ideal: IdealCycle): string | null {
  if (scenario.stations.some((station) => station.name === name)) return ownerOfStation(scenario, name, ideal);
  if (name === CREW || name.startsWith(`${CREW},`)) return scenario.operators > 0 ? CREW : null;
  if (name.startsWith("chamber of")) return CHAMBERS;
  if (name === DIE_ZONE) return DIE_ZONE;
  if (name === VALVE && scenario.delivery.kind === "accumulator-head") return VALVE;
  if (name === "each station" || name.startsWith("all stations")) return STATIONS;
  if (name === "each mask") return MASKS;
  if (maskedStation(name, scenario.stations) !== undefined) return ownerOfMask(scenario, name);
  const server = serverOf(name, scenario);
  if (server !== undefined) return server;
  const isScrew = name === PLASTICATOR || name.startsWith(`${PLASTICATOR},`);
  return isScrew ? PLASTICATOR : null;
}

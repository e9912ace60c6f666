// What binds the run most, equal stations taken together, and how far the next resource is from binding it.
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import { stepNames } from "#cell/words/stepNames.ts";
import { serverOf } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { areEqual } from "#analysis/ideal/orderedShots.ts";
import { sharesCrew } from "./elasticity.ts";
import { slackPerShot, type IdealCircuit } from "#analysis/ideal/idealCircuit.ts";
import { resourceKind } from "#analysis/ideal/planOf.ts";
import { CREW, isByOperator } from "#analysis/ideal/takeawayOwners.ts";
import type { CriticalShare, ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

type ToldStep = Pick<CriticalShare, "step" | "role" | "task">;

export interface LeadingStep extends ToldStep {
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

/** A recharge of a common accumulator has two parts, which count as one. */
export function asWhole<Step extends ToldStep>(step: Step): Step {
  if (step.role !== "screw.fillBeyond") return step;
  return { ...step, role: "screw.recharge", step: stepNames["screw.recharge"] };
}

/** The largest share comes first. */
export function leadingSteps(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly LeadingStep[] {
  const isShared = areEqual(scenario.stations);
  const groups = new Map<string, ToldStep & { resources: string[]; places: number[] }>();
  (answers[0]?.criticalShares ?? []).forEach((share, place) => {
    const { resource, share: _share, tied: _tied, ...told } = asWhole(share);
    const kind = isShared ? resourceKind(resource, scenario) : undefined;
    const owner = kind === "station" ? STATIONS : kind === "mask" ? MASKS : resource;
    const key = JSON.stringify([owner, told.step]);
    const group = groups.get(key) ?? { ...told, resources: [], places: [] };
    group.resources.push(resource);
    group.places.push(place);
    groups.set(key, group);
  });
  return [...groups.values()]
    .map(({ resources, places, ...told }) => {
      const sum = ({ criticalShares }: ReplicationAnswer): number =>
        places.reduce((total, place) => total + (criticalShares[place]?.share ?? 0), 0);
      const named = inReadingOrder(resources, (resource) => resource);
      return { ...told, resources: named, share: meanInterval(answers.map(sum)) };
    })
    .toSorted((one, other) => other.share.mean - one.share.mean);
}

/** Of the circuits that keep another resource busy than the leading step's, the one with the least slack. */
export function runnerUp(scenario: Scenario, leading: LeadingStep | undefined, ideal: IdealCycle): RunnerUp | null {
  if (!leading) return null;
  const [first] = ideal.circuits;
  const leader = ownerOfStep(scenario, leading, first ? ownerOfCircuit(scenario, first, ideal) : null, ideal);
  const others = ideal.circuits.flatMap((circuit) => {
    const name = ownerOfCircuit(scenario, circuit, ideal);
    return name === null || name === leader ? [] : [{ name, slackPerShot: slackPerShot(circuit, ideal) }];
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
  const isOnCritical = ideal.circuits[0]?.steps.some(({ step }) => step === leading.step) === true;
  if (isOnCritical && isOfItsOwn(critical)) return critical;
  if (isByOperator(leading) && sharesCrew(scenario)) return CREW;
  const server = serverOf(resource, scenario);
  if (server !== undefined) return server;
  if (resource === PLASTICATOR) return PLASTICATOR;
  if (resource === VALVE) return critical;
  return resourceKind(resource, scenario) === "mask"
    ? ownerOfMask(scenario, resource)
    : ownerOfStation(scenario, resource, ideal);
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

/** Null for a circuit that leads through several resources, and for one of what never binds alone. */
function ownerOfCircuit(scenario: Scenario, { owner }: IdealCircuit, ideal: IdealCycle): string | null {
  if (owner === null) return null;
  if (owner.kind === "station") return ownerOfStation(scenario, owner.name, ideal);
  if (owner.kind === "mask") return ownerOfMask(scenario, owner.name);
  if (owner.kind === "server") return owner.name;
  if (owner.kind === "crew") return scenario.operators > 0 ? CREW : null;
  if (owner.kind === "valve") return scenario.delivery.kind === "accumulator-head" ? VALVE : null;
  return owners[owner.kind];
}

const owners = {
  screw: PLASTICATOR,
  chambers: CHAMBERS,
  "die zone": DIE_ZONE,
  stations: STATIONS,
  masks: MASKS,
} as const;

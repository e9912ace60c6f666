// The slack of each resource before it sets the pace of the ideal cycle, and the resource with the least slack.
import { PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { hasSlack, slackPerShot, type IdealCircuit } from "#analysis/ideal/idealCircuit.ts";
import { areEqual } from "#analysis/ideal/orderedShots.ts";
import { CREW } from "#analysis/ideal/takeawayOwners.ts";
import { MASKS, STATIONS } from "./resourceGroups.ts";

export interface RunnerUp {
  /** `plasticator`, `crew`, `stations` (all of them), the name of a station or a server, or what an accumulator or a die has besides. */
  readonly name: string;
  /** Seconds a shot by which its circuit may grow before it sets the ideal cycle. */
  readonly slackPerShot: number;
}

/** What sets the pace of the run. */
interface Pace {
  readonly group: string;
  readonly steps: readonly { readonly step: string }[];
}

const CHAMBERS = "chambers";
const DIE_ZONE = "die zone";

/** The circuit with the least slack among those of resources that do not set the pace. */
export function runnerUp(scenario: Scenario, pace: Pace | undefined, ideal: IdealCycle): RunnerUp | null {
  const leader = leaderOf(scenario, pace, ideal);
  if (leader === null) return null;
  const others = circuitsOf(scenario, ideal).filter(({ name }) => name !== leader);
  return others.toSorted((one, other) => one.slackPerShot - other.slackPerShot)[0] ?? null;
}

/** Seconds a shot; null where no circuit keeps the group busy all the way round, and where no order is fixed. */
export function slackOfGroup(group: string, scenario: Scenario, ideal: IdealCycle): number | null {
  if (!hasSlack(ideal)) return null;
  const name = nameOf(group, scenario, ideal);
  const own = circuitsOf(scenario, ideal).filter((circuit) => circuit.name === name);
  return own.length === 0 ? null : own.reduce((least, circuit) => Math.min(least, circuit.slackPerShot), Infinity);
}

/** Chambers and the die zone are no resources of the run: what sets its pace there is named by the critical circuit. */
function leaderOf(scenario: Scenario, pace: Pace | undefined, ideal: IdealCycle): string | null {
  const [step] = pace?.steps ?? [];
  if (!pace || !step) return null;
  const [first] = ideal.circuits;
  const critical = first ? ownerOfCircuit(scenario, first, ideal) : null;
  const isOnCritical = first?.steps.some((each) => each.step === step.step) === true;
  if (isOnCritical && (critical === CHAMBERS || critical === DIE_ZONE || critical === VALVE)) return critical;
  return nameOf(pace.group, scenario, ideal);
}

function circuitsOf(scenario: Scenario, ideal: IdealCycle): readonly RunnerUp[] {
  return ideal.circuits.flatMap((circuit) => {
    const name = ownerOfCircuit(scenario, circuit, ideal);
    return name === null ? [] : [{ name, slackPerShot: slackPerShot(circuit, ideal) }];
  });
}

/** A bound does not distinguish different stations. */
function nameOf(group: string, { stations }: Scenario, ideal: IdealCycle): string {
  return ideal.method === "bound" && stations.some(({ name }) => name === group) ? STATIONS : group;
}

/** Null for a circuit that leads through several resources, and for one of what never sets the pace alone. */
function ownerOfCircuit(scenario: Scenario, { owner }: IdealCircuit, ideal: IdealCycle): string | null {
  if (owner === null) return null;
  if (owner.kind === "station" || owner.kind === "mask")
    return nameOf(areEqual(scenario.stations) ? `${owner.kind}s` : owner.name, scenario, ideal);
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

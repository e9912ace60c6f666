// Adds machine stops to a cycle table: the effect of each stop on every step, the stops themselves, and the clearing of lost shots.
import type { GiveSpec, StateSpec, StopEffect, StopRule } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec, StopSpec } from "#scenario/scenario.ts";
import { byOperator, isDoneByOperator } from "#cell/table/crew.ts";
import {
  hasRole,
  lastWith,
  type CellProcess,
  type CellResource,
  type CellStep,
  type CellTable,
} from "#cell/words/cellTable.ts";
import { lostDropsOf, lostShotsOf, PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named, stepNames, type StepRole } from "#cell/words/stepNames.ts";
import { mayScrewRest, restProcesses } from "#cell/delivery/screwRest.ts";
import { cyclePlaces, cyclesPlace, stopPlaces, stopProcesses } from "./stopProcesses.ts";
import { shotPlaceAt, stopMatrix, type ShotPlace, type StepFate } from "./stopMatrix.ts";
import { shutPlace } from "./withQuality.ts";
import { fixed, waiting, working } from "#cell/words/tableWords.ts";

/** Returns the same table where no stop is defined. */
export function withStops(table: CellTable, scenario: Scenario): CellTable {
  const { stops = [], stations } = scenario;
  if (stops.length === 0) return table;
  const resting = mayScrewRest(scenario) ? [PLASTICATOR] : [];
  const stoppable = new Set([...stops.map((stop) => stop.resource), ...resting]);
  return {
    resources: table.resources.map((resource) => stoppableResource(resource, stoppable, scenario)),
    // A stop that comes by cycles begins before a process of the same instant is served.
    places: [...cyclePlaces(scenario), ...table.places, ...stopPlaces(scenario)],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => process.kind === "station" && name === process.station);
        return countingCycles(station ? stoppableStation(process, station, scenario) : heldInPlace(process), stops);
      }),
      ...stops.flatMap((stop) => stopProcesses(scenario, stop)),
      ...restProcesses(scenario),
    ],
  };
}

function stoppableResource(resource: CellResource, stoppable: ReadonlySet<string>, scenario: Scenario): CellResource {
  const { stops = [], stations } = scenario;
  const more = (...added: readonly StateSpec[]): CellResource => ({
    ...resource,
    states: [...resource.states, ...added.filter(({ name }) => resource.states.every((each) => each.name !== name))],
  });
  if (resource.kind === "operator") {
    const clears = stations.some(({ clear }) => clear?.by === "operator");
    const repairs = stops.some(({ by }) => by === "operator");
    return more(...(clears ? [working(stateNames.clearing)] : []), ...(repairs ? [working(stateNames.repairing)] : []));
  }
  const clear = stations.find(({ name }) => name === resource.name)?.clear;
  const awaitsOperator = clear?.by === "operator" ? [waiting(stateNames.noOperatorFree)] : [];
  const described = clear ? more(working(stateNames.beingCleared), ...awaitsOperator) : resource;
  if (!stoppable.has(resource.name)) return described;
  const { stopped } = stateNames;
  return { ...described, states: [...described.states, { name: stopped, kind: "stopped" }], whenStopped: stopped };
}

/** A cycle counts when the resource has come to rest, so that a stop by cycles interrupts no step and loses no shot. */
function countingCycles(process: CellProcess, stops: readonly StopSpec[]): CellProcess {
  const counted = stops.filter(({ comes }) => comes.by === "cycles");
  const endsHere = (step: CellStep, { resource }: StopSpec): boolean => {
    if (resource === PLASTICATOR) return hasRole(step, "screw.recharge");
    if (resource === VALVE) return hasRole(step, "valve.toNeutral", "valve.toHead");
    return resource === process.name && isLastOfTurn(step, process);
  };
  const begins = process.kind === "station" && counted.some(({ resource }) => resource === process.name);
  const steps = process.steps.map((step, i): CellStep => {
    const gives = counted
      .filter((stop) => endsHere(step, stop))
      .map((stop): GiveSpec => ({ place: cyclesPlace(stop) }));
    const inLine = begins && i === 0 ? ({ standsInLine: true } as const) : {};
    return gives.length === 0
      ? { ...step, ...inLine }
      : { ...step, ...inLine, gives: [...(step.gives ?? []), ...gives] };
  });
  return { ...process, steps };
}

/** The step after which a station or a server begins anew: after a removal, a clearing, or the transfer of a part. */
function isLastOfTurn(step: CellStep, { steps }: CellProcess): boolean {
  return step === steps.at(-1) || step.next === steps[0]!.name;
}

/** Steps of screw and valve never lose a shot: a stop holds them or lets them run on. */
function heldInPlace(process: CellProcess): CellProcess {
  const stopped = effects("not yet delivered", "hold");
  // A stop never holds the age of a part.
  const isHeld = (step: CellStep): boolean =>
    step.time !== undefined && step.stoppedBy === undefined && !isDoneByOperator(step);
  return { ...process, steps: process.steps.map((step) => (isHeld(step) ? { ...step, stopped } : step)) };
}

function stoppableStation(process: CellProcess, station: StationSpec, scenario: Scenario): CellProcess {
  const { maxHang } = scenario;
  const cycle = process.steps;
  const steps = cycle.map((step, at): CellStep => {
    const place = shotPlaceAt(at, cycle);
    if (place === "physics") return { ...step, stopped: "physics" };
    if (isDoneByOperator(step)) return step;
    if (station.clear === undefined) return { ...step, stopped: effects(place, "run on") };
    const leaveFor = stepNames[roleOfLoss(at, place, cycle)];
    const patience = { time: fixed({ kind: "fixed", value: maxHang ?? 0 }), leaveFor };
    const hangs = place === "hanging" && maxHang !== undefined ? { patience } : {};
    return { ...step, stopped: effects(place, { leaveFor }), ...hangs };
  });
  if (station.clear === undefined) return { ...process, steps };
  const first = cycle[0]!.name;
  const last = { ...steps.at(-1)!, next: steps.at(-1)!.next ?? first };
  const afterwards = [...losses(process, station), ...clearing(scenario, station, station.clear, first)];
  return { ...process, steps: [...steps.slice(0, -1), last, ...afterwards] };
}

function effects(place: ShotPlace, lost: StopEffect): Readonly<Record<StopRule, StopEffect>> {
  const { finish, hold, scrap } = stopMatrix[place];
  const effect = (fate: StepFate): StopEffect => (fate === "lost" ? lost : fate);
  return { finish: effect(finish), hold: effect(hold), scrap: effect(scrap) };
}

type LossRole = Extract<StepRole, `mold.lose${string}`>;

/** The step that follows when a shot is lost. */
function roleOfLoss(at: number, place: ShotPlace, cycle: readonly CellStep[]): LossRole {
  // In continuous extrusion a parison becomes a shot with the cut.
  const isUncut = place === "hanging" && lastWith(cycle, "mold.cut") !== -1;
  if (place === "being delivered" || isUncut) return "mold.loseDrop";
  if (at < lastWith(cycle, "mold.leaveDie")) return "mold.loseDieZone";
  if (place === "hanging" || at <= lastWith(cycle, "mold.travelOut")) return "mold.loseParison";
  return at <= lastWith(cycle, "mold.open") ? "mold.losePart" : "mold.loseShot";
}

/** The tokens of a step that was broken off are still given, because other processes wait for them. */
function losses({ steps }: CellProcess, { name }: StationSpec): readonly CellStep[] {
  const givesOf = (role: StepRole): readonly GiveSpec[] => steps.find((step) => step.role === role)?.gives ?? [];
  const clock = steps.find((step) => hasRole(step, "judge.moldClock"));
  const leaves = lastWith(steps, "mold.leaveDie") !== -1;
  const givesOfClose = givesOf("mold.close").filter(({ place }) => place !== shutPlace(name));
  return [
    {
      ...named("mold.loseDrop"),
      gives: givesOf("mold.drop"),
      counts: { [lostDropsOf(name)]: 1 },
      next: stepNames[leaves ? "mold.loseDieZone" : "mold.loseParison"],
    },
    ...(leaves ? [{ ...named("mold.loseDieZone"), gives: givesOf("mold.leaveDie") }] : []),
    {
      ...named("mold.loseParison"),
      gives: [...givesOfClose, ...givesOf("mold.travelOut")],
      next: stepNames["mold.loseShot"],
    },
    { ...named("mold.losePart"), gives: givesOf("mold.open") },
    ...(clock ? [forgetClock(clock)] : []),
    { ...named("mold.loseShot"), counts: { [lostShotsOf(name)]: 1 } },
  ];
}

/** Takes the overdue token of a lost shot; otherwise the next shot would get it. */
function forgetClock({ needs, patience }: CellStep): CellStep {
  return {
    ...named("judge.forgetMoldClock"),
    ...(needs ? { needs } : {}),
    ...(patience ? { patience: { ...patience, leaveFor: stepNames["mold.loseShot"] } } : {}),
    stoppedBy: [],
  };
}

function clearing(
  scenario: Scenario,
  station: StationSpec,
  { time, by }: NonNullable<StationSpec["clear"]>,
  first: string,
): readonly CellStep[] {
  const shows = [{ resource: station.name, state: stateNames.beingCleared }];
  const clear: CellStep = { ...named("mold.clear"), shows, time: fixed(time) };
  if (by === "machine") return [{ ...clear, next: first }];
  const call = { task: "clearing", step: clear, meanwhile: stateNames.noOperatorFree } as const;
  const [taken, release] = byOperator(scenario, call);
  return [taken, { ...release, next: first }];
}

// Adds takeaway to a cycle table: servers in series, each with places and a buffer; a full server blocks back to the mold.
import type { PlaceSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { agingPlaces, agingProcesses, agingStarts, ripeNeeds, takenGives } from "./age.ts";
import { byOperator } from "#cell/table/crew.ts";
import {
  hasRole,
  lastWith,
  type CellProcess,
  type CellResource,
  type CellStep,
  type CellTable,
} from "#cell/words/cellTable.ts";
import { goodCounter, refusedOf } from "#cell/words/cycleNames.ts";
import { partsBefore, roomBefore } from "#cell/words/placeNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named, namedAfter, stepNames, subjectNames } from "#cell/words/stepNames.ts";
import { fixed, rank, waiting, working } from "#cell/words/tableWords.ts";
import { nextGroup, takeawayGroups, type ServerGroup } from "#scenario/resolving/takeawayGroups.ts";

/** Returns the same table where there is no takeaway. */
export function withTakeaway(table: CellTable, scenario: Scenario): CellTable {
  const { stations } = scenario;
  const groups = takeawayGroups(scenario);
  if (groups.length === 0) return table;
  return {
    resources: [...table.resources.map(awaiting), ...groups.flatMap(serverResources)],
    // Parts move on before operators are served, so that an operator chooses among all calls of the instant.
    places: [...groups.flatMap(serverPlaces), ...table.places],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => handsOver(process) && name === process.station);
        return station ? handingOver(process, station, groups) : process;
      }),
      ...groups.flatMap((group) => group.places.map((place) => serverProcess(place, group, scenario))),
      ...groups.flatMap((group) => agingProcesses(group, groups)),
    ],
  };
}

const handsOver = ({ kind }: Pick<CellProcess | CellResource, "kind">): boolean =>
  kind === "station" || kind === "mask";

/** Stations and masks have a separate state while they wait for room. */
function awaiting(resource: CellResource): CellResource {
  const hasState = resource.states.some(({ name }) => name === stateNames.awaitingTakeaway);
  if (!handsOver(resource) || hasState) return resource;
  return { ...resource, states: [...resource.states, waiting(stateNames.awaitingTakeaway)] };
}

function serverResources({ name: group, places, server }: ServerGroup): readonly CellResource[] {
  const states = [waiting(stateNames.starved), working(stateNames.working), waiting(stateNames.blocked)];
  const more = server.by === "operator" ? [waiting(stateNames.noOperatorFree)] : [];
  return places.map((name) => ({ name, kind: "server", group, states: [...states, ...more] }));
}

/** A part keeps its room or its place until it has moved on. */
function serverPlaces(group: ServerGroup): readonly PlaceSpec[] {
  const { name, server } = group;
  // A part that is too old leaves before a server takes it.
  const rule = server.maxAge === undefined ? {} : ({ rule: "priority" } as const);
  return [
    { name: roomBefore(name), tokens: server.buffer + server.places, rank: rank.station },
    { name: partsBefore(name), tokens: 0, rank: rank.station, ...rule },
    ...agingPlaces(group),
  ];
}

function serverProcess(place: string, group: ServerGroup, scenario: Scenario): CellProcess {
  const priority = group.server.maxAge === undefined ? {} : { priority: 1 };
  return {
    name: place,
    kind: "server",
    group: group.name,
    resource: place,
    ...priority,
    steps: [...served(place, group, scenario), ...checked(group), ...passed(place, group, scenario)],
  };
}

/** All places of a server share one stream, so that the n-th part gets the n-th random number. */
function served(place: string, group: ServerGroup, scenario: Scenario): readonly CellStep[] {
  const { server, name } = group;
  const needs = [{ place: partsBefore(name), meanwhile: stateNames.starved }, ...ripeNeeds(group)];
  const gives = takenGives(group);
  const step: CellStep = {
    role: "server.work",
    name: server.name,
    shows: [{ resource: place, state: stateNames.working }],
    time: { ...fixed(server.time), resource: name },
  };
  const take: CellStep = { ...named("server.take"), needs, ...(gives.length > 0 ? { gives } : {}) };
  if (server.by === "machine") return gives.length === 0 ? [{ ...step, needs }] : [take, step];
  return [take, ...byOperator(scenario, { task: "packing", step, meanwhile: stateNames.noOperatorFree })];
}

function checked({ name, server }: ServerGroup): readonly CellStep[] {
  if (server.rejects === 0) return [];
  const next = stepNames["server.refuse"];
  return [{ ...named("server.check"), chance: { of: server.rejects, next, resource: name } }];
}

/** A part moves to the next server when there is room. After the last server it is good. A reject leaves where it is found. */
function passed(place: string, group: ServerGroup, scenario: Scenario): readonly CellStep[] {
  const { server } = group;
  const next = nextGroup(takeawayGroups(scenario), group.station, group);
  const shows = [{ resource: place, state: stateNames.starved }];
  const on: CellStep = next
    ? {
        ...named("server.passOn"),
        needs: [{ place: roomBefore(next.name), meanwhile: stateNames.blocked }],
        shows,
        gives: [{ place: partsBefore(next.name) }],
      }
    : { ...named("server.passOn"), shows, counts: { [goodCounter]: 1 } };
  const makeRoom: CellStep = { ...named("server.makeRoom"), gives: [{ place: roomBefore(group.name) }] };
  if (server.rejects === 0) return [on, makeRoom];
  const counts = { [refusedOf(server.reason ?? server.name)]: 1 };
  return [{ ...on, next: makeRoom.name }, { ...named("server.refuse"), shows, counts }, makeRoom];
}

/** Good parts leave the mold one by one. The mold is free when its last part has room. */
function handingOver(process: CellProcess, station: StationSpec, groups: readonly ServerGroup[]): CellProcess {
  const first = nextGroup(groups, station.name);
  if (first === undefined) return process;
  const isMask = process.kind === "mask";
  const cavities = Array.from({ length: station.cavities }, (_, i) => i + 1);
  const handOver = (cavity: number): CellStep => ({
    ...namedAfter("part.handOver", cavity),
    needs: [{ place: roomBefore(first.name), meanwhile: stateNames.awaitingTakeaway }],
    shows: [{ resource: process.resource, state: isMask ? stateNames.working : stateNames.removal }],
    gives: [{ place: partsBefore(first.name) }, ...agingStarts(groups, station.name)],
  });
  if (lastWith(process.steps, "judge.partDone") !== -1) return handingJudged(process, handOver);
  const removed = lastWith(process.steps, "mold.remove", "crew.releaseFromRemoval");
  if (removed === -1) return process;
  if (isMask) return freedLast(process, cavities.map(handOver));
  // Parts that pass all checks go on to the first transfer.
  const passes = process.steps.findIndex(({ patience }) => patience?.leaveFor === stepNames["judge.done"]);
  const place = passes === -1 ? removed : lastWith(process.steps, "judge.allRejected");
  const leaveFor = subjectNames["part.handOver"](1);
  const steps = process.steps.map((step, i): CellStep =>
    i === passes ? { ...step, patience: { ...step.patience!, leaveFor } } : step,
  );
  return { ...process, steps: [...steps.slice(0, place + 1), ...cavities.map(handOver), ...steps.slice(place + 1)] };
}

/** A mask is free for the next shot when the last part of the present shot has left it. */
function freedLast(process: CellProcess, handoffs: readonly CellStep[]): CellProcess {
  const steps = process.steps.map((step): CellStep => ({ ...step, gives: [] }));
  const gives = process.steps.flatMap((step) => step.gives ?? []);
  return { ...process, steps: [...steps, ...handoffs, { ...named("server.makeRoom"), gives }] };
}

/** A part that is rejected at the mold does not enter the takeaway. */
function handingJudged(process: CellProcess, handOver: (cavity: number) => CellStep): CellProcess {
  let cavity = 0;
  const steps = process.steps.flatMap((step): readonly CellStep[] => {
    if (hasRole(step, "judge.weigh")) return [{ ...step, next: subjectNames["part.handOver"](++cavity) }];
    return hasRole(step, "judge.partDone") ? [handOver(cavity), step] : [step];
  });
  return { ...process, steps };
}

// Adds what parts pass after the mold to a cycle table: servers in a row, each with places and room to wait, blocking back to the mold.
import type { PlaceSpec, ProcessSpec, ResourceSpec, StepSpec, StepTable } from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { agingPlaces, agingProcesses, agingStarts, partsBefore, ripeNeeds, roomBefore, takenGives } from "./age.ts";
import { byHand } from "#cell/table/crew.ts";
import { goodCounter, maskOf, refusedOf } from "#cell/words/cycleNames.ts";
import { fixed, rank, waiting, working } from "#cell/words/tableWords.ts";
import { HAND_OVER, PASS_ON, REFUSE } from "#cell/words/takeawayWords.ts";
import { nextGroup, takeawayGroups, type ServerGroup } from "#scenario/resolving/takeawayGroups.ts";

const TAKE = "take a part";
const MAKE_ROOM = "make room";

/** The table itself where every part that leaves a mold is done. */
export function withTakeaway(table: StepTable, scenario: Scenario): StepTable {
  const { stations } = scenario;
  const groups = takeawayGroups(scenario);
  if (groups.length === 0) return table;
  return {
    resources: [...table.resources.map((resource) => awaiting(resource, scenario)), ...groups.flatMap(serverResources)],
    places: [...table.places, ...groups.flatMap(serverPlaces)],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => process.name === name || process.name === maskOf(name));
        return station ? handingOver(process, station, groups) : process;
      }),
      ...groups.flatMap((group) => group.places.map((place) => serverProcess(place, group, scenario))),
      ...groups.flatMap((group) => agingProcesses(group, groups)),
    ],
  };
}

/** Whoever hands parts over waits for room in a state of its own. */
function awaiting(resource: ResourceSpec, { stations }: Scenario): ResourceSpec {
  const hands = stations.some(({ name }) => resource.name === name || resource.name === maskOf(name));
  const knows = resource.states.some(({ name }) => name === "awaiting takeaway");
  return hands && !knows ? { ...resource, states: [...resource.states, waiting("awaiting takeaway")] } : resource;
}

function serverResources({ places, server }: ServerGroup): readonly ResourceSpec[] {
  const states = [waiting("starved"), working("working"), waiting("blocked")];
  const more = server.by === "operator" ? [waiting("awaiting an operator")] : [];
  return places.map((name) => ({ name, states: [...states, ...more] }));
}

/** A part keeps its room, or its place, until it has moved on. */
function serverPlaces(group: ServerGroup): readonly PlaceSpec[] {
  const { server } = group;
  // A part that is too old leaves before anybody takes it up.
  const rule = server.maxAge === undefined ? {} : ({ rule: "priority" } as const);
  return [
    { name: roomBefore(group), tokens: server.buffer + server.places, rank: rank.station },
    { name: partsBefore(group), tokens: 0, rank: rank.station, ...rule },
    ...agingPlaces(group),
  ];
}

function serverProcess(place: string, group: ServerGroup, scenario: Scenario): ProcessSpec {
  const priority = group.server.maxAge === undefined ? {} : { priority: 1 };
  return {
    name: place,
    resource: place,
    ...priority,
    steps: [...served(place, group, scenario), ...checked(group), ...passed(place, group, scenario)],
  };
}

/** One stream a server, whichever of its places draws: the n-th part has the n-th number. */
function served(place: string, group: ServerGroup, scenario: Scenario): readonly StepSpec[] {
  const { server, name } = group;
  const needs = [{ place: partsBefore(group), meanwhile: "starved" }, ...ripeNeeds(group)];
  const gives = takenGives(group);
  const step: StepSpec = {
    name: server.name,
    shows: [{ resource: place, state: "working" }],
    time: { ...fixed(server.time), resource: name },
  };
  const take: StepSpec = { name: TAKE, needs, ...(gives.length > 0 ? { gives } : {}) };
  if (server.by === "machine") return gives.length === 0 ? [{ ...step, needs }] : [take, step];
  const hands = { task: "packing", step, meanwhile: "awaiting an operator", lettingGo: "let go" } as const;
  return [take, ...byHand(scenario, hands)];
}

function checked({ name, server }: ServerGroup): readonly StepSpec[] {
  if (server.rejects === 0) return [];
  return [{ name: "check", chance: { of: server.rejects, next: REFUSE, resource: name } }];
}

/** On to the next server as soon as it has room; after the last one a part is good; a reject leaves where it was found. */
function passed(place: string, group: ServerGroup, scenario: Scenario): readonly StepSpec[] {
  const { server } = group;
  const next = nextGroup(takeawayGroups(scenario), group.station, group);
  const shows = [{ resource: place, state: "starved" }];
  const on: StepSpec = next
    ? {
        name: PASS_ON,
        needs: [{ place: roomBefore(next), meanwhile: "blocked" }],
        shows,
        gives: [{ place: partsBefore(next) }],
      }
    : { name: PASS_ON, shows, counts: { [goodCounter]: 1 } };
  const makeRoom: StepSpec = { name: MAKE_ROOM, gives: [{ place: roomBefore(group) }] };
  if (server.rejects === 0) return [on, makeRoom];
  const refuse: StepSpec = { name: REFUSE, shows, counts: { [refusedOf(server.reason ?? server.name)]: 1 } };
  return [{ ...on, next: MAKE_ROOM }, refuse, makeRoom];
}

/** Parts leave one by one, good ones only; the mold is free when the last of them has found room. */
function handingOver(process: ProcessSpec, station: StationSpec, groups: readonly ServerGroup[]): ProcessSpec {
  const first = nextGroup(groups, station.name);
  if (first === undefined) return process;
  const isMask = process.name === maskOf(station.name);
  const cavities = Array.from({ length: station.cavities }, (_, i) => i + 1);
  const handOver = (cavity: number): StepSpec => ({
    name: `${HAND_OVER}${cavity}`,
    needs: [{ place: roomBefore(first), meanwhile: "awaiting takeaway" }],
    shows: [{ resource: process.resource, state: isMask ? "working" : "removal" }],
    gives: [{ place: partsBefore(first) }, ...agingStarts(groups, station.name)],
  });
  if (process.steps.some(({ name }) => name === "part 1 judged")) return handingJudged(process, handOver);
  const at = process.steps.findLastIndex(({ name }) => name === "remove" || name === "let go");
  if (at === -1) return process;
  if (isMask) return freedLast(process, cavities.map(handOver));
  const clocked = process.steps.findIndex(({ patience }) => patience?.leaveFor === "parts judged");
  const place = clocked === -1 ? at : process.steps.findIndex(({ name }) => name === "all rejected");
  const steps = process.steps.map((step, i): StepSpec =>
    i === clocked ? { ...step, patience: { ...step.patience!, leaveFor: "hand over 1" } } : step,
  );
  return { ...process, steps: [...steps.slice(0, place + 1), ...cavities.map(handOver), ...steps.slice(place + 1)] };
}

/** A mask is free for the next shot when the last part of this one has left it. */
function freedLast(process: ProcessSpec, handOvers: readonly StepSpec[]): ProcessSpec {
  const steps = process.steps.map((step): StepSpec => ({ ...step, gives: [] }));
  const gives = process.steps.flatMap((step) => step.gives ?? []);
  return { ...process, steps: [...steps, ...handOvers, { name: MAKE_ROOM, gives }] };
}

/** A part that the mold's own check refuses never enters the takeaway. */
function handingJudged(process: ProcessSpec, handOver: (cavity: number) => StepSpec): ProcessSpec {
  const steps = process.steps.flatMap((step): readonly StepSpec[] => {
    const weighed = /^weigh ([0-9]+)$/u.exec(step.name)?.[1];
    if (weighed !== undefined) return [{ ...step, next: `hand over ${weighed}` }];
    const judged = /^part ([0-9]+) judged$/u.exec(step.name)?.[1];
    return judged === undefined ? [step] : [handOver(Number(judged)), step];
  });
  return { ...process, steps };
}

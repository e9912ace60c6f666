// Adds what parts pass after the mold to a cycle table: servers in a row, each with places and room to wait, blocking back to the mold.
import type { PlaceSpec, ProcessSpec, ResourceSpec, StepSpec, StepTable } from "#engine/stepTable.ts";
import type { Scenario, ServerSpec, StationSpec } from "#scenario/scenario.ts";
import { byHand } from "./crew.ts";
import { goodCounter, maskOf, refusedOf, servedOf } from "./cycleNames.ts";
import { fixed, rank, waiting, working } from "./tableWords.ts";
import { placeNames } from "./takeawayWords.ts";

/** The table itself where every part that leaves a mold is done. */
export function withTakeaway(table: StepTable, scenario: Scenario): StepTable {
  const { takeaway = [], stations } = scenario;
  const [first] = takeaway;
  if (first === undefined) return table;
  return {
    resources: [
      ...table.resources.map((resource) => awaiting(resource, scenario)),
      ...takeaway.flatMap(serverResources),
    ],
    places: [...table.places, ...takeaway.flatMap(serverPlaces)],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => process.name === name || process.name === maskOf(name));
        return station ? handingOver(process, station, first) : process;
      }),
      ...takeaway.flatMap((server, k) => serverProcesses(scenario, server, takeaway[k + 1])),
    ],
  };
}

const roomBefore = ({ name }: ServerSpec): string => `room before ${name}`;
const partsBefore = ({ name }: ServerSpec): string => `parts before ${name}`;

/** Whoever hands parts over waits for room in a state of its own. */
function awaiting(resource: ResourceSpec, { stations }: Scenario): ResourceSpec {
  const hands = stations.some(({ name }) => resource.name === name || resource.name === maskOf(name));
  const knows = resource.states.some(({ name }) => name === "awaiting takeaway");
  return hands && !knows ? { ...resource, states: [...resource.states, waiting("awaiting takeaway")] } : resource;
}

function serverResources(server: ServerSpec): readonly ResourceSpec[] {
  const states = [waiting("starved"), working("working"), waiting("blocked")];
  const more = server.by === "operator" ? [waiting("awaiting an operator")] : [];
  return placeNames(server).map((name) => ({ name, states: [...states, ...more] }));
}

/** A part keeps its room, or its place, until it has moved on. */
function serverPlaces(server: ServerSpec): readonly PlaceSpec[] {
  return [
    { name: roomBefore(server), tokens: server.buffer + server.places, rank: rank.station },
    { name: partsBefore(server), tokens: 0, rank: rank.station },
  ];
}

function serverProcesses(scenario: Scenario, server: ServerSpec, next: ServerSpec | undefined): readonly ProcessSpec[] {
  return placeNames(server).map((name) => ({
    name,
    resource: name,
    steps: serverSteps(scenario, server, { name, next }),
  }));
}

interface ServerPlace {
  readonly name: string;
  readonly next: ServerSpec | undefined;
}

function serverSteps(scenario: Scenario, server: ServerSpec, { name, next }: ServerPlace): readonly StepSpec[] {
  const serve: StepSpec = {
    name: server.name,
    needs: [{ place: partsBefore(server), meanwhile: "starved", takes: "cargo" }],
    shows: [{ resource: name, state: "working" }],
    time: fixed(server.time),
    counts: { [servedOf(server.name)]: 1 },
  };
  const refused: StepSpec = {
    name: "part refused",
    gives: [{ place: roomBefore(server) }],
    counts: { [refusedOf(server.name)]: 1 },
  };
  return [...served(scenario, serve), ...passed(server, { name, next }), ...(server.rejects > 0 ? [refused] : [])];

  function served(cell: Scenario, step: StepSpec): readonly StepSpec[] {
    if (server.by === "machine") return [judged(step)];
    const { needs, ...work } = step;
    const hands = byHand(cell, { task: "packing", step: work, meanwhile: "awaiting an operator", lettingGo: "let go" });
    return [{ name: "take a part", needs: needs ?? [] }, ...hands.slice(0, -1), judged(hands.at(-1)!)];
  }

  function judged(step: StepSpec): StepSpec {
    return server.rejects > 0 ? { ...step, chance: { of: server.rejects, next: "part refused" } } : step;
  }
}

/** On to the next server as soon as it has room; after the last one a part is good. */
function passed(server: ServerSpec, { next }: ServerPlace): readonly StepSpec[] {
  const on: StepSpec = next
    ? {
        name: "pass on",
        needs: [{ place: roomBefore(next), meanwhile: "blocked" }],
        gives: [{ place: partsBefore(next) }, { place: roomBefore(server) }],
      }
    : { name: "part done", gives: [{ place: roomBefore(server) }], counts: { [goodCounter]: 1 } };
  return [{ ...on, next: server.by === "operator" ? "take a part" : server.name }];
}

/** Parts leave one by one, good ones only; the mold is free when the last of them has found room. */
function handingOver(process: ProcessSpec, station: StationSpec, first: ServerSpec): ProcessSpec {
  const cavities = Array.from({ length: station.cavities }, (_, i) => i + 1);
  const handOver = (cavity: number): StepSpec => ({
    name: `hand over ${cavity}`,
    needs: [{ place: roomBefore(first), meanwhile: "awaiting takeaway" }],
    gives: [{ place: partsBefore(first) }],
  });
  if (process.steps.some(({ name }) => name === "part 1 judged")) return handingJudged(process, handOver);
  const at = process.steps.findLastIndex(({ name }) => name === "remove" || name === "let go");
  if (at === -1) return process;
  const clocked = process.steps.findIndex(({ patience }) => patience?.leaveFor === "parts judged");
  const place = clocked === -1 ? at : process.steps.findIndex(({ name }) => name === "all rejected");
  const steps = process.steps.map((step, i): StepSpec =>
    i === clocked ? { ...step, patience: { ...step.patience!, leaveFor: "hand over 1" } } : step,
  );
  return { ...process, steps: [...steps.slice(0, place + 1), ...cavities.map(handOver), ...steps.slice(place + 1)] };
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

// Adds machine stops to a cycle table: what each stop does to every step, the stops themselves, and the clearing of lost shots.
import type {
  GiveSpec,
  ProcessSpec,
  ResourceSpec,
  StepSpec,
  StepTable,
  StopEffect,
  StopRule,
} from "#engine/compiler/stepTable.ts";
import type { Scenario, StationSpec, StopSpec } from "#scenario/scenario.ts";
import { byHand } from "#cell/table/crew.ts";
import { headOf, lostDropsOf, lostShotsOf, PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import { mayScrewRest, restProcesses } from "#cell/delivery/screwRest.ts";
import { cyclesPlace, stopPlaces, stopProcesses } from "./stopProcesses.ts";
import { shotPlaceAt, stopMatrix, type ShotPlace, type StepFate } from "./stopMatrix.ts";
import { isMoldClock, LOOK_AT_CLOCK } from "./withQuality.ts";
import { PASS_ON } from "#cell/words/takeawayWords.ts";
import { fixed, working } from "#cell/words/tableWords.ts";

const GIVE_UP_DROP = "give up the drop";
const GIVE_UP_PARISON = "give up the parison";
const GIVE_UP_PART = "give up the part";
const GIVE_UP_SHOT = "give up the shot";

/** The table itself where nothing stops. */
export function withStops(table: StepTable, scenario: Scenario): StepTable {
  const { stops = [], stations } = scenario;
  if (stops.length === 0) return table;
  const resting = mayScrewRest(scenario) ? [PLASTICATOR] : [];
  const stoppable = new Set([...stops.map((stop) => stop.resource), ...resting]);
  return {
    resources: table.resources.map((resource) => stoppableResource(resource, stoppable, scenario)),
    places: [...table.places, ...stopPlaces(scenario)],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => name === process.name);
        const counted = { ...process, steps: process.steps.map((step) => countingCycles(step, process, stops)) };
        return station ? stoppableStation(counted, station, scenario) : heldInPlace(counted);
      }),
      ...stops.flatMap((stop) => stopProcesses(scenario, stop)),
      ...restProcesses(scenario),
    ],
  };
}

const isOperator = ({ name }: ResourceSpec): boolean => /^operator [0-9]+$/u.test(name);

function stoppableResource(resource: ResourceSpec, stoppable: ReadonlySet<string>, scenario: Scenario): ResourceSpec {
  const { stops = [], stations } = scenario;
  const more = (...names: readonly string[]): ResourceSpec => ({
    ...resource,
    states: [
      ...resource.states,
      ...names.filter((name) => resource.states.every((each) => each.name !== name)).map(working),
    ],
  });
  if (isOperator(resource)) {
    const clears = stations.some(({ clear }) => clear?.by === "operator");
    const repairs = stops.some(({ by }) => by === "operator");
    return more(...(clears ? ["clearing"] : []), ...(repairs ? ["repairing"] : []));
  }
  const cleared = stations.some(({ name, clear }) => name === resource.name && clear !== undefined);
  const described = cleared ? more("being cleared") : resource;
  if (!stoppable.has(resource.name)) return described;
  return { ...described, states: [...described.states, { name: "stopped", kind: "stopped" }], whenStopped: "stopped" };
}

/** A cycle of a station is a delivered shot, of the plasticator a recharge, of the valve a shift to a port or a head, of a server a part. */
function countingCycles(step: StepSpec, process: ProcessSpec, stops: readonly StopSpec[]): StepSpec {
  const counted = stops.filter(
    ({ comes, resource }) => comes.by === "cycles" && cycleStepOf(resource, process) === step.name,
  );
  if (counted.length === 0) return step;
  return {
    ...step,
    gives: [...(step.gives ?? []), ...counted.map((stop): GiveSpec => ({ place: cyclesPlace(stop) }))],
  };
}

function cycleStepOf(resource: string, process: ProcessSpec): string | undefined {
  const isHead = process.name.startsWith(headOf(""));
  if (resource === PLASTICATOR) return isHead || process.name === PLASTICATOR ? "recharge" : undefined;
  const isServer = process.steps.some(({ name }) => name === PASS_ON);
  if (resource === process.name) return isServer ? process.steps.find(({ time }) => time)?.name : "drop";
  if (resource !== VALVE || process.name === PLASTICATOR) return undefined;
  return isHead ? "shift to head" : "shift to port";
}

/** Nothing that the screw or the valve does can lose a shot: under way it runs on or is held. */
function heldInPlace(process: ProcessSpec): ProcessSpec {
  const stopped = effects("not yet delivered", "hold");
  // Held by a stop, the hand would never come free to end that stop; the age of a part goes on in any case.
  const isHeld = ({ time, shows, stoppedBy }: StepSpec): boolean =>
    time !== undefined && stoppedBy === undefined && shows?.some(({ by }) => by === "hand") !== true;
  return { ...process, steps: process.steps.map((step) => (isHeld(step) ? { ...step, stopped } : step)) };
}

function stoppableStation(process: ProcessSpec, station: StationSpec, scenario: Scenario): ProcessSpec {
  const { maxHang } = scenario;
  const cycle = process.steps.map((step) => step.name);
  const steps = process.steps.map((step): StepSpec => {
    const place = shotPlaceAt(step.name, cycle);
    if (place === "physics") return { ...step, stopped: "physics" };
    // Held by a stop, the hand would never come free to end that stop.
    if (step.shows?.some(({ by }) => by === "hand")) return step;
    if (station.clear === undefined) return { ...step, stopped: effects(place, "run on") };
    const leaveFor = placeToGiveUp(step.name, place, cycle);
    const patience = { time: fixed({ kind: "fixed", value: maxHang ?? 0 }), leaveFor };
    const hangs = place === "hanging" && maxHang !== undefined ? { patience } : {};
    return { ...step, stopped: effects(place, { leaveFor }), ...hangs };
  });
  if (station.clear === undefined) return { ...process, steps };
  const [first] = cycle;
  const last = { ...steps.at(-1)!, next: steps.at(-1)!.next ?? first! };
  const afterwards = [...givingUp(process, station), ...clearing(scenario, station, station.clear, first!)];
  return { ...process, steps: [...steps.slice(0, -1), last, ...afterwards] };
}

function effects(place: ShotPlace, lost: StopEffect): Readonly<Record<StopRule, StopEffect>> {
  const { finish, hold, scrap } = stopMatrix[place];
  const effect = (fate: StepFate): StopEffect => (fate === "lost" ? lost : fate);
  return { finish: effect(finish), hold: effect(hold), scrap: effect(scrap) };
}

function placeToGiveUp(step: string, place: ShotPlace, cycle: readonly string[]): string {
  // What grows at a die that never stops is a shot only once it is cut.
  const isUncut = place === "hanging" && cycle.includes("cut");
  if (place === "being delivered" || isUncut) return GIVE_UP_DROP;
  if (place === "hanging" || cycle.indexOf(step) <= cycle.indexOf("travel out")) return GIVE_UP_PARISON;
  return cycle.indexOf(step) <= cycle.indexOf("open") ? GIVE_UP_PART : GIVE_UP_SHOT;
}

/** What a step that is broken off would have given, others still wait for. */
function givingUp({ steps }: ProcessSpec, station: StationSpec): readonly StepSpec[] {
  const givesOf = (name: string): readonly GiveSpec[] => steps.find((step) => step.name === name)?.gives ?? [];
  const clock = steps.find(({ name }) => name === LOOK_AT_CLOCK);
  return [
    { name: GIVE_UP_DROP, gives: givesOf("drop"), counts: { [lostDropsOf(station.name)]: 1 }, next: GIVE_UP_PARISON },
    {
      name: GIVE_UP_PARISON,
      gives: [...givesOf("close").filter(({ place }) => !isMoldClock(place)), ...givesOf("travel out")],
      next: GIVE_UP_SHOT,
    },
    { name: GIVE_UP_PART, gives: givesOf("open") },
    ...(clock ? [forgetClock(clock)] : []),
    { name: GIVE_UP_SHOT, counts: { [lostShotsOf(station.name)]: 1 } },
  ];
}

/** A shot that was overdue is lost with its mark, which would else fall on the next one. */
function forgetClock({ needs, patience }: StepSpec): StepSpec {
  return {
    name: "forget the mold clock",
    ...(needs ? { needs } : {}),
    ...(patience ? { patience: { ...patience, leaveFor: GIVE_UP_SHOT } } : {}),
    stoppedBy: [],
  };
}

function clearing(
  scenario: Scenario,
  station: StationSpec,
  { time, by }: NonNullable<StationSpec["clear"]>,
  first: string,
): readonly StepSpec[] {
  const shows = [{ resource: station.name, state: "being cleared" }];
  const clear: StepSpec = { name: "clear", shows, time: fixed(time) };
  if (by === "machine") return [{ ...clear, next: first }];
  const steps = byHand(scenario, { task: "clearing", step: clear, lettingGo: "let go after clearing" });
  return [...steps.slice(0, -1), { ...steps.at(-1)!, next: first }];
}

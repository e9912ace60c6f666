// The processes of one stop of a resource: it begins, is repaired on or off shift, and ends.
import type { PlaceSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { byOperator, operatorShow, stateOfTask } from "#cell/table/crew.ts";
import type { CellProcess, CellStep } from "#cell/words/cellTable.ts";
import { SHIFT } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named, namedAfter } from "#cell/words/stepNames.ts";
import { beginCounted, countedOut, endCounted, restPlaces } from "#cell/delivery/screwRest.ts";
import { residualLife } from "#engine/distributions/residualLife.ts";
import { fixed, rank } from "#cell/words/tableWords.ts";

const labelOf = ({ resource, name }: StopSpec): string => `${name} of ${resource}`;
export const cyclesPlace = (stop: StopSpec): string => `cycles until ${labelOf(stop)}`;
const turnPlace = (resource: string): string => `turn to stop ${resource}`;
const callPlace = (stop: StopSpec): string => `call: ${labelOf(stop)}`;
const donePlace = (stop: StopSpec): string => `done: ${labelOf(stop)}`;

/** The place of the operator who is on call outside the work shift. */
export const ON_CALL = "operator on call";
/** A token at one of these places selects who answers the calls of a stop: the crew on shift, or else the operator on call. */
export const answeredByCrew = (stop: StopSpec): string => `crew answers ${labelOf(stop)}`;
export const answeredOnCall = (stop: StopSpec): string => `on call for ${labelOf(stop)}`;

/** Stops whose repair by an operator does not wait for a work shift: an operator is on call. */
export function stopsOnCall({ stops = [], calendar }: Scenario): readonly StopSpec[] {
  return calendar ? stops.filter(({ by, shift }) => by === "operator" && shift === "any") : [];
}

/** Stops whose repair needs no operator and proceeds only on shift. */
export function stopsInShift({ stops = [], calendar }: Scenario): readonly StopSpec[] {
  return calendar ? stops.filter(({ by, shift }) => by === "itself" && shift === "in") : [];
}

export function cyclePlaces({ stops = [] }: Scenario): readonly PlaceSpec[] {
  return stops.flatMap((stop) => {
    if (stop.comes.by !== "cycles") return [];
    const begun = stop.start === "running" ? { tokensBelow: stop.comes.cycles } : {};
    return [{ name: cyclesPlace(stop), tokens: 0, ...begun }];
  });
}

/** Stops of one resource queue: one at a time has the turn. */
export function stopPlaces(scenario: Scenario): readonly PlaceSpec[] {
  const { stops = [] } = scenario;
  const onCall = stopsOnCall(scenario);
  return [
    ...[...new Set(stops.map(({ resource }) => resource))].map((resource) => ({
      name: turnPlace(resource),
      tokens: 1,
    })),
    ...(onCall.length > 0 ? [{ name: ON_CALL, tokens: 0, rank: rank.crew }] : []),
    ...restPlaces(scenario),
    ...onCall.flatMap((stop) => [
      { name: callPlace(stop), tokens: 0 },
      { name: donePlace(stop), tokens: 0 },
      { name: answeredByCrew(stop), tokens: 1 },
      { name: answeredOnCall(stop), tokens: 0 },
    ]),
  ];
}

/** Entries for the log of stops, which identifies a stop by its number in the scenario. */
function marks(
  { stops = [] }: Scenario,
  stop: StopSpec,
  ...phases: readonly NonNullable<CellStep["stopMarks"]>[number]["phase"][]
): Pick<CellStep, "stopMarks"> {
  return { stopMarks: phases.map((phase) => ({ stop: stops.indexOf(stop), phase })) };
}

export function stopProcesses(scenario: Scenario, stop: StopSpec): readonly CellProcess[] {
  const { resource, name, step: rule } = stop;
  const waits = stop.by === "operator" || stopsInShift(scenario).includes(stop);
  const begins: CellStep = {
    role: "stop.begin",
    name,
    needs: [{ place: turnPlace(resource) }],
    stops: { resource, rule },
    gives: beginCounted(scenario, stop),
    ...(waits ? marks(scenario, stop, "begin") : marks(scenario, stop, "begin", "repair")),
  };
  const own = (...steps: readonly CellStep[]): CellProcess => {
    const turn = [untilStop(stop), ...steps, ...countedOut(scenario, stop)];
    return { name: labelOf(stop), kind: "stop", resource, ...withFirst(turn, stop) };
  };
  if (!stopsOnCall(scenario).includes(stop)) return [own(begins, ...repair(scenario, stop))];
  return [
    own(
      { ...begins, gives: [...begins.gives!, { place: callPlace(stop) }] },
      { ...named("stop.awaitRepair"), needs: [{ place: donePlace(stop) }] },
    ),
    repairedByCrew(scenario, stop),
    repairedOnCall(scenario, stop),
  ];
}

/** The repair itself; the resource goes on when it ends. */
function repairing(scenario: Scenario, stop: StopSpec): CellStep {
  const { resource, name, repair: distribution } = stop;
  return {
    ...namedAfter("stop.repair", name),
    time: fixed(distribution),
    releases: resource,
    gives: [{ place: turnPlace(resource) }, ...endCounted(scenario, stop)],
    ...marks(scenario, stop, "end"),
  };
}

function repair(scenario: Scenario, stop: StopSpec): readonly CellStep[] {
  const work = repairing(scenario, stop);
  if (stop.by === "operator") {
    const [taken, release] = takenUp(scenario, stop);
    return [taken, work, release];
  }
  if (!stopsInShift(scenario).includes(stop)) return [work];
  const nothing = fixed({ kind: "fixed", value: 0 });
  return [
    {
      ...named("stop.awaitShift"),
      time: { ...nothing, whileWorking: SHIFT },
      ...marks(scenario, stop, "repair"),
    },
    { ...work, time: { ...work.time!, whileWorking: SHIFT } },
  ];
}

/** The arrival of an operator, as a step without time so that the wait is known, and the release. */
function takenUp(scenario: Scenario, stop: StopSpec): readonly [taken: CellStep, release: CellStep] {
  const step: CellStep = { ...namedAfter("stop.takeUp", stop.name), ...marks(scenario, stop, "repair") };
  return byOperator(scenario, { task: "repair", step });
}

/** The crew answers a call while it is on shift, and then requests an operator. */
function repairedByCrew(scenario: Scenario, stop: StopSpec): CellProcess {
  const [taken, release] = takenUp(scenario, stop);
  return answering(repairing(scenario, stop), answeredByCrew(stop), { stop, taken, release });
}

/** Off shift the operator on call does one repair after another and no other task. */
function repairedOnCall(scenario: Scenario, stop: StopSpec): CellProcess {
  const taken: CellStep = {
    ...namedAfter("stop.takeUp", stop.name),
    needs: [{ place: ON_CALL, takes: "helper" }],
    shows: [operatorShow(stateOfTask.repair)],
    ...marks(scenario, stop, "repair"),
  };
  const release: CellStep = {
    ...named("crew.releaseFromRepair"),
    shows: [operatorShow(stateNames.offShift)],
    gives: [{ place: ON_CALL, carries: "helper" }],
  };
  return answering(repairing(scenario, stop), answeredOnCall(stop), { stop, taken, release });
}

interface Answer {
  readonly stop: StopSpec;
  readonly taken: CellStep;
  readonly release: CellStep;
}

/** A call goes to the crew or to the operator on call, as it arrives. The shift ends only after an operator has accepted the call. */
function answering(work: CellStep, answered: string, { stop, taken, release }: Answer): CellProcess {
  const steps: readonly CellStep[] = [
    { ...named("stop.answerCall"), needs: [{ place: callPlace(stop) }, { place: answered }] },
    { ...taken, gives: [...(taken.gives ?? []), { place: answered }] },
    { ...work, gives: [...work.gives!, { place: donePlace(stop) }] },
    release,
  ];
  // The stop does not hold its own repair.
  return {
    name: answered,
    kind: "repair",
    resource: stop.resource,
    steps: steps.map((step) => ({ ...step, stoppedBy: [] })),
  };
}

function untilStop(stop: StopSpec): CellStep {
  const untilThen = namedAfter("stop.await", stop.name);
  if (stop.comes.by === "cycles") {
    return { ...untilThen, needs: [{ place: cyclesPlace(stop), count: stop.comes.cycles }] };
  }
  const clock = stop.comes.by === "working" ? { whileWorking: stop.resource } : {};
  return { ...untilThen, time: { ...fixed(stop.comes.between), ...clock }, isClock: true };
}

/** A clock that has run for a long time reaches the first stop after the rest of an interval, which has random numbers of its own. */
function withFirst(turn: readonly CellStep[], stop: StopSpec): Pick<CellProcess, "steps" | "begins"> {
  if (stop.comes.by === "cycles" || stop.start === "fresh") return { steps: turn };
  const [until, begins, ...others] = turn as readonly [CellStep, CellStep, ...CellStep[]];
  const first: CellStep = {
    ...until,
    ...namedAfter("stop.awaitFirst", stop.name),
    time: { ...until.time!, ...fixed(residualLife(stop.comes.between)) },
    next: begins.name,
  };
  return {
    steps: [until, begins, ...others, first].map((step, i, all) =>
      i === all.length - 2 ? { ...step, next: step.next ?? until.name } : step,
    ),
    begins: first.name,
  };
}

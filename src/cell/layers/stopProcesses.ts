// What happens from one stop of a resource to the next: it begins, it is repaired, in or out of shift, and it ends.
import type { PlaceSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { byOperator, operatorShow, stateOfTask } from "#cell/table/crew.ts";
import type { CellProcess, CellStep } from "#cell/words/cellTable.ts";
import { SHIFT } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named, namedAfter } from "#cell/words/stepNames.ts";
import { beginCounted, countedOut, endCounted, restPlaces } from "#cell/delivery/screwRest.ts";
import { fixed, rank } from "#cell/words/tableWords.ts";

const labelOf = ({ resource, name }: StopSpec): string => `${name} of ${resource}`;
export const cyclesPlace = (stop: StopSpec): string => `cycles until ${labelOf(stop)}`;
const turnPlace = (resource: string): string => `turn to stop ${resource}`;
const callPlace = (stop: StopSpec): string => `call: ${labelOf(stop)}`;
const donePlace = (stop: StopSpec): string => `done: ${labelOf(stop)}`;

/** Where the operator who is on call outside the shift is taken from. */
export const ON_CALL = "operator on call";
/** Who answers the calls of a stop: the crew on shift, the operator on call outside of it. A token at one of these places says which. */
export const answeredByCrew = (stop: StopSpec): string => `crew answers ${labelOf(stop)}`;
export const answeredOnCall = (stop: StopSpec): string => `on call for ${labelOf(stop)}`;

/** Stops whose repair by an operator waits for no shift: the operator comes from home. */
export function stopsOnCall({ stops = [], calendar }: Scenario): readonly StopSpec[] {
  return calendar ? stops.filter(({ by, shift }) => by === "operator" && shift === "any") : [];
}

/** Stops whose repair needs no operator, and goes on only on shift. */
export function stopsInShift({ stops = [], calendar }: Scenario): readonly StopSpec[] {
  return calendar ? stops.filter(({ by, shift }) => by === "itself" && shift === "in") : [];
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
    ...stops.filter(({ comes }) => comes.by === "cycles").map((stop) => ({ name: cyclesPlace(stop), tokens: 0 })),
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

/** What the log of stops is told: a stop is known by its number in the scenario. */
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
  const own = (...steps: readonly CellStep[]): CellProcess => ({
    name: labelOf(stop),
    kind: "stop",
    resource,
    steps: [untilStop(stop), ...steps, ...countedOut(scenario, stop)],
  });
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

/** The repair itself; with it the resource goes on. */
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

/** An operator comes, which takes no time of its own, so that the wait is known; and is released. */
function takenUp(scenario: Scenario, stop: StopSpec): readonly [taken: CellStep, release: CellStep] {
  const step: CellStep = { ...namedAfter("stop.takeUp", stop.name), ...marks(scenario, stop, "repair") };
  return byOperator(scenario, { task: "repair", step });
}

/** The crew answers a call while it is on shift, and asks for an operator from then on. */
function repairedByCrew(scenario: Scenario, stop: StopSpec): CellProcess {
  const [taken, release] = takenUp(scenario, stop);
  return answering(repairing(scenario, stop), answeredByCrew(stop), { stop, taken, release });
}

/** Off shift the operator on call does one repair after the other, and nothing else. */
function repairedOnCall(scenario: Scenario, stop: StopSpec): CellProcess {
  const taken: CellStep = {
    ...namedAfter("stop.takeUp", stop.name),
    needs: [{ place: ON_CALL, takes: "hand" }],
    shows: [operatorShow(stateOfTask.repair)],
    ...marks(scenario, stop, "repair"),
  };
  const release: CellStep = {
    ...named("crew.releaseFromRepair"),
    shows: [operatorShow(stateNames.offShift)],
    gives: [{ place: ON_CALL, carries: "hand" }],
  };
  return answering(repairing(scenario, stop), answeredOnCall(stop), { stop, taken, release });
}

interface Answer {
  readonly stop: StopSpec;
  readonly taken: CellStep;
  readonly release: CellStep;
}

/** A call goes to those who answer when it comes; they do not leave before an operator has taken it up. */
function answering(work: CellStep, answered: string, { stop, taken, release }: Answer): CellProcess {
  const steps: readonly CellStep[] = [
    { ...named("stop.answerCall"), needs: [{ place: callPlace(stop) }, { place: answered }] },
    { ...taken, gives: [...(taken.gives ?? []), { place: answered }] },
    { ...work, gives: [...work.gives!, { place: donePlace(stop) }] },
    release,
  ];
  // The stop that they end does not stop those who end it.
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

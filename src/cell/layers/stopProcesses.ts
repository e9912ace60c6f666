// What happens from one stop of a resource to the next: it comes, somebody or nobody repairs it, in or out of shift, and it ends.
import type { PlaceSpec, ProcessSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { byHand, operatorShow, stateOf } from "#cell/table/crew.ts";
import { repairBeginsOf, SHIFT, stopBeginsOf, stopEndsOf } from "#cell/words/cycleNames.ts";
import { countedOut, endTold, restPlaces, stopTold } from "#cell/delivery/screwRest.ts";
import { fixed, rank } from "#cell/words/tableWords.ts";

const labelOf = ({ resource, name }: StopSpec): string => `${name} of ${resource}`;
export const cyclesPlace = (stop: StopSpec): string => `cycles until ${labelOf(stop)}`;
const turnPlace = (resource: string): string => `turn to stop ${resource}`;
const callPlace = (stop: StopSpec): string => `call for ${labelOf(stop)}`;
const donePlace = (stop: StopSpec): string => `done: ${labelOf(stop)}`;

/** Where the operator who is on call outside the shift is taken from. */
export const ON_CALL = "operator on call";
/** Whoever answers the calls of a stop: the crew on shift, the one on call outside of it. The token tells whose time it is. */
export const answeredByCrew = (stop: StopSpec): string => `crew answers ${labelOf(stop)}`;
export const answeredOnCall = (stop: StopSpec): string => `on call for ${labelOf(stop)}`;

/** Stops whose repair waits for no shift though an operator does it: one comes from home. */
export function stopsOnCall({ stops = [], calendar }: Scenario): readonly StopSpec[] {
  return calendar ? stops.filter(({ by, shift }) => by === "operator" && shift === "any") : [];
}

/** Stops that nobody repairs, and whose repair goes on only on shift. */
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

export function stopProcesses(scenario: Scenario, stop: StopSpec): readonly ProcessSpec[] {
  const { resource, name, step: rule } = stop;
  const begins: StepSpec = {
    name,
    needs: [{ place: turnPlace(resource) }],
    stops: { resource, rule },
    gives: stopTold(scenario, stop),
    counts: { [stopBeginsOf(resource, name)]: 1 },
  };
  const own = (...steps: readonly StepSpec[]): ProcessSpec => ({
    name: labelOf(stop),
    resource,
    steps: [untilStop(stop), ...steps, ...countedOut(scenario, stop)],
  });
  if (!stopsOnCall(scenario).includes(stop)) return [own(begins, ...repair(scenario, stop))];
  return [
    own(
      { ...begins, gives: [...begins.gives!, { place: callPlace(stop) }] },
      { name: "await the repair", needs: [{ place: donePlace(stop) }] },
    ),
    repairedByCrew(scenario, stop),
    repairedOnCall(scenario, stop),
  ];
}

/** The repair itself; with it the resource goes on. */
function repairing(scenario: Scenario, stop: StopSpec): StepSpec {
  const { resource, name, repair: law } = stop;
  return {
    name: `repair of ${name}`,
    time: fixed(law),
    releases: resource,
    gives: [{ place: turnPlace(resource) }, ...endTold(scenario, stop)],
    counts: { [stopEndsOf(resource, name)]: 1 },
  };
}

const begun = ({ resource, name }: StopSpec): StepSpec["counts"] => ({ [repairBeginsOf(resource, name)]: 1 });

function repair(scenario: Scenario, stop: StopSpec): readonly StepSpec[] {
  const work = repairing(scenario, stop);
  if (stop.by === "operator") {
    const [taken, letGo] = takenUp(scenario, stop);
    return [taken, work, letGo];
  }
  if (!stopsInShift(scenario).includes(stop)) return [work];
  const nothing = fixed({ kind: "fixed", value: 0 });
  return [
    { name: "await the shift", time: { ...nothing, whileWorking: SHIFT }, counts: begun(stop)! },
    { ...work, time: { ...work.time!, whileWorking: SHIFT } },
  ];
}

/** Somebody comes, which takes no time of its own, so that the wait for him is known; and goes. */
function takenUp(scenario: Scenario, stop: StopSpec): readonly [StepSpec, StepSpec] {
  const step: StepSpec = { name: `repair of ${stop.name}`, counts: begun(stop)! };
  return byHand(scenario, { task: "repair", step, lettingGo: "let go after the repair" });
}

/** The crew hears a call while it is on shift, and asks for a hand from then on. */
function repairedByCrew(scenario: Scenario, stop: StopSpec): ProcessSpec {
  const [taken, letGo] = takenUp(scenario, stop);
  return answering(repairing(scenario, stop), answeredByCrew(stop), { stop, taken, letGo });
}

/** Off shift nobody else wants a hand: whoever is on call does one repair after the other. */
function repairedOnCall(scenario: Scenario, stop: StopSpec): ProcessSpec {
  const taken: StepSpec = {
    name: `repair of ${stop.name}`,
    needs: [{ place: ON_CALL, takes: "hand" }],
    shows: [operatorShow(stateOf.repair)],
    counts: begun(stop)!,
  };
  const letGo: StepSpec = {
    name: "let go after the repair",
    shows: [operatorShow("off shift")],
    gives: [{ place: ON_CALL, carries: "hand" }],
  };
  return answering(repairing(scenario, stop), answeredOnCall(stop), { stop, taken, letGo });
}

interface Answer {
  readonly stop: StopSpec;
  readonly taken: StepSpec;
  readonly letGo: StepSpec;
}

/** A call is answered by those whose time it is when it comes; nobody goes home, or back to the crew, before a hand has been found for it. */
function answering(work: StepSpec, answered: string, { stop, taken, letGo }: Answer): ProcessSpec {
  const steps: readonly StepSpec[] = [
    { name: "hear the call", needs: [{ place: callPlace(stop) }, { place: answered }] },
    { ...taken, gives: [...(taken.gives ?? []), { place: answered }] },
    { ...work, gives: [...work.gives!, { place: donePlace(stop) }] },
    letGo,
  ];
  // The stop that they end is no matter to those who end it.
  return { name: answered, resource: stop.resource, steps: steps.map((step) => ({ ...step, stoppedBy: [] })) };
}

function untilStop(stop: StopSpec): StepSpec {
  const name = `until ${stop.name}`;
  if (stop.comes.by === "cycles") return { name, needs: [{ place: cyclesPlace(stop), count: stop.comes.cycles }] };
  const clock = stop.comes.by === "working" ? { whileWorking: stop.resource } : {};
  return { name, time: { ...fixed(stop.comes.between), ...clock }, isClock: true };
}

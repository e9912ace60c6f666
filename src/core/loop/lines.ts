// The processes that wait at each place, and the one that its rule serves next.
import { now } from "../state/clock.ts";
import { BY_PRIORITY, LONGEST_SINCE_SERVED, NO_REGISTER, ROTATION, URGENCY } from "../border/numbers.ts";
import { Process, processAt, register } from "../state/process.ts";
import { Resource, resourceAt, stateAt } from "../state/resource.ts";
import { listedAt, Need, needAt, Step } from "../state/steps.ts";
import { Place } from "../state/tokens.ts";
import { touch } from "../state/touched.ts";

/** `isNews`: a process may be served now, or show something else. */
export function join(place: Place, process: Process, isNews: bool): void {
  setWaiter(place, place.length++, process);
  if (isNews) touch(place);
}

export function leave(place: Place, process: Process): void {
  let at = 0;
  while (waiterAt(place, at) !== process) at++;
  setWaiter(place, at, waiterAt(place, --place.length));
}

export function waiterAt(place: Place, number: i32): Process {
  return changetype<Process>(load<u32>(place.waiters + ((<usize>number) << 2)));
}

function setWaiter(place: Place, number: i32, process: Process): void {
  store<u32>(place.waiters + ((<usize>number) << 2), changetype<usize>(process));
}

/** Something at this place has changed: a process that needs it may now be served, or wait for something else. */
export function changed(place: Place): void {
  for (let i = 0; i < place.lineCount; i++) {
    const line = changetype<Place>(load<usize>(place.lines + ((<usize>i) << 2)));
    if (line.length > 0) touch(line);
  }
}

/** Takes the process that is served next out of the line; null where none can be. */
export function serve(place: Place): Process | null {
  const process = foremost(place, true);
  if (process === null) return null;
  leave(place, process);
  // A process counts as served by the place that goes by it: one that fetched an operator has not had its shot.
  if (place.rule === LONGEST_SINCE_SERVED) process.servedAt = now;
  if (place.rule === ROTATION) place.turn = (numberAmongTakers(place, process) + 1) % place.takerCount;
  return process;
}

export function isReady(process: Process): bool {
  const step = process.step!;
  for (let i = 0; i < step.gates; i++) if (resourceAt(listedAt(step.gatesAt + i)).stops > 0) return false;
  for (let i = 0; i < step.needs; i++) if (!isMet(process, needAt(step.needsAt + i))) return false;
  return true;
}

function isMet(process: Process, need: Need): bool {
  return placeOf(process, need).tokens >= need.count;
}

export function placeOf(process: Process, need: Need): Place {
  if (need.by === NO_REGISTER) return need.place;
  return changetype<Place>(changetype<usize>(need.place) + <usize>register(process, need.by) * offsetof<Place>());
}

/** The state in which a waiter shows its first need that is not met, or the stop that keeps it from starting; -1 where there is none. */
export function waitingState(place: Place, process: Process): i32 {
  const step = process.step!;
  for (let i = 0; i < step.needs; i++) {
    const need = needAt(step.needsAt + i);
    if (need.isQuiet === 1 && !isMet(process, need)) return -1;
  }
  for (let i = 0; i < step.needs; i++) {
    const need = needAt(step.needsAt + i);
    if (!isMet(process, need)) return causedBy(need, null, need.meanwhile);
    if (i === 0 && process !== foremost(place, false)) return stoppedBy(step, need.othersTurn);
  }
  return stoppedBy(step, -1);
}

/** The state for the first cause that holds, among all or among the stops that keep this step from starting; or else the given one. */
function causedBy(need: Need, step: Step | null, otherwise: i32): i32 {
  for (let i = 0; i < need.causes; i++) {
    const at = need.causesAt + 3 * i;
    const resource = resourceAt(listedAt(at));
    if (resource.shown !== stateAt(listedAt(at + 1))) continue;
    if (step === null || (resource.stops > 0 && isGate(step, resource))) return listedAt(at + 2);
  }
  return otherwise;
}

function stoppedBy(step: Step, otherwise: i32): i32 {
  for (let i = 0; i < step.needs; i++) {
    const state = causedBy(needAt(step.needsAt + i), step, -1);
    if (state !== -1) return state;
  }
  return otherwise;
}

function isGate(step: Step, resource: Resource): bool {
  for (let i = 0; i < step.gates; i++) if (listedAt(step.gatesAt + i) === resource.number) return true;
  return false;
}

/** The waiter that the rule names, among those that could start or among all; null where there is none. */
function foremost(place: Place, onlyReady: bool): Process | null {
  const inRotation = place.rule === ROTATION ? inTurn(place) : null;
  let best: Process | null = null;
  for (let i = 0; i < place.length; i++) {
    const process = waiterAt(place, i);
    if (place.rule === ROTATION ? process !== inRotation : best !== null && isBehind(process, best, place.rule))
      continue;
    if (!onlyReady || isReady(process)) best = process;
  }
  return best;
}

/** Whether the rule serves the process later; equal ones go by the order of the processes. */
function isBehind(process: Process, other: Process, rule: i32): bool {
  let difference: f64 = 0;
  if (rule === LONGEST_SINCE_SERVED) difference = process.servedAt - other.servedAt;
  else if (rule === BY_PRIORITY || rule === URGENCY) difference = process.priority - other.priority;
  else difference = process.askedAt - other.askedAt;
  if (rule === URGENCY && difference === 0) difference = process.askedAt - other.askedAt;
  return difference > 0 || (difference === 0 && process.number > other.number);
}

/** The next taker in rotation that is not stopped. */
function inTurn(place: Place): Process | null {
  for (let i = 0; i < place.takerCount; i++) {
    const process = takerAt(place, (place.turn + i) % place.takerCount);
    if (resourceAt(process.resource).stops === 0) return process;
  }
  return null;
}

function takerAt(place: Place, number: i32): Process {
  return processAt(load<i32>(place.takers + ((<usize>number) << 2)));
}

function numberAmongTakers(place: Place, process: Process): i32 {
  let number = 0;
  while (takerAt(place, number) !== process) number++;
  return number;
}

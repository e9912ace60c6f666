// How a process comes to what it needs: it takes it at once, stands in line, is served, or loses its patience.
import { link } from "../observed/chain.ts";
import { now } from "../state/clock.ts";
import { drawTicks } from "../state/draws.ts";
import { clearDue, setDue } from "../state/eventList.ts";
import { reach } from "./onward.ts";
import { changed, isReady, join, placeOf, serve, waiterAt, waitingState } from "./lines.ts";
import {
  CARGO,
  IDLE,
  NEEDING,
  NO_REGISTER,
  OWN_RANK,
  PATIENCE_ENDS_AT,
  TAKES_ALONE,
  WAITS_UNSEEN,
} from "../border/numbers.ts";
import { Process } from "../state/process.ts";
import { flowNeeded, hasFlow, hasLog, logWait } from "../observed/records.ts";
import { resourceAt, stateAt } from "../state/resource.ts";
import { differs, show } from "../observed/states.ts";
import { codeAt, needAt, priorityOf, Step, stepAt } from "../state/steps.ts";
import { holdBack, leaveLine } from "./stops.ts";
import { Place, take } from "../state/tokens.ts";
import { nextTouched } from "../state/touched.ts";

/** Serves the next process at a place where something has changed; null where none can be served: those that wait on then show what for. */
export function serveNext(): Process | null {
  const place = nextTouched();
  const process = serve(place);
  if (process === null) showWaiting(place);
  else if (process.step!.patience !== -1) clearDue(process);
  return process;
}

/** True where no other process may want what this one needs, and all is there; otherwise it stands in line. */
export function maySelfServe(process: Process): bool {
  const step = process.step!;
  if ((step.flags & TAKES_ALONE) === 0 || !isReady(process)) {
    wait(process, step);
    return false;
  }
  // Its code takes what it needs; where that is only the end of a stop there is nothing to take.
  if (step.needs === 0) takeAll(process);
  return true;
}

function wait(process: Process, step: Step): void {
  process.phase = NEEDING;
  process.askedAt = now;
  process.priority = priorityOf(step);
  process.resumesAt = codeAt(PATIENCE_ENDS_AT);
  if (step.patience === -1) clearDue(process);
  else setDue(process, now + drawTicks(process, step.patience));
  if (step.needs === 0) holdBack(process);
  else join(placeOf(process, needAt(step.needsAt)), process, (step.flags & WAITS_UNSEEN) === 0);
}

/** The wait was a step of its own: it binds what follows. */
export function losePatience(process: Process): void {
  const step = process.step!;
  leaveLine(process);
  if (!hasFlow) process.head = link(step.patienceActivity, process.askedAt, process.head, 0);
  process.phase = IDLE;
  process.headTime = now;
  reach(process, stepAt(step.patienceNext));
}

/** Takes all needs; the latest of their completions and of the process's own last step binds what follows. */
export function takeAll(process: Process): void {
  const step = process.step!;
  let latest = process.headTime;
  let node = process.head;
  let rank = OWN_RANK;
  let tied = 0;
  for (let i = 0; i < step.needs; i++) {
    const need = needAt(step.needsAt + i);
    const place = placeOf(process, need);
    let number = 0;
    for (let n = need.count; n > 0; n--) {
      const token = take(place);
      number = token.cargo;
      if (hasFlow) flowNeeded(token.node);
      if (token.time < latest) continue;
      const isLater = token.time > latest;
      tied = isLater ? 0 : 1;
      if (!isLater && place.rank >= rank) continue;
      latest = token.time;
      node = token.node;
      rank = place.rank;
    }
    keepNumber(process, need.takes, number);
    changed(place);
  }
  if (hasFlow) flowNeeded(process.head);
  process.head = node;
  process.headTime = latest;
  // Where nothing has completed yet, as at the very beginning, nothing is tied.
  process.tied = node === -1 ? 0 : tied;
  process.phase = IDLE;
}

export function keepNumber(process: Process, register: i32, number: i32): void {
  if (register === CARGO) process.cargo = number;
  else if (register !== NO_REGISTER) process.helper = number;
}

function showWaiting(place: Place): void {
  for (let i = 0; i < place.length; i++) {
    const process = waiterAt(place, i);
    const state = waitingState(place, process);
    const resource = resourceAt(process.resource);
    if (state === -1 || !differs(resource, stateAt(state))) continue;
    show(resource, stateAt(state), false);
    if (hasLog) logWait(process, resource);
  }
}

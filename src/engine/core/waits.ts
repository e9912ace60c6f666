// How a process comes to what it needs: it takes it at once, stands in line, is served, or loses its patience.
import { link } from "./chain.ts";
import { now } from "./clock.ts";
import { drawTicks } from "./draws.ts";
import { clearDue, setDue } from "./eventList.ts";
import { reach } from "./follow.ts";
import { changed, isReady, join, lengths, nextChanged, placeOf, serve, waiters, waitingState } from "./lines.ts";
import {
  CARGO,
  FLAGS,
  IDLE,
  NEED_SIZE,
  NEEDING,
  NEEDS,
  NEEDS_AT,
  NO_REGISTER,
  OWN_RANK,
  PATIENCE,
  PATIENCE_ACTIVITY,
  PATIENCE_ENDS,
  PATIENCE_NEXT,
  TAKES,
  TAKES_ALONE,
  TOKENS,
  WAITS_UNSEEN,
} from "./numbers.ts";
import { askedAt, cargo, hand, head, headTime, phase, priority, resumesAt, row, tied } from "./processes.ts";
import { flowNeeded, hasFlow, hasLog, logWait } from "./records.ts";
import { differs, show } from "./states.ts";
import { holdBack, leaveLine } from "./stops.ts";
import { fact, lists, ownResource, rank, rowReals, takersAt } from "./tables.ts";
import { cargoes, nodes, take, times } from "./tokens.ts";

/** Serves whoever is next at a place where something has changed, -1 where nobody is: those who wait on then show what for. */
export function serveNext(): i32 {
  const place = nextChanged();
  const process = serve(place);
  if (process === -1) showWaiting(place);
  else if (fact(unchecked(row[process]), PATIENCE) !== -1) clearDue(process);
  return process;
}

/** True where nobody else may want what the process needs, and all is there; otherwise it stands in line. */
export function maySelfServe(process: i32): bool {
  const step = unchecked(row[process]);
  if ((fact(step, FLAGS) & TAKES_ALONE) === 0 || !isReady(process)) {
    wait(process, step);
    return false;
  }
  // Its code takes what it needs; where that is only the end of a stop there is nothing to take.
  if (fact(step, NEEDS) === 0) takeAll(process);
  return true;
}

function wait(process: i32, step: i32): void {
  unchecked((phase[process] = NEEDING));
  unchecked((askedAt[process] = now));
  unchecked((priority[process] = rowReals[2 * step]));
  unchecked((resumesAt[process] = PATIENCE_ENDS));
  const patience = fact(step, PATIENCE);
  if (patience === -1) clearDue(process);
  else setDue(process, now + drawTicks(process, patience));
  if (fact(step, NEEDS) === 0) holdBack(process);
  else join(placeOf(process, fact(step, NEEDS_AT)), process, (fact(step, FLAGS) & WAITS_UNSEEN) === 0);
}

/** The wait was a step of its own: it binds what follows. */
export function losePatience(process: i32): void {
  const step = unchecked(row[process]);
  leaveLine(process);
  if (!hasFlow) unchecked((head[process] = link(fact(step, PATIENCE_ACTIVITY), askedAt[process], head[process], 0)));
  unchecked((phase[process] = IDLE));
  unchecked((headTime[process] = now));
  reach(process, fact(step, PATIENCE_NEXT));
}

/** Takes all needs; the latest of their completions and of the process's own last step binds what follows. */
export function takeAll(process: i32): void {
  const step = unchecked(row[process]);
  const first = fact(step, NEEDS_AT);
  const end = first + fact(step, NEEDS) * NEED_SIZE;
  let latest = unchecked(headTime[process]);
  let node = unchecked(head[process]);
  let rankSoFar = OWN_RANK;
  let isTied = 0;
  for (let need = first; need < end; need += NEED_SIZE) {
    const place = placeOf(process, need);
    const placeRank = unchecked(rank[place]);
    let number = 0;
    for (let n = unchecked(lists[need + TOKENS]); n > 0; n--) {
      const slot = take(place);
      const time = unchecked(times[slot]);
      number = unchecked(cargoes[slot]);
      if (hasFlow) flowNeeded(unchecked(nodes[slot]));
      if (time < latest) continue;
      const isLater = time > latest;
      isTied = isLater ? 0 : 1;
      if (!isLater && placeRank >= rankSoFar) continue;
      latest = time;
      node = unchecked(nodes[slot]);
      rankSoFar = placeRank;
    }
    const takes = unchecked(lists[need + TAKES]);
    if (takes === CARGO) unchecked((cargo[process] = number));
    else if (takes !== NO_REGISTER) unchecked((hand[process] = number));
    changed(place);
  }
  if (hasFlow) flowNeeded(unchecked(head[process]));
  unchecked((head[process] = node));
  unchecked((headTime[process] = latest));
  // Where nothing has completed yet, as at the very beginning, nothing is tied.
  unchecked((tied[process] = node === -1 ? 0 : isTied));
  unchecked((phase[process] = IDLE));
}

function showWaiting(place: i32): void {
  const from = unchecked(takersAt[place]);
  for (let i = 0; i < unchecked(lengths[place]); i++) {
    const process = unchecked(waiters[from + i]);
    const state = waitingState(place, process);
    const resource = unchecked(ownResource[process]);
    if (state === -1 || !differs(resource, state)) continue;
    show(resource, state, false);
    if (hasLog) logWait(process, resource);
  }
}

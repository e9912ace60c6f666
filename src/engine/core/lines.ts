// Who waits at each place, and whom its rule serves next.
import { now } from "./clock.ts";
import {
  BY,
  BY_PRIORITY,
  GATES,
  GATES_AT,
  IS_QUIET,
  LONGEST_SINCE_SERVED,
  MEANWHILE,
  NEED_SIZE,
  NEEDS,
  NEEDS_AT,
  OTHERS_TURN,
  PLACE,
  ROTATION,
  TOKENS,
  URGENCY,
} from "./numbers.ts";
import { askedAt, priority, register, row, servedAt } from "./processes.ts";
import { stopCount } from "./states.ts";
import { fact, lines, linesAt, lists, noWholes, ownResource, rule, takers, takersAt } from "./tables.ts";
import { sizes } from "./tokens.ts";

/** Places at which something has changed. */
export let touchedPlaces = 0;
/** Waiting processes of each place, in no order, from where its takers begin; the first `lengths` of them count. */
export let waiters = noWholes;
export let lengths = noWholes;
let touched = noWholes;
/** Taker whose turn it is, by its number among the takers. */
let turn = noWholes;

export function openLines(): void {
  const places = rule.length;
  waiters = new StaticArray<i32>(takers.length);
  lengths = new StaticArray<i32>(places);
  touched = new StaticArray<i32>(places);
  turn = new StaticArray<i32>(places);
}

/** `isNews`: somebody may be served now, or show something else. */
export function join(place: i32, process: i32, isNews: bool): void {
  const length = unchecked(lengths[place]);
  unchecked((waiters[takersAt[place] + length] = process));
  unchecked((lengths[place] = length + 1));
  if (isNews) touch(place);
}

export function leave(place: i32, process: i32): void {
  const from = unchecked(takersAt[place]);
  let at = from;
  while (unchecked(waiters[at]) !== process) at++;
  const length = unchecked(lengths[place]) - 1;
  unchecked((lengths[place] = length));
  unchecked((waiters[at] = waiters[from + length]));
}

/** Something at this place has changed: whoever needs it may now be served, or wait for something else. */
export function changed(place: i32): void {
  const end = unchecked(linesAt[place + 1]);
  for (let i = unchecked(linesAt[place]); i < end; i++) {
    const line = unchecked(lines[i]);
    if (unchecked(lengths[line]) > 0) touch(line);
  }
}

export function changedAll(): void {
  for (let place = 0; place < lengths.length; place++) if (unchecked(lengths[place]) > 0) touch(place);
}

/** The first place at which something has changed; it counts as seen. */
export function nextChanged(): i32 {
  let place = 0;
  while (unchecked(touched[place]) === 0) place++;
  unchecked((touched[place] = 0));
  touchedPlaces--;
  return place;
}

function touch(place: i32): void {
  if (unchecked(touched[place]) === 1) return;
  unchecked((touched[place] = 1));
  touchedPlaces++;
}

/** Takes out of the line whoever is served next; -1 where nobody can be. */
export function serve(place: i32): i32 {
  const process = foremost(place, true);
  if (process === -1) return -1;
  leave(place, process);
  const by = unchecked(rule[place]);
  // A process counts as served by the place that goes by it: one that fetched an operator has not had its shot.
  if (by === LONGEST_SINCE_SERVED) unchecked((servedAt[process] = now));
  if (by === ROTATION) {
    const from = unchecked(takersAt[place]);
    const count = unchecked(takersAt[place + 1]) - from;
    let number = 0;
    while (unchecked(takers[from + number]) !== process) number++;
    unchecked((turn[place] = (number + 1) % count));
  }
  return process;
}

export function isReady(process: i32): bool {
  const step = unchecked(row[process]);
  let at = fact(step, GATES_AT);
  for (let i = fact(step, GATES); i > 0; i--) if (unchecked(stopCount[unchecked(lists[at++])]) > 0) return false;
  at = fact(step, NEEDS_AT);
  for (let i = fact(step, NEEDS); i > 0; i--) {
    if (!isMet(process, at)) return false;
    at += NEED_SIZE;
  }
  return true;
}

/** A need is told by where it stands in the lists. */
export function isMet(process: i32, need: i32): bool {
  return unchecked(sizes[placeOf(process, need)]) >= unchecked(lists[need + TOKENS]);
}

export function placeOf(process: i32, need: i32): i32 {
  return unchecked(lists[need + PLACE]) + register(process, unchecked(lists[need + BY]));
}

/** The state in which a waiter shows its first need that is not met, or -1. */
export function waitingState(place: i32, process: i32): i32 {
  const step = unchecked(row[process]);
  const first = fact(step, NEEDS_AT);
  const end = first + fact(step, NEEDS) * NEED_SIZE;
  for (let need = first; need < end; need += NEED_SIZE) {
    if (unchecked(lists[need + IS_QUIET]) === 1 && !isMet(process, need)) return -1;
  }
  for (let need = first; need < end; need += NEED_SIZE) {
    if (!isMet(process, need)) return unchecked(lists[need + MEANWHILE]);
    if (need === first && process !== foremost(place, false)) return unchecked(lists[need + OTHERS_TURN]);
  }
  return -1;
}

/** The waiter that the rule names, among those that could start or among all; -1 where there is none. */
function foremost(place: i32, onlyReady: bool): i32 {
  const by = unchecked(rule[place]);
  const from = unchecked(takersAt[place]);
  const count = unchecked(lengths[place]);
  if (by === ROTATION) {
    const next = inTurn(place);
    for (let i = from; i < from + count; i++) {
      if (unchecked(waiters[i]) === next) return !onlyReady || isReady(next) ? next : -1;
    }
    return -1;
  }
  let best = -1;
  for (let i = from; i < from + count; i++) {
    const process = unchecked(waiters[i]);
    if (best !== -1 && isBehind(process, best, by)) continue;
    if (!onlyReady || isReady(process)) best = process;
  }
  return best;
}

/** Whom the rule serves later; equal ones go by the order of the processes. */
function isBehind(process: i32, other: i32, by: i32): bool {
  let difference: f64 = 0;
  if (by === LONGEST_SINCE_SERVED) difference = unchecked(servedAt[process]) - unchecked(servedAt[other]);
  else if (by === BY_PRIORITY || by === URGENCY) difference = unchecked(priority[process]) - unchecked(priority[other]);
  // Urgency goes by who asked first among equals, as the usual rule does among all.
  if (by !== LONGEST_SINCE_SERVED && by !== BY_PRIORITY && difference === 0) {
    difference = unchecked(askedAt[process]) - unchecked(askedAt[other]);
  }
  return difference > 0 || (difference === 0 && process > other);
}

/** The next taker in rotation that is not stopped. */
function inTurn(place: i32): i32 {
  const from = unchecked(takersAt[place]);
  const count = unchecked(takersAt[place + 1]) - from;
  for (let i = 0; i < count; i++) {
    const process = unchecked(takers[from + ((turn[place] + i) % count)]);
    if (unchecked(stopCount[unchecked(ownResource[process])]) === 0) return process;
  }
  return -1;
}

// Follows the code of one process after another: what a step shows, takes, gives and counts, and how time goes on.
import { foldChain, isChainFull, link } from "./chain.ts";
import { now, setClock } from "./clock.ts";
import { drawTicks, ticksAt, uniform } from "./draws.ts";
import { clearDue, due, firstDue, setDue } from "./eventList.ts";
import { changed, touchedPlaces } from "./lines.ts";
import {
  ABOVE_NEXT,
  ALONE,
  BELOW_NEXT,
  CARGO,
  CHANCE,
  CHANCE_NEXT,
  CHANCE_STREAM,
  COUNT,
  DEADLOCK,
  DRAW,
  FIXED,
  FLAGS,
  GIVE,
  GIVE_CHOSEN,
  GIVE_UP,
  IDLE,
  IS_PHYSICS,
  KEEPS,
  LAW_SIZE,
  NEED,
  NEXT,
  NO_REGISTER,
  OWN_RANK,
  PASS,
  PATIENCE_ENDS,
  RELEASE,
  REST,
  SCALE_LAW,
  SCALE_SIZE,
  SCALE_STREAM,
  SHOW,
  SHOW_CHOSEN,
  STEP,
  STILL,
  STOP,
  STOPS,
  STOPS_RULE,
  TAKE,
  TAKE_ALL,
  TIME,
  TIMED,
  UNBIND,
  WEIGH,
  WEIGHS,
  ZERO_TIME_LOOP,
} from "./numbers.ts";
import { cargo, cycle, hand, head, headTime, kept, phase, register, remaining, resumesAt, row, tied } from "./processes.ts";
import { flowNeeded, hasFlow, hasLog, logStart, passNode } from "./records.ts";
import { isWorking, show } from "./states.ts";
import { completed, endedFor, inForce, lastChanged, release, stop } from "./stops.ts";
import { code, fact, firstState, laws, limits, reachedAt, rowReals, scales, startsAt, stoppedActivity } from "./tables.ts";
import { count, hasManyMarks } from "./tally.ts";
import { cargoes, nodes, put, take, times } from "./tokens.ts";
import { losePatience, maySelfServe, serveNext, takeAll } from "./waits.ts";

/** Steps within one instant after which time is taken to stand still for ever. */
const HOPS_AN_INSTANT = 100_000;

/** Nobody in particular: the loop goes by the event list. */
const NOBODY = -1;

/** Why nothing can go on; 0 while it can. */
export let standstill = 0;
/** Tick since when it cannot. */
export let standsSince: f64 = 0;
/** The observation is over: the chain must keep every node, since it is still cut at the end of the observation. */
let keepsChain = false;
/** Steps reached in the present instant. */
let hops = 0;

// While a step takes its tokens: the rank of the completion that binds it so far, and what bound the process before.
let rankSoFar = 0;
let own = -1;

export function keepChain(): void {
  keepsChain = true;
}

/** A process comes to a step. */
export function reach(process: i32, to: i32): void {
  follow(process, unchecked(reachedAt[to]), 0);
}

/** Begins the step for which the process has all that it needs. */
export function begin(process: i32): void {
  clearDue(process);
  follow(process, unchecked(startsAt[unchecked(row[process])]), 0);
}

/** Runs every instant up to and including `tick`; returns true where the host should take the marks first and then ask again. */
export function runUntil(tick: f64): bool {
  while (standstill === 0 && follow(NOBODY, REST, tick)) {
    if (isChainFull() && !keepsChain) foldChain();
    if (hasManyMarks()) return true;
  }
  setClock(tick);
  return false;
}

/**
 * Follows the code of one process until it rests, and then, unless only that process was asked for, that of the next one whose time is up.
 * Returns true where chain or marks are full and there is more to do.
 */
function follow(asked: i32, from: i32, untilTick: f64): bool {
  let process = asked;
  let at = from;
  while (true) {
    switch (unchecked(code[at])) {
      case REST: {
        if (asked !== NOBODY || standstill !== 0) return false;
        process = firstDue();
        const tick = process === -1 ? Infinity : unchecked(due[process]);
        // Whatever completes at an instant does so before anybody is served at it.
        if (tick > now) {
          if (touchedPlaces > 0) {
            process = serveNext();
            if (process !== -1) at = unchecked(startsAt[unchecked(row[process])]);
            break;
          }
          if (process === -1) stand(DEADLOCK);
          if (tick > untilTick) return false;
          if ((isChainFull() && !keepsChain) || hasManyMarks()) return true;
          setClock(tick);
          hops = 0;
        }
        at = unchecked(resumesAt[process]);
        if (at !== PATIENCE_ENDS) {
          unchecked((headTime[process] = now));
          unchecked((phase[process] = IDLE));
          if (inForce > 0) completed(process);
        }
        break;
      }
      case STEP: {
        if (++hops > HOPS_AN_INSTANT) {
          stand(ZERO_TIME_LOOP);
          at = REST;
          break;
        }
        unchecked((row[process] = code[at + 1]));
        at += 2;
        break;
      }
      case NEED: {
        at = maySelfServe(process) ? at + 1 : REST;
        break;
      }
      case TAKE: {
        takeOne(process, at);
        at += 6;
        break;
      }
      case TAKE_ALL: {
        takeAll(process);
        at += 1;
        break;
      }
      case STOP: {
        stop(fact(row[process], STOPS), fact(row[process], STOPS_RULE));
        at += 1;
        break;
      }
      case SHOW: {
        const end = at + 2 + 2 * unchecked(code[at + 1]);
        const isPhysics = (fact(unchecked(row[process]), FLAGS) & IS_PHYSICS) !== 0;
        for (at += 2; at < end; at += 2) {
          const resource = unchecked(code[at]);
          show(resource, unchecked(code[at + 1]), isPhysics);
          if (hasLog) logStart(process, resource);
        }
        break;
      }
      case SHOW_CHOSEN: {
        showChosen(process, at);
        at += 4 + unchecked(code[at + 3]);
        break;
      }
      case TIME: {
        passTime(process, at);
        at = REST;
        break;
      }
      case PASS: {
        if (hasFlow) passNode(process, 0);
        at += 1;
        break;
      }
      case UNBIND: {
        unchecked((headTime[process] = -1));
        at += 1;
        break;
      }
      case GIVE: {
        const place = unchecked(code[at + 1]);
        put(place, unchecked(head[process]), unchecked(cargo[process]));
        changed(place);
        at += 2;
        break;
      }
      case GIVE_CHOSEN: {
        giveChosen(process, at);
        at += 5;
        break;
      }
      case COUNT: {
        count(unchecked(code[at + 1]), unchecked(code[at + 2]));
        at += 3;
        break;
      }
      case RELEASE: {
        release(unchecked(code[at + 1]));
        at += 2;
        break;
      }
      case WEIGH: {
        const next = weigh(process, fact(row[process], WEIGHS));
        at = next === -1 ? at + 1 : unchecked(reachedAt[next]);
        break;
      }
      case CHANCE: {
        const step = unchecked(row[process]);
        const isLucky = uniform(fact(step, CHANCE_STREAM)) >= unchecked(rowReals[2 * step + 1]);
        at = isLucky ? at + 1 : unchecked(reachedAt[fact(step, CHANCE_NEXT)]);
        break;
      }
      case NEXT: {
        unchecked((cycle[process] = cycle[process] + code[at + 2]));
        at = unchecked(code[at + 1]);
        break;
      }
      case GIVE_UP: {
        losePatience(process);
        at = REST;
        break;
      }
      default:
        unreachable();
    }
  }
}

function stand(why: i32): void {
  standstill = why;
  standsSince = now;
}

/** The latest of a step's completions and of the process's own last step binds what follows. */
function takeOne(process: i32, at: i32): void {
  const place = unchecked(code[at + 1]);
  const placeRank = unchecked(code[at + 2]);
  const takes = unchecked(code[at + 3]);
  if (unchecked(code[at + 4]) === 1) {
    rankSoFar = OWN_RANK;
    own = unchecked(head[process]);
    unchecked((tied[process] = 0));
    unchecked((phase[process] = IDLE));
  }
  const slot = take(place);
  const given = unchecked(times[slot]);
  const latest = unchecked(headTime[process]);
  if (hasFlow) flowNeeded(unchecked(nodes[slot]));
  if (given >= latest) {
    const isLater = given > latest;
    unchecked((tied[process] = isLater ? 0 : 1));
    if (isLater || placeRank < rankSoFar) {
      unchecked((headTime[process] = given));
      unchecked((head[process] = nodes[slot]));
      rankSoFar = placeRank;
    }
  }
  if (takes === CARGO) unchecked((cargo[process] = cargoes[slot]));
  else if (takes !== NO_REGISTER) unchecked((hand[process] = cargoes[slot]));
  changed(place);
  if (unchecked(code[at + 5]) === 1) {
    if (hasFlow) flowNeeded(own);
    // Where nothing has completed yet, as at the very beginning, nothing is tied.
    if (unchecked(head[process]) === -1) unchecked((tied[process] = 0));
  }
}

/** The step lasts from now on, and what bound its start is kept. */
function passTime(process: i32, at: i32): void {
  const activity = unchecked(code[at + 4]);
  const clock = unchecked(code[at + 5]);
  const ticks = timeOf(process, at);
  if (hasFlow) passNode(process, ticks);
  else if (activity !== -1) {
    if (lastChanged !== -1 && unchecked(headTime[process]) < now) linkStop(process);
    unchecked((head[process] = link(activity, now, head[process], tied[process])));
    unchecked((tied[process] = 0));
  }
  unchecked((resumesAt[process] = at + 6));
  // Of a step with a clock the time passes only while that resource works.
  if (clock === -1 || isWorking(clock)) {
    unchecked((phase[process] = TIMED));
    setDue(process, now + ticks);
  } else {
    unchecked((phase[process] = STILL));
    unchecked((remaining[process] = ticks));
    clearDue(process);
  }
}

function timeOf(process: i32, at: i32): f64 {
  const law = unchecked(code[at + 1]) + unchecked(code[at + 2]) * unchecked(cargo[process]);
  const fixed = unchecked(laws[law * LAW_SIZE + FIXED]);
  if (fixed >= 0) return fixed;
  const stream = unchecked(code[at + 3]);
  return stream === -1 ? drawTicks(process, fact(row[process], DRAW)) : ticksAt(law, uniform(stream));
}

/** What lies between a step's latest completion and its start can only be a stop. */
function linkStop(process: i32): void {
  const latest = unchecked(headTime[process]);
  // What comes after a timetable alone has nothing before it that the stop could have interrupted.
  if (latest < 0) return;
  const activity = unchecked(stoppedActivity[endedFor(row[process])]);
  unchecked((head[process] = link(activity, latest, head[process], 0)));
}

function showChosen(process: i32, at: i32): void {
  const first = unchecked(code[at + 1]);
  const states = at + 4;
  const state = unchecked(code[at + 3]) === 1 ? unchecked(code[states]) : unchecked(code[states + cargo[process]]);
  const resource = first + register(process, unchecked(code[at + 2]));
  const isPhysics = (fact(unchecked(row[process]), FLAGS) & IS_PHYSICS) !== 0;
  // Those of one family have the same states in the same order.
  show(resource, state + unchecked(firstState[resource]) - unchecked(firstState[first]), isPhysics);
  if (hasLog) logStart(process, resource);
}

function giveChosen(process: i32, at: i32): void {
  const place = unchecked(code[at + 1]) + register(process, unchecked(code[at + 2]));
  const number = unchecked(code[at + 4]) === CARGO ? unchecked(cargo[process]) : unchecked(hand[process]);
  for (let n = unchecked(code[at + 3]); n > 0; n--) put(place, unchecked(head[process]), number);
  changed(place);
}

/** Returns the row to leave for, -1 where the number is kept or within its limits. */
function weigh(process: i32, scale: i32): i32 {
  const at = scale * SCALE_SIZE;
  const law = unchecked(scales[at + SCALE_LAW]);
  const fixed = unchecked(laws[law * LAW_SIZE + FIXED]);
  const drawn = fixed >= 0 ? fixed : ticksAt(law, uniform(unchecked(scales[at + SCALE_STREAM])));
  if (unchecked(scales[at + KEEPS]) === 1) {
    unchecked((kept[process] = drawn));
    return -1;
  }
  const sum = unchecked(scales[at + ALONE]) === 1 ? drawn : unchecked(kept[process]) + drawn;
  if (sum < unchecked(limits[2 * scale])) return unchecked(scales[at + BELOW_NEXT]);
  return sum > unchecked(limits[2 * scale + 1]) ? unchecked(scales[at + ABOVE_NEXT]) : -1;
}

// Follows the code of one process after another: what a step shows, takes, gives and counts, and how time goes on.
import { foldChain, isChainFull, link } from "./chain.ts";
import { now, setClock } from "./clock.ts";
import { drawTicks, lawAt, nextDrawn, nextTicks, uniform } from "./draws.ts";
import { clearDue, firstDue, setDue } from "./eventList.ts";
import { changed, touchedPlaces } from "./lines.ts";
import {
  AMOUNTS,
  CARGO,
  CHANCE,
  COUNT,
  DEADLOCK,
  GIVE,
  GIVE_CHOSEN,
  GIVE_UP,
  IDLE,
  IS_PHYSICS,
  LIMITS,
  NEED,
  NEXT,
  OWN_RANK,
  PASS,
  PATIENCE_ENDS_AT,
  RELEASE,
  REST,
  RESTS_AT,
  SCALES,
  SHOW,
  SHOW_CHOSEN,
  STEP,
  STILL,
  STOP,
  TAKE,
  TAKE_ALL,
  TIME,
  TIMED,
  UNBIND,
  WEIGH,
  ZERO_TIME_LOOP,
} from "./numbers.ts";
import { Process, processAt, register } from "./process.ts";
import { flowNeeded, hasFlow, hasLog, logStart, passNode } from "./records.ts";
import { resourceAt, stateAt } from "./resource.ts";
import { realAt, sectionOfWholes } from "./sections.ts";
import { chanceOf, codeAt, stepAt } from "./steps.ts";
import { isWorking, show, showAhead, showFreely } from "./states.ts";
import { completed, endedFor, inForce, lastChanged, release, stop } from "./stops.ts";
import { count, counterAt, hasManyMarks } from "./tally.ts";
import { placeAt, put, take } from "./tokens.ts";
import { hasWorkClocks } from "./workClocks.ts";
import { keepNumber, losePatience, maySelfServe, serveNext, takeAll } from "./waits.ts";

/** A number that is drawn and judged. */
@unmanaged
class Scale {
  law: i32 = 0;
  stream: i32 = 0;
  keeps: i32 = 0;
  alone: i32 = 0;
  belowNext: i32 = 0;
  aboveNext: i32 = 0;
}

/** Numbers of the operation TIME, itself included. */
const TIME_SIZE = 7;

/** Steps within one instant after which time is taken to stand still for ever. */
const HOPS_AN_INSTANT = 100_000;

/** Why nothing can go on, 0 while it can; and the tick since when. */
export let standstill = 0;
export let standsSince: f64 = 0;
/** The observation is over: the chain must keep every node, since it is still cut at the end of the observation. */
let keepsChain = false;
/** Until when steps that nobody else sees or touches may be done ahead of the clock: what is observed then must be seen. */
let horizon: f64 = -1;
/** Steps reached in the present instant. */
let hops = 0;

// While a step takes its tokens: the rank of the completion that binds it so far, and what bound the process before.
let rank = 0;
let own = -1;

export function keepChain(): void {
  keepsChain = true;
}

/** Follows the code of one process until it rests. */
export function followOne(process: Process, at: usize): void {
  follow(process, at, 0);
}

/** Runs every instant up to and including `tick`; returns true where the host should take the marks first and then ask again. */
export function runUntil(tick: f64): bool {
  horizon = hasLog || hasFlow ? -1 : tick;
  while (standstill === 0 && follow(null, codeAt(RESTS_AT), tick)) {
    if (mustFold()) foldChain();
    if (hasManyMarks()) return true;
  }
  setClock(tick);
  return false;
}

function mustFold(): bool {
  return !keepsChain && isChainFull();
}

/** A number that follows the operation. */
function operand(at: usize, number: i32): i32 {
  return load<i32>(at + ((<usize>number) << 2));
}

/**
 * Follows the code of one process until it rests, and then, unless only that process was asked for, that of the next one whose time is up.
 * Returns true where chain or marks are full and there is more to do.
 */
function follow(asked: Process | null, from: usize, untilTick: f64): bool {
  let process = changetype<Process>(changetype<usize>(asked));
  let at = from;
  while (true) {
    switch (load<i32>(at)) {
      case NEXT: {
        process.cycle += operand(at, 2);
        at = codeAt(operand(at, 1));
      }
      // falls through
      case STEP: {
        if (++hops > HOPS_AN_INSTANT) {
          stand(ZERO_TIME_LOOP);
          at = codeAt(RESTS_AT);
          break;
        }
        process.step = stepAt(operand(at, 1));
        at += 8;
        // Mostly states are shown next.
        if (load<i32>(at) !== SHOW) break;
      }
      // falls through
      case SHOW: {
        const end = at + 8 + ((<usize>operand(at, 1)) << 3);
        for (at += 8; at < end; at += 8) {
          const resource = resourceAt(operand(at, 0));
          const state = stateAt(operand(at, 1));
          if (resource.stops === 0) showFreely(resource, state);
          else show(resource, state, isPhysics(process));
          if (hasLog) logStart(process, resource);
        }
        // Mostly time passes next.
        if (load<i32>(at) !== TIME) break;
      }
      // falls through
      case TIME: {
        passTime(process, at);
        at = codeAt(RESTS_AT);
      }
      // falls through
      case REST: {
        if (asked !== null || standstill !== 0) return false;
        const next = firstDue();
        const tick = next === null ? Infinity : next.due;
        // Whatever completes at an instant does so before anybody is served at it.
        if (tick > now) {
          if (touchedPlaces > 0) {
            let served = serveNext();
            while (served === null && touchedPlaces > 0 && !hasWorkClocks()) served = serveNext();
            if (served !== null) {
              process = served;
              at = codeAt(process.step!.startsAt);
              break;
            }
            // Who waits on may have shown it, and thereby wound a clock or stopped it: the next event is looked for anew.
            if (hasWorkClocks()) break;
          }
          if (next === null) stand(DEADLOCK);
          if (tick > untilTick) return false;
          if (mustFold() || hasManyMarks()) return true;
          setClock(tick);
          hops = 0;
        }
        process = next!;
        at = process.resumesAt;
        if (at !== codeAt(PATIENCE_ENDS_AT)) {
          process.headTime = now;
          process.phase = IDLE;
          if (inForce > 0) completed(process.step!);
        }
        break;
      }
      case NEED: {
        at = maySelfServe(process) ? at + 4 : codeAt(RESTS_AT);
        break;
      }
      case TAKE: {
        takeOne(process, at);
        at += 24;
        break;
      }
      case TAKE_ALL: {
        takeAll(process);
        at += 4;
        break;
      }
      case STOP: {
        stopResource(process);
        at += 4;
        break;
      }
      case SHOW_CHOSEN: {
        showChosen(process, at);
        at += (4 + <usize>operand(at, 3)) << 2;
        break;
      }
      case PASS: {
        if (hasFlow) passNode(process, 0);
        at += 4;
        break;
      }
      case UNBIND: {
        process.headTime = -1;
        at += 4;
        break;
      }
      case GIVE: {
        const place = placeAt(operand(at, 1));
        put(place, process.head, process.cargo);
        changed(place);
        at += 8;
        break;
      }
      case GIVE_CHOSEN: {
        giveChosen(process, at);
        at += 20;
        break;
      }
      case COUNT: {
        count(counterAt(operand(at, 1)), realAt(AMOUNTS, operand(at, 2)));
        at += 12;
        break;
      }
      case RELEASE: {
        release(resourceAt(operand(at, 1)));
        at += 8;
        break;
      }
      case WEIGH: {
        const next = weigh(process, process.step!.scale);
        at = next === -1 ? at + 4 : codeAt(stepAt(next).reachedAt);
        break;
      }
      case CHANCE: {
        const step = process.step!;
        at = uniform(step.chanceStream) >= chanceOf(step) ? at + 4 : codeAt(stepAt(step.chanceNext).reachedAt);
        break;
      }
      case GIVE_UP: {
        losePatience(process);
        at = codeAt(RESTS_AT);
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

function isPhysics(process: Process): bool {
  return (process.step!.flags & IS_PHYSICS) !== 0;
}

/** A stop comes of itself: what is bound by its repair is bound, before that, by what the stop interrupted. */
function stopResource(process: Process): void {
  const resource = resourceAt(process.step!.stops);
  stop(resource, process.step!.stopsRule);
  if (resource.worker === -1 || hasFlow) return;
  process.head = processAt(resource.worker).head;
  process.headTime = now;
  process.tied = 0;
}

/** The latest of a step's completions and of the process's own last step binds what follows. */
function takeOne(process: Process, at: usize): void {
  const place = placeAt(operand(at, 1));
  if (operand(at, 4) === 1) {
    rank = OWN_RANK;
    own = process.head;
    process.tied = 0;
    process.phase = IDLE;
  }
  const token = take(place);
  if (hasFlow) flowNeeded(token.node);
  if (token.time >= process.headTime) {
    const isLater = token.time > process.headTime;
    process.tied = isLater ? 0 : 1;
    if (isLater || place.rank < rank) {
      process.headTime = token.time;
      process.head = token.node;
      rank = place.rank;
    }
  }
  keepNumber(process, operand(at, 3), token.cargo);
  changed(place);
  if (operand(at, 5) === 1) {
    if (hasFlow) flowNeeded(own);
    // Where nothing has completed yet, as at the very beginning, nothing is tied.
    if (process.head === -1) process.tied = 0;
  }
}

/** The step lasts from now on, and what bound its start is kept; so do those after it that nobody else sees or touches. */
function passTime(process: Process, from: usize): void {
  let at = from;
  let start = now;
  let ticks = timeOf(process, at);
  const activity = operand(at, 4);
  if (hasFlow) passNode(process, ticks);
  else if (activity !== -1) {
    if (lastChanged !== null && process.headTime < now) linkStop(process);
    process.head = link(activity, now, process.head, process.tied);
    process.tied = 0;
  }
  while (operand(at, 6) === 1 && start + ticks <= horizon) {
    // The next step's code: STEP and its row, SHOW of 1 state with resource and state, then TIME.
    const shown = resourceAt(operand(at, TIME_SIZE + 4));
    if (!showAhead(shown, stateAt(operand(at, TIME_SIZE + 5)), start + ticks)) break;
    start += ticks;
    process.step = stepAt(operand(at, TIME_SIZE + 1));
    at += 4 * (TIME_SIZE + 6);
    ticks = timeOf(process, at);
    process.head = link(operand(at, 4), start, process.head, 0);
  }
  process.resumesAt = at + 4 * TIME_SIZE;
  const clock = operand(at, 5);
  // Of a step with a clock the time passes only while that resource works.
  if (clock === -1 || isWorking(resourceAt(clock))) {
    process.phase = TIMED;
    setDue(process, start + ticks);
  } else {
    process.phase = STILL;
    process.remaining = ticks;
    clearDue(process);
  }
}

function timeOf(process: Process, at: usize): f64 {
  const kind = operand(at, 3);
  if (kind !== -1) return nextDrawn(kind);
  const fixed = lawAt(operand(at, 1) + operand(at, 2) * process.cargo).fixed;
  return fixed >= 0 ? fixed : drawTicks(process, process.step!.draw);
}

/** What lies between a step's latest completion and its start can only be a stop. */
function linkStop(process: Process): void {
  // What comes after a timetable alone has nothing before it that the stop could have interrupted.
  if (process.headTime < 0) return;
  process.head = link(endedFor(process.step!).stoppedActivity, process.headTime, process.head, 0);
}

function showChosen(process: Process, at: usize): void {
  const first = resourceAt(operand(at, 1));
  const state = operand(at, 3) === 1 ? operand(at, 4) : operand(at, 4 + process.cargo);
  const resource = resourceAt(first.number + register(process, operand(at, 2)));
  // Those of one family have the same states in the same order.
  show(resource, stateAt(state + resource.firstState - first.firstState), isPhysics(process));
  if (hasLog) logStart(process, resource);
}

function giveChosen(process: Process, at: usize): void {
  const place = placeAt(operand(at, 1) + register(process, operand(at, 2)));
  const number = operand(at, 4) === CARGO ? process.cargo : process.hand;
  for (let n = operand(at, 3); n > 0; n--) put(place, process.head, number);
  changed(place);
}

/** Returns the row to leave for, -1 where the number is kept or within its limits. */
function weigh(process: Process, number: i32): i32 {
  const scale = changetype<Scale>(sectionOfWholes(SCALES) + <usize>number * offsetof<Scale>());
  const fixed = lawAt(scale.law).fixed;
  const drawn = fixed >= 0 ? fixed : nextTicks(scale.law, scale.stream);
  if (scale.keeps === 1) {
    process.kept = drawn;
    return -1;
  }
  const sum = scale.alone === 1 ? drawn : process.kept + drawn;
  if (sum < realAt(LIMITS, 2 * number)) return scale.belowNext;
  return sum > realAt(LIMITS, 2 * number + 1) ? scale.aboveNext : -1;
}

// Follows the code of one process after another: what a step shows, takes, gives and counts, and how time goes on.
import { foldChain, isChainFull } from "../observed/chain.ts";
import { now, setClock } from "../state/clock.ts";
import { uniform } from "../state/draws.ts";
import { firstDue } from "../state/eventList.ts";
import { entryCount } from "../observed/eventLog.ts";
import { changed } from "./lines.ts";
import {
  CHANCE,
  COUNT,
  DEADLOCK,
  GIVE,
  GIVE_CHOSEN,
  GIVE_UP,
  IDLE,
  NEED,
  NEXT,
  PASS,
  PATIENCE_ENDS_AT,
  RELEASE,
  REST,
  RESTS_AT,
  SHOW,
  SHOW_CHOSEN,
  STEP,
  STOP,
  TAKE,
  TAKE_ALL,
  TIME,
  TURN,
  TURNS,
  UNBIND,
  WEIGH,
  ZERO_TIME_LOOP,
} from "../border/numbers.ts";
import { addressAt, operand } from "../state/operands.ts";
import { giveChosen, isPhysics, showChosen, stopResource, takeOne, weigh } from "./operations.ts";
import { mayLookAheadTo, passTime } from "./passTime.ts";
import { goOn, isDue } from "../state/pause.ts";
import { Process } from "../state/process.ts";
import { hasFlow, hasLog, logStart, passNode } from "../observed/records.ts";
import { Resource, State } from "../state/resource.ts";
import { show, showFreely } from "../observed/states.ts";
import { wholeAt } from "../state/sections.ts";
import { chanceOf, codeAt, Step, stepAt } from "../state/steps.ts";
import { completed, inForce, release } from "./stops.ts";
import { count, Counter, markCount } from "../observed/tally.ts";
import { Place, put } from "../state/tokens.ts";
import { touchedPlaces } from "../state/touched.ts";
import { losePatience, maySelfServe, serveNext, takeAll } from "./waits.ts";
import { hasWorkClocks } from "../state/workClocks.ts";

/** Steps within one instant after which time is taken to stand still for ever. */
const HOPS_AN_INSTANT = 100_000;

/** Why nothing can go on, 0 while it can; and the tick since when. */
export let standstill = 0;
export let standsSince: f64 = 0;
/** The observation is over: the chain must keep every node, since it is still cut at the end of the observation. */
let keepsChain = false;
/** Steps reached in the present instant. */
let hops = 0;

export function keepChain(): void {
  keepsChain = true;
}

/** Follows the code of one process until it rests. */
export function followOne(process: Process, at: usize): void {
  follow(process, at, 0);
}

/** Runs every instant up to and including `tick`; returns true where the host should take marks and entries first and then ask again. */
export function runUntil(tick: f64): bool {
  mayLookAheadTo(hasLog || hasFlow ? -1 : tick);
  while (standstill === 0 && follow(null, codeAt(RESTS_AT), tick)) {
    goOn();
    if (isChainFull() && !keepsChain) foldChain();
    if (markCount > 0 || entryCount > 0) return true;
  }
  setClock(tick);
  return false;
}

/**
 * Follows the code of one process until it rests, and then, unless only that process was asked for, that of the next one whose time is up.
 * Returns true where the loop is to pause and there is more to do.
 */
function follow(asked: Process | null, from: usize, untilTick: f64): bool {
  let process = changetype<Process>(changetype<usize>(asked));
  let at = from;
  while (true) {
    switch (load<i32>(at)) {
      case NEXT: {
        process.cycle += operand(at, 2);
        at = addressAt(at, 1);
      }
      // falls through
      case STEP: {
        if (++hops > HOPS_AN_INSTANT) {
          stand(ZERO_TIME_LOOP);
          at = codeAt(RESTS_AT);
          break;
        }
        process.step = changetype<Step>(addressAt(at, 1));
        at += 8;
        // Mostly states are shown next.
        if (load<i32>(at) !== SHOW) break;
      }
      // falls through
      case SHOW: {
        const end = at + 8 + ((<usize>operand(at, 1)) << 3);
        for (at += 8; at < end; at += 8) {
          const resource = changetype<Resource>(addressAt(at, 0));
          const state = changetype<State>(addressAt(at, 1));
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
        // All completions of an instant come before its services.
        if (tick > now) {
          if (touchedPlaces > 0) {
            let served = serveNext();
            while (served === null && touchedPlaces > 0 && !hasWorkClocks()) served = serveNext();
            if (served !== null) {
              process = served;
              at = process.step!.startsAt;
              break;
            }
            // A process that still waits may have shown a state and so started or stopped a clock: search the next event again.
            if (hasWorkClocks()) break;
          }
          if (next === null) stand(DEADLOCK);
          if (tick > untilTick) return false;
          if (isDue) return true;
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
        at += 20;
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
        const place = changetype<Place>(addressAt(at, 1));
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
        count(changetype<Counter>(addressAt(at, 1)), load<f64>(addressAt(at, 2)));
        at += 12;
        break;
      }
      case RELEASE: {
        release(changetype<Resource>(addressAt(at, 1)));
        at += 8;
        break;
      }
      case WEIGH: {
        const next = weigh(process, process.step!.scale);
        at = next === -1 ? at + 4 : stepAt(next).reachedAt;
        break;
      }
      case CHANCE: {
        const step = process.step!;
        at = uniform(step.chanceStream) >= chanceOf(step) ? at + 4 : stepAt(step.chanceNext).reachedAt;
        break;
      }
      case TURN: {
        at = stepAt(wholeAt(TURNS, process.entry - 1)).reachedAt;
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

// The operations that do more than a line or two: what they take, stop, show and give, and what is weighed.
import { now } from "../state/clock.ts";
import { distributionAt, nextTicks } from "../state/draws.ts";
import { changed } from "./lines.ts";
import { CARGO, IDLE, IS_PHYSICS, LIMITS, OWN_RANK, SCALES } from "../border/numbers.ts";
import { addressAt, operand } from "../state/operands.ts";
import { Process, processAt, register } from "../state/process.ts";
import { flowNeeded, hasFlow, hasLog, logStart } from "../observed/records.ts";
import { resourceAt, stateAt } from "../state/resource.ts";
import { realAt, sectionOfWholes } from "../state/sections.ts";
import { show } from "../observed/states.ts";
import { stop } from "./stops.ts";
import { Place, placeAt, put, take } from "../state/tokens.ts";
import { keepNumber } from "./waits.ts";

/** A number that is drawn and judged. */
@unmanaged
class Scale {
  distribution: i32 = 0;
  stream: i32 = 0;
  keeps: i32 = 0;
  alone: i32 = 0;
  belowNext: i32 = 0;
  aboveNext: i32 = 0;
}

// While a step takes its tokens: the rank of the completion that binds it so far, and what bound the process before.
let rank = 0;
let own = -1;

/** The latest of a step's completions and of the process's own last step binds what follows. */
export function takeOne(process: Process, at: usize): void {
  const place = changetype<Place>(addressAt(at, 1));
  if (operand(at, 3) === 1) {
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
  keepNumber(process, operand(at, 2), token.cargo);
  changed(place);
  if (operand(at, 4) === 1) {
    if (hasFlow) flowNeeded(own);
    // Where nothing has completed yet, as at the very beginning, nothing is tied.
    if (process.head === -1) process.tied = 0;
  }
}

/** A stop comes of itself: what is bound by its repair is bound, before that, by what the stop interrupted. */
export function stopResource(process: Process): void {
  const resource = resourceAt(process.step!.stops);
  stop(resource, process.step!.stopsRule);
  if (resource.worker === -1 || hasFlow) return;
  process.head = processAt(resource.worker).head;
  process.headTime = now;
  process.tied = 0;
}

export function showChosen(process: Process, at: usize): void {
  const first = resourceAt(operand(at, 1));
  const state = operand(at, 3) === 1 ? operand(at, 4) : operand(at, 4 + process.cargo);
  const resource = resourceAt(first.number + register(process, operand(at, 2)));
  // Those of one family have the same states in the same order.
  show(resource, stateAt(state + resource.firstState - first.firstState), isPhysics(process));
  if (hasLog) logStart(process, resource);
}

export function giveChosen(process: Process, at: usize): void {
  const place = placeAt(operand(at, 1) + register(process, operand(at, 2)));
  const number = operand(at, 4) === CARGO ? process.cargo : process.helper;
  for (let n = operand(at, 3); n > 0; n--) put(place, process.head, number);
  changed(place);
}

/** Returns the row to leave for, -1 where the number is kept or within its limits. */
export function weigh(process: Process, number: i32): i32 {
  const scale = changetype<Scale>(sectionOfWholes(SCALES) + <usize>number * offsetof<Scale>());
  const fixed = distributionAt(scale.distribution).fixed;
  const drawn = fixed >= 0 ? fixed : nextTicks(scale.distribution, scale.stream);
  if (scale.keeps === 1) {
    process.kept = drawn;
    return -1;
  }
  const sum = scale.alone === 1 ? drawn : process.kept + drawn;
  if (sum < realAt(LIMITS, 2 * number)) return scale.belowNext;
  return sum > realAt(LIMITS, 2 * number + 1) ? scale.aboveNext : -1;
}

export function isPhysics(process: Process): bool {
  return (process.step!.flags & IS_PHYSICS) !== 0;
}

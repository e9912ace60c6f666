// The steps of all processes as the compiler writes them: what each needs, and what a stop does to it.
import { CODE, LISTS, NEEDS, STEP_REALS, STEPS } from "../border/numbers.ts";
import { realAt, sectionOfWholes, wholesOf } from "./sections.ts";
import { Place } from "./tokens.ts";

/** Absent links are -1. */
@unmanaged
export class Step {
  number: i32 = 0;
  flags: i32 = 0;
  /** Where its code lies, and where it starts when all that it needs is there; numbers at first, then turned into addresses. */
  reachedAt: usize = 0;
  startsAt: usize = 0;
  /** Where its needs, gates and occupied resources begin, and how many there are. */
  needsAt: i32 = 0;
  needs: i32 = 0;
  gatesAt: i32 = 0;
  gates: i32 = 0;
  occupiesAt: i32 = 0;
  occupies: i32 = 0;
  /** What stops of the three rules do to it. */
  whenFinishing: i32 = 0;
  whenHolding: i32 = 0;
  whenScrapping: i32 = 0;
  /** The resource that it stops, and by which rule. */
  stops: i32 = 0;
  stopsRule: i32 = 0;
  /** The draw of how long it is waited for; what that time counts as; and the step to leave for. */
  patience: i32 = 0;
  patienceActivity: i32 = 0;
  patienceNext: i32 = 0;
  draw: i32 = 0;
  activity: i32 = 0;
  clock: i32 = 0;
  scale: i32 = 0;
  chanceStream: i32 = 0;
  chanceNext: i32 = 0;
}

@unmanaged
export class Need {
  /** The first of those that a register chooses among. */
  place: Place = changetype<Place>(0);
  by: i32 = 0;
  count: i32 = 0;
  meanwhile: i32 = 0;
  othersTurn: i32 = 0;
  isQuiet: i32 = 0;
  takes: i32 = 0;
  /** Where its causes begin, and how many there are: each a resource, the state in which it is one, and the state to show then. */
  causesAt: i32 = 0;
  causes: i32 = 0;
  unused: i32 = 0;
}

let steps: usize = 0;
let allNeeds: usize = 0;
let lists: usize = 0;
let code: usize = 0;

export function openSteps(): void {
  steps = sectionOfWholes(STEPS);
  allNeeds = sectionOfWholes(NEEDS);
  lists = sectionOfWholes(LISTS);
  code = sectionOfWholes(CODE);
  const count = wholesOf(STEPS) / (offsetof<Step>() >> 2);
  for (let row = 0; row < <i32>count; row++) {
    const step = stepAt(row);
    step.reachedAt = codeAt(<i32>step.reachedAt);
    step.startsAt = codeAt(<i32>step.startsAt);
  }
}

export function stepAt(row: i32): Step {
  return changetype<Step>(steps + <usize>row * offsetof<Step>());
}

export function needAt(number: i32): Need {
  return changetype<Need>(allNeeds + <usize>number * offsetof<Need>());
}

/** A resource that a gate or a step names, or a number of a cause. */
export function listedAt(number: i32): i32 {
  return load<i32>(lists + ((<usize>number) << 2));
}

/** The place in memory of a place in the code. */
export function codeAt(place: i32): usize {
  return code + ((<usize>place) << 2);
}

export function effectOf(step: Step, rule: i32): i32 {
  return rule === 0 ? step.whenFinishing : rule === 1 ? step.whenHolding : step.whenScrapping;
}

export function priorityOf(step: Step): f64 {
  return realAt(STEP_REALS, 2 * step.number);
}

export function chanceOf(step: Step): f64 {
  return realAt(STEP_REALS, 2 * step.number + 1);
}

// The steps of a program as one flat array of whole numbers: an operation, and after it what the operation needs to know.
import {
  CARGO,
  CHANCE,
  COUNT,
  GIVE,
  GIVE_CHOSEN,
  GIVE_UP,
  NEED,
  NEXT,
  NO_REGISTER,
  PASS,
  RELEASE,
  REST,
  SHOW,
  SHOW_CHOSEN,
  STEP,
  STOP,
  TAKE,
  TAKE_ALL,
  TIME,
  UNBIND,
  WEIGH,
} from "#core/border/numbers.ts";
import type { Give, Row, Show } from "./row.ts";

export interface StepCode {
  readonly code: Int32Array;
  /** Of each row: where the process reaches it, and where the step starts when all that it needs is there. */
  readonly reachedAt: Int32Array;
  readonly startsAt: Int32Array;
  /** By number: how much a counter rises. */
  readonly amounts: Float64Array;
}

/** Places by their ranks among completions that are latest at once; rows by whether the next one may be done ahead of the clock. */
export function stepCode(rows: readonly Row[], rank: Float64Array, passages: Uint8Array): StepCode {
  // Where a process rests its code is at REST, and GIVE_UP at PATIENCE_ENDS.
  const code: number[] = [REST, GIVE_UP];
  const amounts: number[] = [];
  const reachedAt = new Int32Array(rows.length);
  const startsAt = new Int32Array(rows.length);
  const jumps = new Map<number, number>();
  rows.forEach((row, number) => {
    reachedAt[number] = code.length;
    code.push(STEP, number);
    if (row.needs.length > 0 || row.gates.length > 0) code.push(NEED);
    startsAt[number] = code.length;
    addTakes(code, row, rank);
    addStart(code, row, passages[number]!);
    addEnd(code, row, amounts);
    if (row.next === number + 1) return;
    code.push(NEXT, -1, row.next <= number ? 1 : 0);
    jumps.set(code.length - 2, row.next);
  });
  // A step may lead to one further down, whose place is known only now.
  for (const [place, row] of jumps) code[place] = reachedAt[row]!;
  return { code: Int32Array.from(code), reachedAt, startsAt, amounts: Float64Array.from(amounts) };
}

function addTakes(code: number[], { needs }: Row, rank: Float64Array): void {
  if (!needs.every(({ by, count }) => by === NO_REGISTER && count === 1)) code.push(TAKE_ALL);
  else {
    needs.forEach(({ place, takes }, i) => {
      code.push(TAKE, place, rank[place]!, takes, i === 0 ? 1 : 0, i === needs.length - 1 ? 1 : 0);
    });
  }
}

function addStart(code: number[], row: Row, passage: number): void {
  if (row.stops !== -1) code.push(STOP);
  const { draw, shows, activity, isClock } = row;
  const plain = shows.filter(isPlainShow);
  if (plain.length > 0) code.push(SHOW, plain.length);
  for (const { resource, states } of plain) code.push(resource, states[0]!);
  for (const show of shows) {
    if (!isPlainShow(show)) code.push(SHOW_CHOSEN, show.resource, show.by, show.states.length, ...show.states);
  }
  if (draw) {
    code.push(
      TIME,
      draw.firstLaw,
      draw.samplers.length > 1 ? 1 : 0,
      draw.kind,
      isClock ? -1 : activity,
      draw.clock,
      passage,
    );
    if (isClock) code.push(UNBIND);
  } else if (row.needs.length > 0) code.push(PASS);
}

function addEnd(code: number[], row: Row, amounts: number[]): void {
  for (const give of row.gives) {
    if (isPlainGive(give)) code.push(GIVE, give.place);
    else code.push(GIVE_CHOSEN, give.place, give.by, give.count, give.carries);
  }
  row.counters.forEach((counter, i) => code.push(COUNT, counter, amounts.push(row.amounts[i]!) - 1));
  if (row.releases !== -1) code.push(RELEASE, row.releases);
  if (row.scale) code.push(WEIGH);
  if (row.chance > 0) code.push(CHANCE);
}

/** Nothing has to be chosen. */
export function isPlainShow({ by, states }: Show): boolean {
  return by === NO_REGISTER && states.length === 1;
}

function isPlainGive({ by, count, carries }: Give): boolean {
  return by === NO_REGISTER && count === 1 && carries === CARGO;
}

// The steps of a program as one flat array of whole numbers: an operation, and after it what the operation needs to know.
import { LAW_SIZE } from "./lawTable.ts";
import { CARGO, NO_REGISTER, type Give, type Row, type Show } from "./row.ts";
import { STREAM_SIZE } from "./stream.ts";

/** Operations, each with the numbers that follow it. The process rests: time for the next event. */
export const REST = 0;
/** A step is reached: its row. */
export const STEP = 1;
/**
 * It starts: the place of the (first) law of its time or -1, what cargo adds to that place, the place of the stream or -1
 * where its next number is not asked for, the activity or -1 where it binds nothing, the clock or -1, where the code goes on, and from SHOWS_AT on of each state shown its resource and itself.
 */
export const START = 2;
export const SHOWS_AT = 7;
/** A token is given: its place. */
export const GIVE = 3;
/** A counter rises: the counter, the number of the amount. */
export const COUNT = 4;
/** On to another step than the following one, or to a new cycle: where its code begins, 1 where that is a new cycle. */
export const NEXT = 5;
/** The step needs something, or the end of a stop, before it starts. */
export const NEED = 6;
/** A token is taken: its place, the place's rank, the register for its number, 1 for the first of the step, 1 for the last. */
export const TAKE = 14;
/** Tokens are taken where registers choose the place or where there are several. */
export const TAKE_ALL = 15;
/** A step without time has taken what it needed: the flow record is told. */
export const PASS = 7;
/** A state is shown where resource or state go by what the process carries: the number of the show in its row. */
export const SHOW_CHOSEN = 8;
/** Tokens are given where the process's registers have a say, or where there are several: the number of the give in its row. */
export const GIVE_CHOSEN = 9;
/** The step stops a resource. */
export const STOP = 10;
/** A resource goes on: the resource. */
export const RELEASE = 11;
/** Chance decides whether the process goes on elsewhere. */
export const CHANCE = 12;
/** The process has waited as long as it will. */
export const GIVE_UP = 13;

/** A step whose end binds nothing is over. */
export const UNBIND = 16;
/** What was weighed decides whether the process goes on elsewhere. */
export const WEIGH = 17;

/** Where the code of a process that waits goes on when its patience is at an end. */
export const PATIENCE_ENDS = 1;

export interface StepCode {
  readonly code: Int32Array;
  /** Of each row: where the process reaches it, and where the step starts when all that it needs is there. */
  readonly reachedAt: Int32Array;
  readonly startsAt: Int32Array;
  /** By number: how much a counter rises. */
  readonly amounts: Float64Array;
}

/** Places by their ranks among completions that are latest at once. */
export function stepCode(rows: readonly Row[], rank: Float64Array): StepCode {
  // Where a process rests its code is 0; PATIENCE_ENDS follows.
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
    addStart(code, row);
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

function addStart(code: number[], row: Row): void {
  if (row.stops !== -1) code.push(STOP);
  const { draw, shows } = row;
  const plain = shows.filter(isPlainShow).flatMap((show) => [show.resource, show.states[0]!]);
  const isPlain = 2 * shows.length === plain.length;
  if (plain.length > 0 || (draw && isPlain)) addPlainStart(code, isPlain ? row : { ...row, draw: null }, plain);
  if (!isPlain) {
    shows.forEach((show, i) => {
      if (!isPlainShow(show)) code.push(SHOW_CHOSEN, i);
    });
    if (draw) addPlainStart(code, row, []);
  }
  if (!draw && row.needs.length > 0) code.push(PASS);
}

function addPlainStart(code: number[], { draw, activity, isClock }: Row, shows: readonly number[]): void {
  const end = code.length + SHOWS_AT + shows.length;
  if (draw) {
    const byCargo = draw.samplers.length > 1 ? LAW_SIZE : 0;
    const stream = draw.again || draw.until !== -1 ? -1 : draw.stream * STREAM_SIZE;
    const binding = isClock ? -1 : activity;
    code.push(START, draw.firstLaw * LAW_SIZE, byCargo, stream, binding, draw.clock, end, ...shows);
    if (isClock) code.push(UNBIND);
  } else code.push(START, -1, 0, -1, -1, -1, end, ...shows);
}

function addEnd(code: number[], row: Row, amounts: number[]): void {
  row.gives.forEach((give, i) => {
    if (isPlainGive(give)) code.push(GIVE, give.place);
    else code.push(GIVE_CHOSEN, i);
  });
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

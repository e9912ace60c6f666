// The steps of a program as one flat array of whole numbers: an operation, and after it what the operation needs to know.
import { LAW_SIZE } from "./lawTable.ts";
import { CARGO, NO_REGISTER, type Give, type Row, type Show } from "./row.ts";
import { STREAM_SIZE } from "./stream.ts";

/** Operations, each with the numbers that follow it. The process rests: time for the next event. */
export const REST = 0;
/** Time passes: the place of the (first) law, what cargo adds to it, the place of the stream, the activity, the clock or -1. */
export const TIME = 1;
export const TIME_SIZE = 6;
/** States are shown: how many, and of each the resource and the state. */
export const SHOW = 2;
/** On to another step: its row, 1 where that begins a new cycle, where its code begins. */
export const NEXT = 3;
/** A token is given: its place. */
export const GIVE = 4;
/** A counter rises: the counter, the number of the amount. */
export const COUNT = 5;
/** The step needs something, or the end of a stop, before it starts. */
export const NEED = 6;
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

/** Where the code of a process that waits goes on when its patience is at an end. */
export const PATIENCE_ENDS = 1;

export interface StepCode {
  readonly code: Int32Array;
  /** Of each row: where the process reaches it, where the step starts when all it needs is there, and where it ends. */
  readonly reachedAt: Int32Array;
  readonly startsAt: Int32Array;
  readonly endsAt: Int32Array;
  /** By number: how much a counter rises. */
  readonly amounts: Float64Array;
}

export function stepCode(rows: readonly Row[]): StepCode {
  // Where a process rests its code is 0; PATIENCE_ENDS follows.
  const code: number[] = [REST, GIVE_UP];
  const amounts: number[] = [];
  const reachedAt = new Int32Array(rows.length);
  const startsAt = new Int32Array(rows.length);
  const endsAt = new Int32Array(rows.length);
  const unresolved: number[] = [];
  rows.forEach((row, number) => {
    reachedAt[number] = code.length;
    if (row.needs.length > 0 || row.gates.length > 0) code.push(NEED);
    startsAt[number] = code.length;
    code.push(...startCode(row));
    endsAt[number] = code.length;
    code.push(...endCode(row, amounts));
    code.push(NEXT, row.next, row.next <= number ? 1 : 0, -1);
    unresolved.push(code.length - 1);
  });
  // A step may lead to one further down, whose place is known only now.
  rows.forEach((row, number) => (code[unresolved[number]!] = reachedAt[row.next]!));
  return { code: Int32Array.from(code), reachedAt, startsAt, endsAt, amounts: Float64Array.from(amounts) };
}

function startCode(row: Row): number[] {
  const code: number[] = [];
  if (row.stops !== -1) code.push(STOP);
  const plain = row.shows.filter(isPlainShow);
  if (plain.length > 0) code.push(SHOW, plain.length, ...plain.flatMap((show) => [show.resource, show.states[0]!]));
  row.shows.forEach((show, i) => {
    if (!isPlainShow(show)) code.push(SHOW_CHOSEN, i);
  });
  const { draw } = row;
  if (draw) {
    const byCargo = draw.samplers.length > 1 ? 1 : 0;
    code.push(TIME, draw.firstLaw * LAW_SIZE, byCargo * LAW_SIZE, draw.stream * STREAM_SIZE, row.activity, draw.clock);
  } else if (row.needs.length > 0) code.push(PASS);
  return code;
}

function endCode(row: Row, amounts: number[]): number[] {
  const code: number[] = [];
  row.gives.forEach((give, i) => {
    if (isPlainGive(give)) code.push(GIVE, give.place);
    else code.push(GIVE_CHOSEN, i);
  });
  row.counters.forEach((counter, i) => code.push(COUNT, counter, amounts.push(row.amounts[i]!) - 1));
  if (row.releases !== -1) code.push(RELEASE, row.releases);
  if (row.chance > 0) code.push(CHANCE);
  return code;
}

function isPlainShow({ by, states }: Show): boolean {
  return by === NO_REGISTER && states.length === 1;
}

function isPlainGive({ by, count, carries }: Give): boolean {
  return by === NO_REGISTER && count === 1 && carries === CARGO;
}

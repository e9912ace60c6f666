// The steps of a program as one flat array of whole numbers: an operation, and after it what the operation needs to know.
import { CARGO, NO_REGISTER, type Give, type Row, type Show } from "./row.ts";
import { STREAM_SIZE } from "./stream.ts";

/** The operations, each with the numbers that follow it. */
/** A step is reached: its row. */
export const REACH = 0;
/** The step needs something, or the end of a stop, before it starts. */
export const NEED = 1;
/** The step stops a resource. */
export const STOP = 2;
/** A state is shown: its resource, the state. */
export const SHOW = 3;
/** The same where resource or state go by what the process carries: the number of the show in its row. */
export const SHOW_CHOSEN = 4;
/** A step without time has taken what it needed: the flow record is told. */
export const PASS = 5;
/** Time passes: the (first) law, 1 where cargo chooses among several, the place of the stream, the activity, the clock or -1. */
export const TIME = 6;
/** A token is given: its place. */
export const GIVE = 7;
/** The same where the process's registers have a say, or where there are several: the number of the give in its row. */
export const GIVE_CHOSEN = 8;
/** A counter rises: the counter, the number of the amount. */
export const COUNT = 9;
/** A resource goes on: the resource. */
export const RELEASE = 10;
/** Chance decides whether the process goes on elsewhere. */
export const CHANCE = 11;
/** On to another step: where it begins, 1 where that begins a new cycle. */
export const NEXT = 12;

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
  const code: number[] = [];
  const amounts: number[] = [];
  const reachedAt = new Int32Array(rows.length);
  const startsAt = new Int32Array(rows.length);
  const endsAt = new Int32Array(rows.length);
  rows.forEach((row, number) => {
    reachedAt[number] = code.length;
    code.push(REACH, number);
    if (needsAnything(row)) code.push(NEED);
    startsAt[number] = code.length;
    code.push(...startCode(row));
    endsAt[number] = code.length;
    code.push(...endCode(row, number, amounts));
  });
  const all = Int32Array.from(code);
  // A step may lead to one further down, whose place is known only now: until here NEXT named its row.
  endsAt.forEach((_, number) => {
    const target = (reachedAt[number + 1] ?? all.length) - 2;
    all[target] = reachedAt[all[target]!]!;
  });
  return { code: all, reachedAt, startsAt, endsAt, amounts: Float64Array.from(amounts) };
}

export function needsAnything(row: Row): boolean {
  return row.needs.length > 0 || row.gates.length > 0;
}

function startCode(row: Row): number[] {
  const code: number[] = [];
  if (row.stops !== -1) code.push(STOP);
  row.shows.forEach((show, i) => {
    if (isPlainShow(show)) code.push(SHOW, show.resource, show.states[0]!);
    else code.push(SHOW_CHOSEN, i);
  });
  const { draw } = row;
  if (draw) {
    const byCargo = draw.samplers.length > 1 ? 1 : 0;
    code.push(TIME, draw.firstLaw, byCargo, draw.stream * STREAM_SIZE, row.activity, draw.clock);
  } else if (row.needs.length > 0) code.push(PASS);
  return code;
}

function endCode(row: Row, number: number, amounts: number[]): number[] {
  const code: number[] = [];
  row.gives.forEach((give, i) => {
    if (isPlainGive(give)) code.push(GIVE, give.place);
    else code.push(GIVE_CHOSEN, i);
  });
  row.counters.forEach((counter, i) => code.push(COUNT, counter, amounts.push(row.amounts[i]!) - 1));
  if (row.releases !== -1) code.push(RELEASE, row.releases);
  if (row.chance > 0) code.push(CHANCE);
  code.push(NEXT, row.next, row.next <= number ? 1 : 0);
  return code;
}

function isPlainShow({ by, states }: Show): boolean {
  return by === NO_REGISTER && states.length === 1;
}

function isPlainGive({ by, count, carries }: Give): boolean {
  return by === NO_REGISTER && count === 1 && carries === CARGO;
}

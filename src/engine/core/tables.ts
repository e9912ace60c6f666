// The compiled step table: sections of numbers, which the host fills in before anything runs and which then never change.
import {
  AHEAD,
  AMOUNTS,
  CARGO_AT_FIRST,
  CLOCKED,
  CLOCKED_AT,
  CODE,
  DRAWS,
  FIRST_STATE,
  LAWS,
  LIMITS,
  LINES,
  LINES_AT,
  LISTS,
  MARKED,
  MEANING,
  OWN_RESOURCE,
  PRIORITY_AT_FIRST,
  QUANTILES,
  RANK,
  REACHED_AT,
  ROW_REALS,
  ROW_SIZE,
  ROWS,
  RULE,
  SCALES,
  STARTS_AT,
  STOPPED_ACTIVITY,
  STOPPED_STATE,
  STREAMS,
  TAKERS,
  TAKERS_AT,
  UNTIL,
} from "./numbers.ts";

export const noWholes = new StaticArray<i32>(0);
export const noReals = new StaticArray<f64>(0);

export let code = noWholes;
export let reachedAt = noWholes;
export let startsAt = noWholes;
export let rows = noWholes;
export let lists = noWholes;
export let draws = noWholes;
export let scales = noWholes;
export let cargoAtFirst = noWholes;
export let ownResource = noWholes;
export let firstState = noWholes;
export let stoppedState = noWholes;
export let stoppedActivity = noWholes;
export let meaning = noWholes;
export let takersAt = noWholes;
export let takers = noWholes;
export let linesAt = noWholes;
export let lines = noWholes;
export let rule = noWholes;
export let rank = noWholes;
export let clockedAt = noWholes;
export let clocked = noWholes;
export let marked = noWholes;
export let ahead = noWholes;

/** Only the generators of the streams move on. */
export let streams = noReals;
export let laws = noReals;
export let quantiles = noReals;
export let amounts = noReals;
export let rowReals = noReals;
export let until = noReals;
export let limits = noReals;
export let priorityAtFirst = noReals;

/** Room for a section; returns where the host writes it. */
export function wholes(section: i32, length: i32): usize {
  const part = new StaticArray<i32>(length);
  switch (section) {
    case CODE: code = part; break;
    case REACHED_AT: reachedAt = part; break;
    case STARTS_AT: startsAt = part; break;
    case ROWS: rows = part; break;
    case LISTS: lists = part; break;
    case DRAWS: draws = part; break;
    case SCALES: scales = part; break;
    case CARGO_AT_FIRST: cargoAtFirst = part; break;
    case OWN_RESOURCE: ownResource = part; break;
    case FIRST_STATE: firstState = part; break;
    case STOPPED_STATE: stoppedState = part; break;
    case STOPPED_ACTIVITY: stoppedActivity = part; break;
    case MEANING: meaning = part; break;
    case TAKERS_AT: takersAt = part; break;
    case TAKERS: takers = part; break;
    case LINES_AT: linesAt = part; break;
    case LINES: lines = part; break;
    case RULE: rule = part; break;
    case RANK: rank = part; break;
    case CLOCKED_AT: clockedAt = part; break;
    case CLOCKED: clocked = part; break;
    case MARKED: marked = part; break;
    case AHEAD: ahead = part; break;
    default: unreachable();
  }
  return changetype<usize>(part);
}

export function reals(section: i32, length: i32): usize {
  const part = new StaticArray<f64>(length);
  switch (section) {
    case STREAMS: streams = part; break;
    case LAWS: laws = part; break;
    case QUANTILES: quantiles = part; break;
    case AMOUNTS: amounts = part; break;
    case ROW_REALS: rowReals = part; break;
    case UNTIL: until = part; break;
    case LIMITS: limits = part; break;
    case PRIORITY_AT_FIRST: priorityAtFirst = part; break;
    default: unreachable();
  }
  return changetype<usize>(part);
}

/** One number of a row. */
export function fact(row: i32, which: i32): i32 {
  return unchecked(rows[row * ROW_SIZE + which]);
}

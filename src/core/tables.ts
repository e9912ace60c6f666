// A small program of its own, which fills the quantile tables that the loop draws from: in JavaScript, run once and cold, that takes longer than a shift.
import {
  BODY,
  CELLS,
  CURVE_ORDER,
  CURVE_REACH,
  EXACT_CELLS,
  FINER,
  LOWER_TAIL,
  NODES,
  POINTS_A_SCORE,
  UPPER_TAIL,
} from "./border/numbers.ts";

/** The first node of the body that a draw may read. */
const FIRST = CELLS / FINER;

/** What the host writes: the scores of the body's lower half and of the lower tail, or the exact points of a curve. */
const told = heap.alloc(8 * NODES * 2);
/** The table that was made last, or that the host has put back. Nodes that no draw reads stay 0: both ends, where a law may have no value, and what the tails cover. */
const table = heap.alloc(8 * NODES * 3);
/** The table of the normal law. */
const scores = heap.alloc(8 * NODES * 3);

/** Newton's coefficients of the piece of the curve that begins with the exact point `pieceBegin`. */
const piece = heap.alloc(8 * CURVE_ORDER);
let pieceBegin = -1;

export function toldAt(): usize {
  return told;
}

export function tableAt(): usize {
  return table;
}

export function scoresAt(): usize {
  return scores;
}

/** Once, before the first curve: half of the normal law's table is the other half with its sign changed. */
export function takeScores(): void {
  let from = told;
  for (let index = FIRST; index <= CELLS / 2; index++, from += 8) {
    const score = load<f64>(from);
    write(scores, BODY + CELLS - index, -score);
    write(scores, BODY + index, score);
  }
  for (let index = EXACT_CELLS; index <= CELLS; index++, from += 8) {
    const score = load<f64>(from);
    write(scores, UPPER_TAIL + CELLS - index, -score);
    write(scores, LOWER_TAIL + index, score);
  }
}

/** u itself, of a law whose values are equally likely. */
export function makeStraight(): void {
  for (let index = FIRST; index <= CELLS - FIRST; index++) write(table, BODY + index, f64(index) / CELLS);
  for (let index = EXACT_CELLS; index <= CELLS; index++) {
    const p = f64(index) / (CELLS * FINER);
    write(table, LOWER_TAIL + index, p);
    write(table, UPPER_TAIL + CELLS - index, 1 - p);
  }
}

/** A triangle over [0, 1] with its top at `mode`; what is 0 since nobody reads it stays 0. */
export function makeTriangle(mode: f64): void {
  makeStraight();
  for (let node = 0; node < 3 * NODES; node++) write(table, node, inTriangle(read(table, node), mode));
}

/** The curve over the normal score through the exact points that the host has written. */
export function makeCurve(): void {
  pieceBegin = -1;
  for (let index = FIRST; index <= CELLS - FIRST; index++) bend(BODY + index);
  for (let index = EXACT_CELLS; index <= CELLS; index++) bend(LOWER_TAIL + index);
  for (let index = CELLS; index >= EXACT_CELLS; index--) bend(UPPER_TAIL + CELLS - index);
}

/**
 * Of a rate that lies on straight lines between the nodes of the table, and is never below `least`: the sum, over the cells from one
 * node to another, of the mean of 1 / rate in the cell. Gauss's two points lie (high − low) / √12 from the middle of a cell.
 */
export function sumOfInverses(first: i32, last: i32, location: f64, scale: f64, least: f64): f64 {
  let sum: f64 = 0;
  let low = rateAt(first, location, scale, least);
  for (let node = first + 1; node <= last; node++) {
    const high = rateAt(node, location, scale, least);
    const middle = (low + high) / 2;
    sum += middle / (middle * middle - ((high - low) * (high - low)) / 12);
    low = high;
  }
  return sum;
}

function rateAt(node: i32, location: f64, scale: f64, least: f64): f64 {
  const rate = location + scale * read(table, node);
  return rate < least ? least : rate;
}

function inTriangle(p: f64, mode: f64): f64 {
  return p <= mode ? sqrt(p * mode) : 1 - sqrt((1 - p) * (1 - mode));
}

/** Writes the curve's value at the score of a node. Nodes asked for one after the other should be neighbors. */
function bend(node: i32): void {
  const place = read(scores, node) * POINTS_A_SCORE + CURVE_REACH;
  const begin = i32(floor(place)) - CURVE_ORDER / 2 + 1;
  if (begin !== pieceBegin) takePiece(begin);
  const along = place - f64(begin);
  let value: f64 = 0;
  for (let i = CURVE_ORDER - 1; i >= 0; i--) value = value * (along - f64(i)) + read(piece, i);
  write(table, node, value);
}

/** Newton's divided differences of points at 0, 1, 2 and so on. */
function takePiece(begin: i32): void {
  pieceBegin = begin;
  for (let i = 0; i < CURVE_ORDER; i++) write(piece, i, read(told, begin + i));
  for (let span = 1; span < CURVE_ORDER; span++)
    for (let i = CURVE_ORDER - 1; i >= span; i--) write(piece, i, (read(piece, i) - read(piece, i - 1)) / f64(span));
}

function read(list: usize, number: i32): f64 {
  return load<f64>(list + ((<usize>number) << 3));
}

function write(list: usize, number: i32, value: f64): void {
  store<f64>(list + ((<usize>number) << 3), value);
}

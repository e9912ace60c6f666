// Uniform numbers from the generators of streams, and the times that laws make of them.
import { cargo } from "./processes.ts";
import { now } from "./clock.ts";
import { exactTicks } from "./host.ts";
import {
  AGAIN,
  BODY,
  CELLS,
  DRAW_SIZE,
  EXACT_CELLS,
  FINER,
  FIRST_LAW,
  FIXED,
  LAST,
  LAW_COUNT,
  LAW_SIZE,
  LEAST,
  LOCATION,
  LOWER_TAIL,
  MASS,
  SCALE,
  STREAM,
  STREAM_SIZE,
  TABLE,
  UPPER_TAIL,
} from "./numbers.ts";
import { draws, laws, quantiles, streams, until } from "./tables.ts";

/** Constants of alea, Baagøe's multiply-with-carry generator: its multiplier, and the unit of its numbers. */
const MULTIPLIER: f64 = 2091639;
const UNIT: f64 = 2.3283064365386963e-10;

const TAIL: f64 = 1 / f64(FINER);
const FINEST_CELL: f64 = TAIL / f64(CELLS);
const END: f64 = f64(EXACT_CELLS) * FINEST_CELL;

/** The next number of a stream: t - floor(t), t being MULTIPLIER × s0 + UNIT × c; s0, s1, s2, c become s1, s2, the number, floor(t). */
export function uniform(stream: i32): f64 {
  const at = stream * STREAM_SIZE;
  const t = MULTIPLIER * unchecked(streams[at]) + unchecked(streams[at + 3]) * UNIT;
  const carry = Math.floor(t);
  unchecked((streams[at] = streams[at + 1]));
  unchecked((streams[at + 1] = streams[at + 2]));
  unchecked((streams[at + 3] = carry));
  return unchecked((streams[at + 2] = t - carry));
}

/** The draw that belongs to u in [0, 1), as the law's sampler makes it. */
export function ticksAt(law: i32, u: f64): f64 {
  const at = law * LAW_SIZE;
  const table = i32(unchecked(laws[at + TABLE]));
  if (table < 0 || u < END || u >= 1 - END) return exactTicks(law, u);
  // The body of the table first: fifteen draws of sixteen end here.
  let part = BODY;
  let place = u * f64(CELLS);
  if (u < TAIL) {
    part = LOWER_TAIL;
    place = u / FINEST_CELL;
  } else if (u >= 1 - TAIL) {
    part = UPPER_TAIL;
    place = (u - (1 - TAIL)) / FINEST_CELL;
  }
  const cell = i32(place);
  const low = unchecked(quantiles[table + part + cell]);
  const high = unchecked(quantiles[table + part + cell + 1]);
  let value = unchecked(laws[at + LOCATION]) + unchecked(laws[at + SCALE]) * (low + (high - low) * (place - f64(cell)));
  const least = unchecked(laws[at + LEAST]);
  if (value < least) value = least;
  const mass = unchecked(laws[at + MASS]);
  if (mass > 0) value = mass / value;
  return Math.floor(value + 0.5);
}

/** The time of a draw, whatever it goes by. */
export function drawTicks(process: i32, draw: i32): f64 {
  const end = unchecked(until[draw]);
  if (end >= 0) return Math.max(0, end - now);
  const at = draw * DRAW_SIZE;
  const first = unchecked(draws[at + FIRST_LAW]);
  const law = unchecked(draws[at + LAW_COUNT]) === 1 ? first : first + unchecked(cargo[process]);
  const fixed = unchecked(laws[law * LAW_SIZE + FIXED]);
  if (fixed >= 0) return fixed;
  const stream = unchecked(draws[at + STREAM]);
  if (unchecked(draws[at + AGAIN]) === 1) return ticksAt(law, unchecked(streams[stream * STREAM_SIZE + LAST]));
  return ticksAt(law, uniform(stream));
}

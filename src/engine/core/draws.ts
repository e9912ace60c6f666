// Uniform numbers from the generators of streams, and the times that laws make of them.
import { now } from "./clock.ts";
import { exactTicks } from "./host.ts";
import {
  AHEAD,
  BODY,
  CELLS,
  DRAWS,
  EXACT_CELLS,
  FINER,
  LAWS,
  LOWER_TAIL,
  QUANTILES,
  STREAMS,
  UNTIL,
  UPPER_TAIL,
} from "./numbers.ts";
import { Process } from "./process.ts";
import { realAt, room, sectionOfReals, sectionOfWholes, wholeAt, wholesOf } from "./sections.ts";

@unmanaged
export class Law {
  /** Its ticks where they do not vary, else below 0. */
  fixed: f64 = 0;
  /** Number of the node at which its quantile table begins, below 0 where it has none. */
  table: f64 = 0;
  /** What its sampler has by the same names. */
  location: f64 = 0;
  scale: f64 = 0;
  least: f64 = 0;
  mass: f64 = 0;
}

/** The numbers of alea, Baagøe's multiply-with-carry generator. */
@unmanaged
class Generator {
  s0: f64 = 0;
  s1: f64 = 0;
  /** The number given last. */
  s2: f64 = 0;
  carry: f64 = 0;
}

/** How a step takes its time. */
@unmanaged
class Draw {
  firstLaw: i32 = 0;
  laws: i32 = 0;
  stream: i32 = 0;
  /** 1 where the stream's last number is taken once more. */
  again: i32 = 0;
}

const MULTIPLIER: f64 = 2091639;
const UNIT: f64 = 2.3283064365386963e-10;

const TAIL: f64 = 1 / f64(FINER);
const FINEST_CELL: f64 = TAIL / f64(CELLS);
const END: f64 = f64(EXACT_CELLS) * FINEST_CELL;

/** Times drawn at once: in a loop of its own a draw costs half of what it costs between two events. */
const BLOCK = 64;

/** Of each kind of draws that are made ahead BLOCK times, and how many of them are used up. */
let drawnAhead: usize = 0;
let usedUp = new StaticArray<i32>(0);

let laws: usize = 0;
let generators: usize = 0;
let quantiles: usize = 0;
let draws: usize = 0;

export function openDraws(): void {
  laws = sectionOfReals(LAWS);
  generators = sectionOfReals(STREAMS);
  quantiles = sectionOfReals(QUANTILES);
  draws = sectionOfWholes(DRAWS);
  const kinds = wholesOf(AHEAD) / 2;
  drawnAhead = room(BLOCK * kinds, 8);
  usedUp = new StaticArray<i32>(kinds);
  usedUp.fill(BLOCK);
}

export function lawAt(number: i32): Law {
  return changetype<Law>(laws + <usize>number * offsetof<Law>());
}

function generatorOf(stream: i32): Generator {
  return changetype<Generator>(generators + <usize>stream * offsetof<Generator>());
}

/** The next time of a kind that is drawn ahead. */
export function nextDrawn(kind: i32): f64 {
  const used = unchecked(usedUp[kind]);
  if (used === BLOCK) return firstOfBlock(kind);
  unchecked((usedUp[kind] = used + 1));
  return load<f64>(drawnAhead + (<usize>(BLOCK * kind + used) << 3));
}

function firstOfBlock(kind: i32): f64 {
  const law = wholeAt(AHEAD, 2 * kind);
  const stream = wholeAt(AHEAD, 2 * kind + 1);
  const from = drawnAhead + (<usize>(BLOCK * kind) << 3);
  for (let at = from; at < from + 8 * BLOCK; at += 8) store<f64>(at, ticksAt(law, uniform(stream)));
  unchecked((usedUp[kind] = 1));
  return load<f64>(from);
}

/** The next number of a stream: t - floor(t), t being MULTIPLIER × s0 + UNIT × c; s0, s1, s2, c become s1, s2, the number, floor(t). */
export function uniform(stream: i32): f64 {
  const generator = generatorOf(stream);
  const t = MULTIPLIER * generator.s0 + generator.carry * UNIT;
  const carry = Math.floor(t);
  const u = t - carry;
  generator.s0 = generator.s1;
  generator.s1 = generator.s2;
  generator.s2 = u;
  generator.carry = carry;
  return u;
}

/** The draw that belongs to u in [0, 1), as the law's sampler makes it. */
export function ticksAt(number: i32, u: f64): f64 {
  const law = lawAt(number);
  const table = i32(law.table);
  if (table < 0 || u < END || u >= 1 - END) return exactTicks(number, u);
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
  const at = quantiles + (<usize>(table + part + cell) << 3);
  const low = load<f64>(at);
  let value = law.location + law.scale * (low + (load<f64>(at, 8) - low) * (place - f64(cell)));
  if (value < law.least) value = law.least;
  if (law.mass > 0) value = law.mass / value;
  return Math.floor(value + 0.5);
}

/** The time of a draw, whatever it goes by. */
export function drawTicks(process: Process, number: i32): f64 {
  const until = realAt(UNTIL, number);
  if (until >= 0) return Math.max(0, until - now);
  const draw = changetype<Draw>(draws + <usize>number * offsetof<Draw>());
  const law = draw.laws === 1 ? draw.firstLaw : draw.firstLaw + process.cargo;
  const fixed = lawAt(law).fixed;
  if (fixed >= 0) return fixed;
  return ticksAt(law, draw.again === 1 ? generatorOf(draw.stream).s2 : uniform(draw.stream));
}

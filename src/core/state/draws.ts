// Uniform numbers from the generators of streams, and the times that distributions make of them.
import { now } from "./clock.ts";
import { exactTicks } from "../border/host.ts";
import {
  AHEAD,
  BY_TIMETABLE,
  BODY,
  CELLS,
  DRAWS,
  EXACT_CELLS,
  FINER,
  DISTRIBUTIONS,
  LOWER_TAIL,
  QUANTILES,
  STREAMS,
  TIMETABLE,
  UNTIL,
  UPPER_TAIL,
} from "../border/numbers.ts";
import { Process } from "./process.ts";
import { realAt, realsOf, room, sectionOfReals, sectionOfWholes, wholeAt, wholesOf } from "./sections.ts";

@unmanaged
export class Distribution {
  /** Its ticks where they do not vary, else below 0. */
  fixed: f64 = 0;
  /** Number of the node at which its quantile table begins, below 0 where it has none. */
  table: f64 = 0;
  /** As in its sampler (`engine/distributions/sampler.ts`). */
  location: f64 = 0;
  scale: f64 = 0;
  least: f64 = 0;
  mass: f64 = 0;
}

/**
 * Alea, Baagøe's multiply-with-carry generator, bit for bit as in seedrandom, which seeds it and is the reference for it
 * (tests/theory/engine/generator.test.ts). seedrandom keeps doubles that are whole multiples of 2^-32; whole numbers of 32 bits give the
 * same draws, and the next one is there after one multiplication, without a wait for `floor`.
 */
@unmanaged
class Generator {
  s0: u32 = 0;
  s1: u32 = 0;
  /** The number given last. */
  s2: u32 = 0;
  carry: u32 = 0;
}

/** How a step takes its time. */
@unmanaged
class Draw {
  firstDistribution: i32 = 0;
  distributions: i32 = 0;
  stream: i32 = 0;
  /** 1 where the stream's last number is taken once more. */
  again: i32 = 0;
}

const MULTIPLIER: u64 = 2091639;
const UNIT: f64 = 1 / f64(1 << 32);

/** Bits of a draw that say where in a cell of the body it lies, and where in one of the finest cells. */
const BITS_IN_CELL: u32 = 32 - ctz(CELLS);
const BITS_IN_FINEST: u32 = BITS_IN_CELL - ctz(FINER);

/** Draws below this one, and as many of the highest, belong to the tails; draws below `END`, and as many of the highest, are exact. */
const TAIL: u32 = CELLS << BITS_IN_FINEST;
const END: u32 = EXACT_CELLS << BITS_IN_FINEST;

/** Times drawn in one pass: in a loop of its own a draw costs half of what it costs between two events. */
const BLOCK = 64;

/** Draws that are made ahead. */
@unmanaged
export class Kind {
  distribution: i32 = 0;
  stream: i32 = 0;
  /** How many of the BLOCK times, which follow in memory, are used up. */
  used: i32 = 0;
  /** Where the body of the quantile table lies, kept here because its number is a real one; 0 where there is no table. */
  body: usize = 0;
}

const KIND_SIZE = offsetof<Kind>() + 8 * BLOCK;

let kinds: usize = 0;
let distributions: usize = 0;
let generators: usize = 0;
let quantiles: usize = 0;
let draws: usize = 0;

export function openDraws(): void {
  distributions = sectionOfReals(DISTRIBUTIONS);
  quantiles = sectionOfReals(QUANTILES);
  draws = sectionOfWholes(DRAWS);
  openGenerators();
  const count = wholesOf(AHEAD) / 2;
  kinds = room(count, KIND_SIZE);
  for (let number = 0; number < count; number++) {
    const kind = kindAt(number);
    kind.distribution = wholeAt(AHEAD, 2 * number);
    kind.stream = wholeAt(AHEAD, 2 * number + 1);
    kind.used = BLOCK;
    const table = i32(distributionAt(kind.distribution).table);
    if (table >= 0) kind.body = quantiles + ((<usize>table) << 3) + 8 * BODY;
  }
}

function openGenerators(): void {
  const states = sectionOfReals(STREAMS);
  const count = realsOf(STREAMS) / 4;
  generators = room(count, offsetof<Generator>());
  for (let number = 0; number < count; number++) {
    const from = states + 32 * <usize>number;
    const generator = generatorOf(number);
    generator.s0 = u32(load<f64>(from) / UNIT);
    generator.s1 = u32(load<f64>(from, 8) / UNIT);
    generator.s2 = u32(load<f64>(from, 16) / UNIT);
    generator.carry = u32(load<f64>(from, 24));
  }
}

export function distributionAt(number: i32): Distribution {
  return changetype<Distribution>(distributions + <usize>number * offsetof<Distribution>());
}

function generatorOf(stream: i32): Generator {
  return changetype<Generator>(generators + <usize>stream * offsetof<Generator>());
}

export function kindAt(number: i32): Kind {
  return changetype<Kind>(kinds + <usize>number * KIND_SIZE);
}

/** The next time of a kind that is drawn ahead. */
export function nextDrawn(kind: Kind): f64 {
  if (kind.used === BLOCK) drawBlock(kind);
  const used = kind.used++;
  return load<f64>(changetype<usize>(kind) + ((<usize>used) << 3), offsetof<Kind>());
}

function drawBlock(kind: Kind): void {
  const from = changetype<usize>(kind) + offsetof<Kind>();
  const distribution = distributionAt(kind.distribution);
  kind.used = 0;
  if (distribution.fixed >= 0) for (let at = from; at < from + 8 * BLOCK; at += 8) store<f64>(at, distribution.fixed);
  else if (kind.body === 0)
    for (let at = from; at < from + 8 * BLOCK; at += 8)
      store<f64>(at, ticksAt(kind.distribution, next(generatorOf(kind.stream))));
  else interpolateBlock(kind, distribution, from);
}

/** Writes BLOCK times, as `ticksAt` gives them. */
function interpolateBlock(kind: Kind, distribution: Distribution, from: usize): void {
  const generator = generatorOf(kind.stream);
  const body = kind.body;
  const location = distribution.location;
  const scale = distribution.scale;
  const least = distribution.least;
  const mass = distribution.mass;
  let s0 = generator.s0;
  let s1 = generator.s1;
  let s2 = generator.s2;
  let carry = generator.carry;
  for (let at = from; at < from + 8 * BLOCK; at += 8) {
    const t = MULTIPLIER * <u64>s0 + <u64>carry;
    carry = u32(t >> 32);
    s0 = s1;
    s1 = s2;
    s2 = u32(t);
    // Fifteen draws of sixteen lie in the body of the table.
    const isInTail = s2 + TAIL < 2 * TAIL;
    const ticks = isInTail
      ? ticksAt(kind.distribution, s2)
      : ticksOf(between(body, s2, BITS_IN_CELL), location, scale, least, mass);
    store<f64>(at, ticks);
  }
  generator.s0 = s0;
  generator.s1 = s1;
  generator.s2 = s2;
  generator.carry = carry;
}

/** Between two neighboring nodes of a table: the highest bits choose the cell, the others the place in it. */
function between(part: usize, draw: u32, bitsInCell: u32): f64 {
  const at = part + ((<usize>(draw >> bitsInCell)) << 3);
  const low = load<f64>(at);
  const inCell = draw & ((1 << bitsInCell) - 1);
  return low + (load<f64>(at, 8) - low) * (f64(<i32>inCell) / f64(1 << bitsInCell));
}

/** The next number of a generator: t modulo 2^32, t being MULTIPLIER × s0 + c; s0, s1, s2, c become s1, s2, the number, t / 2^32. */
function next(generator: Generator): u32 {
  const t = MULTIPLIER * <u64>generator.s0 + <u64>generator.carry;
  generator.s0 = generator.s1;
  generator.s1 = generator.s2;
  generator.s2 = u32(t);
  generator.carry = u32(t >> 32);
  return generator.s2;
}

/** The next number of a stream, in [0, 1). */
export function uniform(stream: i32): f64 {
  return f64(next(generatorOf(stream))) * UNIT;
}

/** The ticks that a distribution makes of the next number of a stream. */
export function nextTicks(distribution: i32, stream: i32): f64 {
  return ticksAt(distribution, next(generatorOf(stream)));
}

/** The ticks that belong to u = draw / 2^32. */
function ticksAt(number: i32, draw: u32): f64 {
  const distribution = distributionAt(number);
  const table = i32(distribution.table);
  if (table < 0 || draw + END < 2 * END) return exactTicks(number, f64(draw) * UNIT);
  const part = quantiles + ((<usize>table) << 3);
  let quantile: f64;
  if (draw < TAIL) quantile = between(part + 8 * LOWER_TAIL, draw, BITS_IN_FINEST);
  else if (draw >= 0 - TAIL) quantile = between(part + 8 * UPPER_TAIL, draw + TAIL, BITS_IN_FINEST);
  else quantile = between(part + 8 * BODY, draw, BITS_IN_CELL);
  return ticksOf(quantile, distribution.location, distribution.scale, distribution.least, distribution.mass);
}

/** Whole ticks: of a value, or of the time in which a mass passes at a rate. */
function ticksOf(quantile: f64, location: f64, scale: f64, least: f64, mass: f64): f64 {
  let value = location + scale * quantile;
  if (value < least) value = least;
  return Math.floor((mass > 0 ? mass / value : value) + 0.5);
}

/** The time of a draw: until a tick, until that of the timetable, fixed, or drawn. */
export function drawTicks(process: Process, number: i32): f64 {
  let until = realAt(UNTIL, number);
  if (until === BY_TIMETABLE) until = realAt(TIMETABLE, process.entry++);
  if (until >= 0) return Math.max(0, until - now);
  const draw = changetype<Draw>(draws + <usize>number * offsetof<Draw>());
  const distribution = draw.distributions === 1 ? draw.firstDistribution : draw.firstDistribution + process.cargo;
  const fixed = distributionAt(distribution).fixed;
  if (fixed >= 0) return fixed;
  return draw.again === 1 ? ticksAt(distribution, generatorOf(draw.stream).s2) : nextTicks(distribution, draw.stream);
}

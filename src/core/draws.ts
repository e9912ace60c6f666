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

/** Draws that are made ahead. */
@unmanaged
class Kind {
  law: i32 = 0;
  stream: i32 = 0;
  /** How many of the BLOCK times, which follow in memory, are used up. */
  used: i32 = 0;
  unused: i32 = 0;
}

const KIND_SIZE = offsetof<Kind>() + 8 * BLOCK;

let kinds: usize = 0;
let laws: usize = 0;
let generators: usize = 0;
let quantiles: usize = 0;
let draws: usize = 0;

export function openDraws(): void {
  laws = sectionOfReals(LAWS);
  generators = sectionOfReals(STREAMS);
  quantiles = sectionOfReals(QUANTILES);
  draws = sectionOfWholes(DRAWS);
  const count = wholesOf(AHEAD) / 2;
  kinds = room(count, KIND_SIZE);
  for (let number = 0; number < count; number++) {
    const kind = kindAt(number);
    kind.law = wholeAt(AHEAD, 2 * number);
    kind.stream = wholeAt(AHEAD, 2 * number + 1);
    kind.used = BLOCK;
  }
}

export function lawAt(number: i32): Law {
  return changetype<Law>(laws + <usize>number * offsetof<Law>());
}

function generatorOf(stream: i32): Generator {
  return changetype<Generator>(generators + <usize>stream * offsetof<Generator>());
}

function kindAt(number: i32): Kind {
  return changetype<Kind>(kinds + <usize>number * KIND_SIZE);
}

/** The next time of a kind that is drawn ahead. */
export function nextDrawn(number: i32): f64 {
  const kind = kindAt(number);
  if (kind.used === BLOCK) drawBlock(kind);
  const used = kind.used++;
  return load<f64>(changetype<usize>(kind) + ((<usize>used) << 3), offsetof<Kind>());
}

function drawBlock(kind: Kind): void {
  const from = changetype<usize>(kind) + offsetof<Kind>();
  const law = lawAt(kind.law);
  kind.used = 0;
  if (law.fixed >= 0) for (let at = from; at < from + 8 * BLOCK; at += 8) store<f64>(at, law.fixed);
  else {
    uniforms(generatorOf(kind.stream), from);
    toTicks(kind.law, from);
  }
}

/** Writes BLOCK numbers of a generator, as `uniform` gives them. */
function uniforms(generator: Generator, to: usize): void {
  let s0 = generator.s0;
  let s1 = generator.s1;
  let s2 = generator.s2;
  let carry = generator.carry;
  for (let at = to; at < to + 8 * BLOCK; at += 8) {
    const t = MULTIPLIER * s0 + carry * UNIT;
    carry = Math.floor(t);
    s0 = s1;
    s1 = s2;
    s2 = t - carry;
    store<f64>(at, s2);
  }
  generator.s0 = s0;
  generator.s1 = s1;
  generator.s2 = s2;
  generator.carry = carry;
}

/** Turns BLOCK uniform numbers into ticks, as `ticksAt` does. */
function toTicks(number: i32, from: usize): void {
  const law = lawAt(number);
  const body = quantiles + ((<usize>i32(law.table)) << 3);
  const hasTable = law.table >= 0;
  const location = law.location;
  const scale = law.scale;
  const least = law.least;
  const mass = law.mass;
  for (let at = from; at < from + 8 * BLOCK; at += 8) {
    const u = load<f64>(at);
    // The body of the table first: fifteen draws of sixteen end here.
    if (!hasTable || u < TAIL || u >= 1 - TAIL) store<f64>(at, ticksAt(number, u));
    else {
      let value = location + scale * between(body, u * f64(CELLS));
      if (value < least) value = least;
      store<f64>(at, Math.floor((mass > 0 ? mass / value : value) + 0.5));
    }
  }
}

/** Between two neighboring nodes of a table. */
function between(part: usize, place: f64): f64 {
  const cell = u32(place);
  const at = part + ((<usize>cell) << 3);
  const low = load<f64>(at);
  return low + (load<f64>(at, 8) - low) * (place - f64(cell));
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
  const part = quantiles + ((<usize>table) << 3);
  let quantile: f64;
  if (u < TAIL) quantile = between(part + 8 * LOWER_TAIL, u / FINEST_CELL);
  else if (u >= 1 - TAIL) quantile = between(part + 8 * UPPER_TAIL, (u - (1 - TAIL)) / FINEST_CELL);
  else quantile = between(part + 8 * BODY, u * f64(CELLS));
  let value = law.location + law.scale * quantile;
  if (value < law.least) value = law.least;
  return Math.floor((law.mass > 0 ? law.mass / value : value) + 0.5);
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

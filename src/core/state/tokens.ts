// The places of a step table and the tokens at them: for each one when it came, which step's completion gave it and which number it carries.
import { now } from "./clock.ts";
import { LINES, NEED_SIZE, NEEDS, PLACES, TAKERS } from "../border/numbers.ts";
import { room, sectionOfWholes, wholeAt, wholesOf } from "./sections.ts";

@unmanaged
export class Token {
  time: f64 = 0;
  /** Node of the chain. */
  node: i32 = 0;
  cargo: i32 = 0;
  /** The one that came after it, or the next free one. */
  following: Token | null = null;
  unused: i32 = 0;
}

@unmanaged
export class Place {
  /** How many tokens are there; the oldest and the youngest. */
  tokens: i32 = 0;
  first: Token | null = null;
  last: Token | null = null;
  rule: i32 = 0;
  rank: i32 = 0;
  /** Processes that take from it, in their order. */
  takers: usize = 0;
  takerCount: i32 = 0;
  /** Whose turn it is, by its number among the takers. */
  turn: i32 = 0;
  /** Places at which processes stand in line for steps that also need this place. */
  lines: usize = 0;
  lineCount: i32 = 0;
  /** Processes that wait here, in no order. */
  waiters: usize = 0;
  length: i32 = 0;
  /** 1 where something has changed for those who wait. */
  touched: i32 = 0;
}

export let placeCount = 0;
let places: usize = 0;
let free: Token | null = null;

export function openPlaces(): void {
  placeCount = wholesOf(PLACES) / 4;
  places = room(placeCount, offsetof<Place>());
  let takers = sectionOfWholes(TAKERS);
  let lines = sectionOfWholes(LINES);
  for (let number = 0; number < placeCount; number++) {
    const place = placeAt(number);
    place.rule = wholeAt(PLACES, 4 * number);
    place.rank = wholeAt(PLACES, 4 * number + 1);
    place.takerCount = wholeAt(PLACES, 4 * number + 2);
    place.lineCount = wholeAt(PLACES, 4 * number + 3);
    place.takers = takers;
    place.lines = lines;
    place.waiters = room(place.takerCount, 4);
    takers += (<usize>place.takerCount) << 2;
    lines += (<usize>place.lineCount) << 2;
  }
  toPlaces(LINES, 1);
  toPlaces(NEEDS, NEED_SIZE);
}

export function placeAt(number: i32): Place {
  return changetype<Place>(places + <usize>number * offsetof<Place>());
}

/** Turns every so-manieth number of a section, which names a place, into the place itself. */
function toPlaces(section: i32, each: i32): void {
  for (let i = 0; i < wholesOf(section); i += each) {
    const at = sectionOfWholes(section) + ((<usize>i) << 2);
    store<u32>(at, changetype<usize>(placeAt(load<i32>(at))));
  }
}

/** Puts a token there now. */
export function put(place: Place, node: i32, cargo: i32): void {
  const token = newToken();
  token.time = now;
  token.node = node;
  token.cargo = cargo;
  if (place.tokens++ === 0) place.first = token;
  else place.last!.following = token;
  place.last = token;
}

/** Takes the oldest token; what it was is to be read before the next one is put. */
export function take(place: Place): Token {
  const token = place.first!;
  place.first = token.following;
  place.tokens--;
  token.following = free;
  free = token;
  return token;
}

function newToken(): Token {
  const token = free;
  if (token === null) return changetype<Token>(room(1, offsetof<Token>()));
  free = token.following;
  return token;
}

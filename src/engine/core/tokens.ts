// The tokens of all places: for each one when it came, which step's completion gave it and which number it carries.
import { now } from "./clock.ts";
import { longerReals, longerWholes } from "./longer.ts";
import { noWholes } from "./tables.ts";

// Every token has a slot of its own; each place strings its slots together, oldest first, and the free ones are a string too.

/** Of the token in each slot. */
export let times = new StaticArray<f64>(16);
export let nodes = new StaticArray<i32>(16);
export let cargoes = new StaticArray<i32>(16);
let following = new StaticArray<i32>(16);
/** Tokens at each place. */
export let sizes = noWholes;
let first = noWholes;
let last = noWholes;
let free = -1;
let used = 0;

export function openTokens(places: i32): void {
  sizes = new StaticArray<i32>(places);
  first = new StaticArray<i32>(places);
  last = new StaticArray<i32>(places);
}

/** Puts a token there now. */
export function put(place: i32, node: i32, cargo: i32): void {
  let slot = free;
  if (slot === -1) slot = newSlot();
  else free = unchecked(following[slot]);
  unchecked((times[slot] = now));
  unchecked((nodes[slot] = node));
  unchecked((cargoes[slot] = cargo));
  const size = unchecked(sizes[place]);
  unchecked((sizes[place] = size + 1));
  if (size === 0) unchecked((first[place] = slot));
  else unchecked((following[last[place]] = slot));
  unchecked((last[place] = slot));
}

/** Takes the oldest token; what it was is to be read from its slot until the next one is put. */
export function take(place: i32): i32 {
  const slot = unchecked(first[place]);
  unchecked((first[place] = following[slot]));
  unchecked((sizes[place] = sizes[place] - 1));
  unchecked((following[slot] = free));
  free = slot;
  return slot;
}

/** How many slots there are in use, and the slot of each, in `tokenSlots`: the tokens of all places. */
export let tokenSlots = noWholes;
export function listTokens(): i32 {
  if (tokenSlots.length < used) tokenSlots = new StaticArray<i32>(2 * used);
  let found = 0;
  for (let place = 0; place < sizes.length; place++) {
    let slot = unchecked(first[place]);
    for (let i = unchecked(sizes[place]); i > 0; i--) {
      unchecked((tokenSlots[found++] = slot));
      slot = unchecked(following[slot]);
    }
  }
  return found;
}

function newSlot(): i32 {
  if (used === times.length) {
    times = longerReals(times);
    nodes = longerWholes(nodes);
    cargoes = longerWholes(cargoes);
    following = longerWholes(following);
  }
  return used++;
}

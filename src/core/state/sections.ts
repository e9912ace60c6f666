// The compiled step table from the host: sections of numbers, constant after the core is opened.

const SECTIONS = 17;

/** Where each section begins, and how many numbers it holds. */
const wholesAt = new StaticArray<usize>(SECTIONS);
const wholesIn = new StaticArray<i32>(SECTIONS);
const realsAt = new StaticArray<usize>(SECTIONS);
const realsIn = new StaticArray<i32>(SECTIONS);

/** Makes room for a section; returns where the host is to write it. */
export function wholes(section: i32, length: i32): usize {
  unchecked((wholesIn[section] = length));
  return unchecked((wholesAt[section] = heap.alloc((<usize>length) << 2)));
}

export function reals(section: i32, length: i32): usize {
  unchecked((realsIn[section] = length));
  return unchecked((realsAt[section] = heap.alloc((<usize>length) << 3)));
}

export function sectionOfWholes(section: i32): usize {
  return unchecked(wholesAt[section]);
}

export function sectionOfReals(section: i32): usize {
  return unchecked(realsAt[section]);
}

/** Numbers in a section. */
export function wholesOf(section: i32): i32 {
  return unchecked(wholesIn[section]);
}

export function realsOf(section: i32): i32 {
  return unchecked(realsIn[section]);
}

export function wholeAt(section: i32, number: i32): i32 {
  return load<i32>(unchecked(wholesAt[section]) + ((<usize>number) << 2));
}

export function realAt(section: i32, number: i32): f64 {
  return load<f64>(unchecked(realsAt[section]) + ((<usize>number) << 3));
}

/** Room for so many records of a size, all 0. */
export function room(count: i32, size: usize): usize {
  const at = heap.alloc(<usize>count * size);
  memory.fill(at, 0, <usize>count * size);
  return at;
}

/** Twice the room, with the same beginning. What it leaves is not given back; as it doubles, that stays little. */
export function roomier(from: usize, count: i32, size: usize): usize {
  const to = room(2 * count, size);
  memory.copy(to, from, <usize>count * size);
  return to;
}

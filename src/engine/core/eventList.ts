// The event list: one pending time for each process, earliest first, equal times in the processes' order.
import { noReals, noWholes } from "./tables.ts";

/** Up to this many processes a scan of all pending times beats a heap. */
const scanUpTo = 8;

/** Tick at which each process's pending time is up; Infinity where nothing is pending. */
export let due = noReals;
let heap = noWholes;
let position = noWholes;
let size = 0;
let processes = 0;
let scans = true;

export function openEventList(count: i32): void {
  processes = count;
  due = new StaticArray<f64>(count);
  heap = new StaticArray<i32>(count);
  position = new StaticArray<i32>(count);
  for (let process = 0; process < count; process++) {
    unchecked((due[process] = Infinity));
    unchecked((position[process] = -1));
  }
  size = 0;
  scans = count <= scanUpTo;
}

/** Sets or changes the pending time of a process. */
export function setDue(process: i32, tick: f64): void {
  unchecked((due[process] = tick));
  if (scans) return;
  if (unchecked(position[process]) === -1) {
    unchecked((position[process] = size));
    unchecked((heap[size++] = process));
  }
  rise(unchecked(position[process]));
  sink(unchecked(position[process]));
}

export function clearDue(process: i32): void {
  unchecked((due[process] = Infinity));
  if (scans) return;
  const at = unchecked(position[process]);
  if (at === -1) return;
  const last = unchecked(heap[--size]);
  unchecked((position[process] = -1));
  if (last === process) return;
  unchecked((heap[at] = last));
  unchecked((position[last] = at));
  rise(at);
  sink(unchecked(position[last]));
}

/** The process that is due first, or -1 where nothing is pending. */
export function firstDue(): i32 {
  if (!scans) return size === 0 ? -1 : unchecked(heap[0]);
  let best = -1;
  let bestTick: f64 = Infinity;
  for (let process = 0; process < processes; process++) {
    const tick = unchecked(due[process]);
    if (tick < bestTick) {
      bestTick = tick;
      best = process;
    }
  }
  return best;
}

function before(a: i32, b: i32): bool {
  const difference = unchecked(due[a]) - unchecked(due[b]);
  return difference < 0 || (difference === 0 && a < b);
}

function rise(from: i32): void {
  const process = unchecked(heap[from]);
  let at = from;
  while (at > 0) {
    const above = (at - 1) >>> 1;
    const other = unchecked(heap[above]);
    if (!before(process, other)) break;
    unchecked((heap[at] = other));
    unchecked((position[other] = at));
    at = above;
  }
  unchecked((heap[at] = process));
  unchecked((position[process] = at));
}

function sink(from: i32): void {
  const process = unchecked(heap[from]);
  let at = from;
  for (;;) {
    let below = 2 * at + 1;
    if (below >= size) break;
    if (below + 1 < size && before(unchecked(heap[below + 1]), unchecked(heap[below]))) below++;
    const other = unchecked(heap[below]);
    if (!before(other, process)) break;
    unchecked((heap[at] = other));
    unchecked((position[other] = at));
    at = below;
  }
  unchecked((heap[at] = process));
  unchecked((position[process] = at));
}

// The event list: one pending time for each process, earliest first, equal times in the processes' order.
import { endOfProcesses, firstProcess, Process, processCount } from "./process.ts";

let heap: StaticArray<usize> = new StaticArray<usize>(0);
let size = 0;
let scans = true;

/** Up to so many processes all pending times are looked through; more of them are kept in a heap. */
export function openEventList(scanUpTo: i32): void {
  heap = new StaticArray<usize>(processCount);
  scans = processCount <= scanUpTo;
}

/** Sets or changes the pending time of a process. */
export function setDue(process: Process, tick: f64): void {
  process.due = tick;
  if (scans) return;
  if (process.heapPosition === -1) place(process, size++);
  rise(process);
  sink(process);
}

export function clearDue(process: Process): void {
  process.due = Infinity;
  if (scans || process.heapPosition === -1) return;
  const last = inHeap(--size);
  const at = process.heapPosition;
  process.heapPosition = -1;
  if (last === process) return;
  place(last, at);
  rise(last);
  sink(last);
}

/** The process that is due first, null where nothing is pending. */
export function firstDue(): Process | null {
  if (!scans) return size === 0 ? null : inHeap(0);
  let best: Process | null = null;
  let tick: f64 = Infinity;
  for (let at = firstProcess; at < endOfProcesses; at += offsetof<Process>()) {
    const process = changetype<Process>(at);
    if (process.due >= tick) continue;
    tick = process.due;
    best = process;
  }
  return best;
}

function inHeap(at: i32): Process {
  return changetype<Process>(unchecked(heap[at]));
}

function place(process: Process, at: i32): void {
  unchecked((heap[at] = changetype<usize>(process)));
  process.heapPosition = at;
}

/** Processes lie in memory in their order. */
function isBefore(one: Process, other: Process): bool {
  if (one.due !== other.due) return one.due < other.due;
  return changetype<usize>(one) < changetype<usize>(other);
}

function rise(process: Process): void {
  let at = process.heapPosition;
  while (at > 0) {
    const above = (at - 1) >> 1;
    if (!isBefore(process, inHeap(above))) break;
    place(inHeap(above), at);
    at = above;
  }
  place(process, at);
}

function sink(process: Process): void {
  let at = process.heapPosition;
  while (true) {
    let below = 2 * at + 1;
    if (below >= size) break;
    if (below + 1 < size && isBefore(inHeap(below + 1), inHeap(below))) below++;
    if (!isBefore(inHeap(below), process)) break;
    place(inHeap(below), at);
    at = below;
  }
  place(process, at);
}

// Where each process stands: its step, what it is doing, what it carries and which completion bound it last.
import { CARGO, NO_REGISTER, PRIORITIES, PROCESSES } from "../border/numbers.ts";
import { realAt, room, wholeAt, wholesOf } from "./sections.ts";
import { Step } from "./steps.ts";

@unmanaged
export class Process {
  /** Tick at which its pending time is up; Infinity where nothing is pending. */
  due: f64 = 0;
  /** Tick at which the step was complete that bound it last. */
  headTime: f64 = 0;
  /** Ticks left of a step that is held or whose clock stands still, and the tick at which it was held. */
  remaining: f64 = 0;
  pausedAt: f64 = 0;
  askedAt: f64 = 0;
  servedAt: f64 = 0;
  priority: f64 = 0;
  /** What it keeps of its scale, in whole millionths. */
  kept: f64 = 0;
  number: i32 = 0;
  step: Step | null = null;
  phase: i32 = 0;
  cargo: i32 = 0;
  helper: i32 = 0;
  cycle: i32 = 0;
  /** Where in the code it goes on when its time is up. */
  resumesAt: usize = 0;
  /** Node of the chain that bound it last, and 1 where another one was complete as late. */
  head: i32 = 0;
  tied: i32 = 0;
  /** The resource that shows its waiting states. */
  resource: i32 = 0;
  /** Where it stands in the heap of the event list, -1 where it does not. */
  heapPosition: i32 = 0;
  /** The next entry of its timetable. */
  entry: i32 = 0;
}

export let firstProcess: usize = 0;
export let endOfProcesses: usize = 0;
export let processCount = 0;

export function openProcesses(): void {
  processCount = wholesOf(PROCESSES) / 3;
  firstProcess = room(processCount, offsetof<Process>());
  endOfProcesses = firstProcess + <usize>processCount * offsetof<Process>();
  for (let number = 0; number < processCount; number++) {
    const process = processAt(number);
    process.number = number;
    process.due = Infinity;
    process.servedAt = -1;
    process.priority = realAt(PRIORITIES, number);
    process.resource = wholeAt(PROCESSES, 3 * number);
    process.cargo = wholeAt(PROCESSES, 3 * number + 1);
    process.entry = wholeAt(PROCESSES, 3 * number + 2);
    process.helper = -1;
    process.head = -1;
    process.heapPosition = -1;
  }
}

export function processAt(number: i32): Process {
  return changetype<Process>(firstProcess + <usize>number * offsetof<Process>());
}

/** What `by` adds to the first of a family. */
export function register(process: Process, by: i32): i32 {
  if (by === NO_REGISTER) return 0;
  return by === CARGO ? process.cargo : process.helper;
}

// Starts the core that runs step tables: WebAssembly made from the files in `core/`, one instance for each simulation.
import { invariant } from "#foundation/invariant.ts";
import program from "./core/core.wasm";

/** Numbers of processes, rows, resources and so on are those of the program; ticks are in microseconds. */
export interface CoreHost {
  logged(
    time: number,
    resource: number,
    state: number,
    row: number,
    cycle: number,
    hand: number,
    boundBy: number,
    boundTime: number,
  ): void;
  started(node: number, row: number, tick: number, ticks: number): void;
  needed(node: number, before: number): void;
  exactTicks(law: number, u: number): number;
}

/** Where an array lies in the memory of the core; it may move whenever the core runs. */
type Place = () => number;

/** What `core/core.ts` offers; truth is told as 0 or 1. */
export interface Core {
  readonly memory: WebAssembly.Memory;
  wholes(section: number, length: number): number;
  reals(section: number, length: number): number;
  open(activities: number, classes: number, foldAt: number, hasLog: number, hasFlow: number): void;
  put(place: number, node: number, cargo: number): void;
  reach(process: number, row: number): void;
  runUntil(tick: number): number;
  keepChain(): void;
  restart(): void;
  settle(): void;
  clock(): number;
  /** Why nothing can go on, 0 while it can; and since when. */
  stuck(): number;
  stuckSince(): number;
  firstDue(): number;
  marks(): number;
  forgetMarks(): void;
  pastPeriods(): number;
  addTotals(node: number, end: number): void;
  lastNode(): number;
  startOf(node: number): number;
  activityOf(node: number): number;
  parentOf(node: number): number;
  isTied(node: number): number;
  readonly dueAt: Place;
  readonly phaseAt: Place;
  readonly rowAt: Place;
  readonly cargoAt: Place;
  readonly handAt: Place;
  readonly headAt: Place;
  readonly sizesAt: Place;
  readonly stopCountAt: Place;
  readonly stateTicksAt: Place;
  readonly jointTicksAt: Place;
  readonly countsAt: Place;
  readonly firstRiseAt: Place;
  readonly lastRiseAt: Place;
  readonly markTicksAt: Place;
  readonly markCountersAt: Place;
  readonly periodStartAt: Place;
  readonly periodEndAt: Place;
  readonly pastResourceAt: Place;
  readonly pastStartAt: Place;
  readonly pastEndAt: Place;
  readonly totalTicksAt: Place;
}

let compiled: WebAssembly.Module | undefined;

export function openCore(host: CoreHost): Core {
  compiled ??= new WebAssembly.Module(program);
  const abort = (): void => invariant(false, "the core goes on", {});
  return new WebAssembly.Instance(compiled, { host: { ...host }, env: { abort } }).exports as unknown as Core;
}

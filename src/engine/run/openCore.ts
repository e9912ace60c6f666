// Starts the core that runs step tables: WebAssembly made from the files in `core/`, one instance for each simulation.
import program from "#core/core.wasm";

/** Numbers of processes, rows, resources and so on are those of the program; ticks are in microseconds. */
export interface CoreHost {
  started(node: number, row: number, tick: number, ticks: number): void;
  needed(node: number, before: number): void;
  exactTicks(distribution: number, u: number): number;
}

/** What `core/core.ts` offers; a truth value is 0 or 1. */
export interface Core {
  readonly memory: WebAssembly.Memory;
  wholes(section: number, length: number): number;
  reals(section: number, length: number): number;
  open(activities: number, classes: number, foldAt: number, scanUpTo: number, hasLog: number, hasFlow: number): void;
  put(place: number, cargo: number): void;
  reach(process: number, row: number): void;
  runUntil(tick: number): number;
  restart(): void;
  settle(): void;
  clock(): number;
  nextTick(): number;
  standstill(): number;
  standsSince(): number;
  phaseOf(process: number): number;
  rowOf(process: number): number;
  cargoOf(process: number): number;
  helperOf(process: number): number;
  headOf(process: number): number;
  tokensAt(place: number): number;
  stopsOf(resource: number): number;
  ticksIn(state: number): number;
  ticksTogetherIn(stateClass: number): number;
  countOf(counter: number): number;
  firstRiseOf(counter: number): number;
  lastRiseOf(counter: number): number;
  marks(): number;
  marksAt(): number;
  forgetMarks(): void;
  entries(): number;
  entriesAt(): number;
  forgetEntries(): void;
  periods(): number;
  periodResource(period: number): number;
  periodStart(period: number): number;
  periodEnd(period: number): number;
  forgetPeriods(): void;
  ownPeriodStart(resource: number): number;
  ownPeriodEnd(resource: number): number;
  keepChain(): void;
  lastNode(): number;
  startOf(node: number): number;
  activityOf(node: number): number;
  parentOf(node: number): number;
  isTied(node: number): number;
  totalsOf(node: number, end: number): number;
}

let compiled: WebAssembly.Module | undefined;

export function openCore(host: CoreHost): Core {
  compiled ??= new WebAssembly.Module(program);
  return new WebAssembly.Instance(compiled, { host: { ...host } }).exports as unknown as Core;
}

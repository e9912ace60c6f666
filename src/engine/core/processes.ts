// Where each process stands: its step, what it is doing, what it carries and which completion bound it last.
import { CARGO, NO_REGISTER } from "./numbers.ts";
import { cargoAtFirst, noReals, noWholes, priorityAtFirst } from "./tables.ts";

export let count = 0;
export let phase = noWholes;
export let row = noWholes;
export let cargo = noWholes;
export let hand = noWholes;
export let cycle = noWholes;
/** Where in the code it goes on when its time is up. */
export let resumesAt = noWholes;
/** Node of the chain that bound the process last, and the tick at which that step was complete. */
export let head = noWholes;
export let headTime = noReals;
export let tied = noWholes;
/** Ticks left of a step that is held or whose clock stands still, and the tick at which it was held. */
export let remaining = noReals;
export let pausedAt = noReals;
export let askedAt = noReals;
export let servedAt = noReals;
export let priority = noReals;
/** What each keeps of its scale, in whole millionths. */
export let kept = noReals;

export function openProcesses(): void {
  count = cargoAtFirst.length;
  phase = new StaticArray<i32>(count);
  row = new StaticArray<i32>(count);
  cargo = cargoAtFirst;
  hand = new StaticArray<i32>(count);
  cycle = new StaticArray<i32>(count);
  resumesAt = new StaticArray<i32>(count);
  head = new StaticArray<i32>(count);
  headTime = new StaticArray<f64>(count);
  tied = new StaticArray<i32>(count);
  remaining = new StaticArray<f64>(count);
  pausedAt = new StaticArray<f64>(count);
  askedAt = new StaticArray<f64>(count);
  servedAt = new StaticArray<f64>(count);
  priority = priorityAtFirst;
  kept = new StaticArray<f64>(count);
  for (let process = 0; process < count; process++) {
    unchecked((hand[process] = -1));
    unchecked((head[process] = -1));
    unchecked((servedAt[process] = -1));
  }
}

/** What `by` adds to the first of a family. */
export function register(process: i32, by: i32): i32 {
  if (by === NO_REGISTER) return 0;
  return by === CARGO ? unchecked(cargo[process]) : unchecked(hand[process]);
}

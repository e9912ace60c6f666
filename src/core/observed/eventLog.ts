// The event log: every change of a state, kept in memory until the host takes it.
import { now } from "../state/clock.ts";
import { pauseSoon } from "../state/pause.ts";
import { room, roomier } from "../state/sections.ts";

/** A state entered. Numbers are those of the program, -1 where there is none. */
@unmanaged
class Entry {
  time: f64 = 0;
  /** The tick at which that had begun whose completion bound this start. */
  boundTime: f64 = 0;
  resource: i32 = 0;
  state: i32 = 0;
  row: i32 = 0;
  cycle: i32 = 0;
  helper: i32 = 0;
  /** The activity whose completion bound this start. */
  boundBy: i32 = 0;
}

/** Entries after which the host should take them: few enough to stay in a processor's fast memory. */
const MANY_ENTRIES = 2048;

/** Since the host took them last. */
export let entryCount = 0;
let capacity = 2 * MANY_ENTRIES;
let entries: usize = 0;

export function openEventLog(): void {
  entries = room(capacity, offsetof<Entry>());
}

/** Where the entries lie. */
export function allEntries(): usize {
  return entries;
}

export function forgetEntries(): void {
  entryCount = 0;
}

export function enter(resource: i32, state: i32, row: i32, cycle: i32, helper: i32, boundBy: i32, boundTime: f64): void {
  if (entryCount >= MANY_ENTRIES) makeWay();
  const entry = changetype<Entry>(entries + <usize>entryCount * offsetof<Entry>());
  entryCount++;
  entry.time = now;
  entry.boundTime = boundTime;
  entry.resource = resource;
  entry.state = state;
  entry.row = row;
  entry.cycle = cycle;
  entry.helper = helper;
  entry.boundBy = boundBy;
}

/** The host can take them between two instants only: until then there must be room. */
function makeWay(): void {
  pauseSoon();
  if (entryCount < capacity) return;
  entries = roomier(entries, capacity, offsetof<Entry>());
  capacity *= 2;
}

// A weekly pattern of shifts in local wall time, as stretches of seconds from the beginning of a run.
import { bisector } from "d3-array";
import { weekdayOf, type Weekday } from "#foundation/civilDate.ts";

export interface Stretch {
  /** Seconds from the beginning of the run. */
  readonly from: number;
  readonly until: number;
}

/** Wall seconds: days since 1970-01-01 × 86,400 + seconds of the day, as the clocks on the wall show. */
interface ClockChange {
  /** What the wall shows at the change. */
  readonly at: number;
  /** Seconds by which the clocks are put on; below 0: put back. */
  readonly by: number;
}

export interface WallClock {
  readonly begins: number;
  /** In the order of time. */
  readonly changes: readonly ClockChange[];
}

export interface Pattern {
  /** All days where absent. */
  readonly days?: readonly Weekday[];
  /** Seconds of the day; a pattern that does not end after it has begun ends on the next day. */
  readonly start: number;
  readonly end: number;
}

const SECONDS_OF_DAY = 86_400;

/** The place of the first that ends after so many seconds. */
const byEnd = bisector(({ until }: Stretch) => until);

/**
 * Seconds of the run at which the wall shows this time. A time that is skipped when the clocks are put on is the moment of the
 * change; one that comes twice when they are put back is the first.
 */
export function secondsAtWall(wall: number, { begins, changes }: WallClock): number {
  let shifted = 0;
  for (const { at, by } of changes) {
    if (at < begins) continue;
    if (wall >= at + Math.max(by, 0)) shifted += by;
    else if (wall >= at) return at - begins - shifted;
  }
  return wall - begins - shifted;
}

/** Every occurrence of a pattern that touches the run, in the order of time. */
export function occurrences(pattern: Pattern, clock: WallClock, length: number): readonly Stretch[] {
  const first = Math.floor(clock.begins / SECONDS_OF_DAY) - 1;
  const last = Math.ceil((clock.begins + length) / SECONDS_OF_DAY) + 1;
  const found: Stretch[] = [];
  for (let day = first; day <= last; day++) {
    if (pattern.days && !pattern.days.includes(weekdayOf(day))) continue;
    const start = day * SECONDS_OF_DAY + pattern.start;
    const end = day * SECONDS_OF_DAY + pattern.end + (pattern.end <= pattern.start ? SECONDS_OF_DAY : 0);
    const stretch = clipped({ from: secondsAtWall(start, clock), until: secondsAtWall(end, clock) }, length);
    if (stretch) found.push(stretch);
  }
  return found;
}

function clipped({ from, until }: Stretch, length: number): Stretch | undefined {
  const inside = { from: Math.max(0, from), until: Math.min(length, until) };
  return inside.until > inside.from ? inside : undefined;
}

/** Stretches that meet or overlap become one. */
export function united(stretches: readonly Stretch[]): readonly Stretch[] {
  const all: { from: number; until: number }[] = [];
  for (const { from, until } of stretches.toSorted((one, other) => one.from - other.from)) {
    const last = all.at(-1);
    if (last && from <= last.until) last.until = Math.max(last.until, until);
    else all.push({ from, until });
  }
  return all;
}

/** Those that share time with another one; they must not overlap and be in order. */
export function meeting(stretches: readonly Stretch[], { from, until }: Stretch): readonly Stretch[] {
  const first = byEnd.right(stretches, from);
  let end = first;
  while (end < stretches.length && stretches[end]!.from < until) end++;
  return stretches.slice(first, end);
}

/** What of the run lies in none of them; they must not overlap and be in order. */
export function between(stretches: readonly Stretch[], length: number): readonly Stretch[] {
  const ends = [0, ...stretches.map(({ until }) => until)];
  const begins = [...stretches.map(({ from }) => from), length];
  return ends.flatMap((from, i) => (begins[i]! > from ? [{ from, until: begins[i]! }] : []));
}

/** Whether this time lies in one of them; they must not overlap and be in order. */
export function isWithin(time: number, stretches: readonly Stretch[]): boolean {
  const next = stretches[byEnd.right(stretches, time)];
  return next !== undefined && next.from <= time;
}

/** Whether a stretch has time in common with one of the others; they must not overlap and be in order. */
export function overlapsOne({ from, until }: Stretch, others: readonly Stretch[]): boolean {
  const next = others[byEnd.right(others, from)];
  return next !== undefined && next.from < until;
}

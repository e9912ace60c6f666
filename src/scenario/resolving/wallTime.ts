// Converts between seconds of a run and local wall time, with clock changes.
import { secondsAtWall, type WallClock } from "#engine/calendar.ts";
import { dateOf, daysOf, weekdayOf } from "#foundation/civilDate.ts";
import type { CalendarSpec } from "#scenario/scenario.ts";

const SECONDS_OF_DAY = 86_400;

/** When a run begins, and when clocks are put on or back, as a scenario writes it. */
export type WallTimes = Pick<CalendarSpec, "begins" | "clockChanges">;

/** "06:30" as seconds after midnight. */
export const secondsOfDay = (text: string): number => Number(text.slice(0, 2)) * 3600 + Number(text.slice(3)) * 60;

/** Wall seconds of a date and a time of day. */
export const wallOf = (date: string, time: string): number => daysOf(date)! * SECONDS_OF_DAY + secondsOfDay(time);

export function wallClockOf({ begins, clockChanges }: WallTimes): WallClock {
  const [date = "", time = ""] = begins.split(" ");
  const changes = clockChanges.map(({ on, at, by }) => ({ at: wallOf(on, at), by }));
  return { begins: wallOf(date, time), changes: changes.toSorted((one, other) => one.at - other.at) };
}

/** Wall time in wall seconds, from seconds after the beginning of the run. */
export function wallAt(seconds: number, clock: WallClock): number {
  const { begins, changes } = clock;
  let shifted = 0;
  for (const [i, { at, by }] of changes.entries()) {
    if (at < begins) continue;
    // The moment of a change is in wall time after all earlier changes.
    if (seconds < secondsAtWall(at, { begins, changes: changes.slice(0, i) })) break;
    shifted += by;
  }
  return begins + seconds + shifted;
}

/** "mon 2026-03-23 06:46:44". */
export function spokenWallTime(seconds: number, times: WallTimes): string {
  const wall = Math.floor(wallAt(seconds, wallClockOf(times)));
  const day = Math.floor(wall / SECONDS_OF_DAY);
  const ofDay = wall - day * SECONDS_OF_DAY;
  const parts = [Math.floor(ofDay / 3600), Math.floor(ofDay / 60) % 60, ofDay % 60];
  return `${weekdayOf(day)} ${dateOf(day)} ${parts.map((part) => String(part).padStart(2, "0")).join(":")}`;
}

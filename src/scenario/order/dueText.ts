// Parses a due date: a local date and time, a time after the start, or a weekday.
import { secondsAtWall, type WallClock } from "#engine/calendar.ts";
import { daysOf, weekdayOf, type Weekday } from "#foundation/civilDate.ts";
import type { Fault } from "#foundation/fault.ts";
import { isQuantity, parseQuantity } from "#foundation/quantity.ts";
import { dayNamed } from "./shiftsText.ts";

export type DueText =
  /** Wall seconds: days since 1970-01-01 × 86,400 + seconds of the day. */
  | { readonly kind: "date"; readonly wall: number }
  /** Seconds after the start. */
  | { readonly kind: "after"; readonly seconds: number }
  /** The first after the start; seconds of the day. */
  | { readonly kind: "weekday"; readonly day: Weekday; readonly seconds: number };

export const dueForm =
  "a date and time such as `2026-12-04 14:00`, a time after the start such as `5 d`, or `Friday 14:00`";
const secondsOfDay = 86_400;

export function parseDue(text: string): DueText | Fault {
  const written = text.trim();
  const [, words = "", hour, minute] = /^(.+?)[\sT]+(?:at\s+)?(\d{1,2}):(\d{2})$/iu.exec(written) ?? [];
  if (hour === undefined) return afterStart(written);
  const seconds = Number(hour) * 3600 + Number(minute) * 60;
  if (seconds >= secondsOfDay || Number(minute) > 59) {
    return fault(`There is no time of day ${hour}:${minute}.`, "Write a time from 00:00 to 23:59.");
  }
  const day = dayNamed(words);
  if (day !== undefined) return { kind: "weekday", day, seconds };
  const date = daysOf(words);
  if (date !== undefined && words >= "1970") return { kind: "date", wall: date * secondsOfDay + seconds };
  return fault(`"${words}" is neither a date nor a weekday.`, "Write year-month-day, or the name of a weekday.");
}

function afterStart(written: string): DueText | Fault {
  if (dayNamed(written) !== undefined || daysOf(written) !== undefined) {
    return fault(`"${written}" has no time of day.`, `Add the time: "${written} 14:00".`);
  }
  const quantity = parseQuantity(written, "time", "d");
  if (isQuantity(quantity)) {
    if (quantity.value > 0) return { kind: "after", seconds: quantity.value };
    return fault(`"${written}" is not after the start.`, "Write a time above 0.");
  }
  if (/^\d/u.test(written) && quantity.code === "unit-missing")
    return { ...quantity, code: "due-form", expected: dueForm };
  return fault(`"${written}" is no due date.`, `Write ${dueForm}.`);
}

function fault(message: string, remedy: string): Fault {
  return { code: "due-form", message, expected: dueForm, remedy };
}

/** Seconds from the start, at or below 0 for a date before it; undefined where a date needs a calendar. */
export function dueSeconds(due: DueText, clock: WallClock | undefined): number | undefined {
  if (due.kind === "after") return due.seconds;
  if (clock === undefined) return undefined;
  return secondsAtWall(due.kind === "date" ? due.wall : nextWeekday(due, clock.begins), clock);
}

/** A due time of the weekday of the start is on the same day only where it is later. */
function nextWeekday({ day, seconds }: DueText & { readonly kind: "weekday" }, begins: number): number {
  const today = Math.floor(begins / secondsOfDay);
  const ahead = Array.from({ length: 8 }, (_, i) => today + i);
  const found = ahead.find((each) => weekdayOf(each) === day && each * secondsOfDay + seconds > begins);
  return found! * secondsOfDay + seconds;
}

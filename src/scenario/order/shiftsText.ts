// Parses a pattern of work shifts in one line, such as `2 x 8 h, mon-fri`, and writes it as a calendar.
import type { Fault } from "#foundation/fault.ts";
import { weekdays, type Weekday } from "#foundation/civilDate.ts";

/** Work shifts of equal length, one after the other. */
export interface ShiftPattern {
  readonly count: number;
  readonly minutes: number;
  /** In the order of the week; all seven for `every day`. */
  readonly days: readonly Weekday[];
  /** Minute of the day at which the first begins. */
  readonly from: number;
}

const shiftsForm = '"2 x 8 h, mon-fri", "1 x 10 h, mon-thu, from 06:00" or "24 h, every day"';
const minutesOfDay = 1440;
/** When the first work shift begins where the text does not say it; common practice, no published source. */
const usualStart = 6 * 60;

export function parseShifts(text: string): ShiftPattern | Fault {
  const [first = "", ...rest] = text.split(",").map((piece) => piece.trim());
  const size = sizeOf(first);
  if ("code" in size) return size;
  const starts = rest.filter((piece) => /^from\b/iu.test(piece));
  const from = starts.length === 0 ? usualStart : minuteOf(starts);
  if (from === undefined) {
    return fault(
      `"${starts.join(", ")}" is not the start of a work shift.`,
      'Write one time of day, such as "from 06:00".',
    );
  }
  const named = rest.filter((piece) => !starts.includes(piece));
  if (named.length === 0)
    return fault("It does not say on which days.", 'Add the days, such as "mon-fri" or "every day".');
  const days = named.map(daysOfPiece);
  const unread = named.find((_, i) => days[i] === undefined);
  if (unread !== undefined) {
    return fault(`"${unread}" names no days.`, 'Write days such as "mon-fri", "sat" or "every day".');
  }
  const wanted = new Set(days.flatMap((each) => each ?? []));
  return { ...size, from, days: weekdays.filter((day) => wanted.has(day)) };
}

function sizeOf(text: string): Pick<ShiftPattern, "count" | "minutes"> | Fault {
  const [, count = "1", hours = ""] = /^(?:(\d+)\s*[x×*]\s*)?(\d+(?:\.\d+)?)\s*(?:h|hours?)$/iu.exec(text) ?? [];
  const shifts = Number(count);
  const minutes = Number(hours) * 60;
  if (hours === "") return fault(`"${text}" is no number of work shifts.`, `Write ${shiftsForm}.`);
  if (shifts < 1 || minutes <= 0)
    return fault(`"${text}" has no working time.`, "Write 1 shift or more, each above 0 h.");
  if (!Number.isInteger(minutes))
    return fault(`"${text}" does not end at a whole minute.`, "Write quarter hours, such as 7.5 h.");
  if (shifts * minutes <= minutesOfDay) return { count: shifts, minutes };
  const total = Number(((shifts * minutes) / 60).toFixed(2));
  return fault(`"${text}" is ${total} h; a day has 24 h.`, "Write fewer or shorter work shifts.");
}

/** Undefined where it is no time of day, or given twice. */
function minuteOf(starts: readonly string[]): number | undefined {
  const [, hour, minute] = /^from\s+([01]?\d|2[0-3]):([0-5]\d)$/iu.exec(starts[0] ?? "") ?? [];
  return hour === undefined || starts.length > 1 ? undefined : Number(hour) * 60 + Number(minute);
}

function daysOfPiece(text: string): readonly Weekday[] | undefined {
  if (/^(?:every day|daily)$/iu.test(text)) return weekdays;
  const [first, last, ...more] = text.split(/\s*[-–]\s*/u).map(dayNamed);
  if (first === undefined || more.length > 0 || (last === undefined && /[-–]/u.test(text))) return undefined;
  if (last === undefined) return [first];
  const [from, to] = [weekdays.indexOf(first), weekdays.indexOf(last)];
  // `sat-mon` goes over the end of the week.
  const length = ((to - from + 7) % 7) + 1;
  return Array.from({ length }, (_, i) => weekdays[(from + i) % 7]!);
}

/** By its first three letters or its whole name. */
export function dayNamed(text: string): Weekday | undefined {
  const place = fullNames.findIndex((name) => new RegExp(`^(?:${name.slice(0, 3)}|${name})$`, "iu").test(text));
  return weekdays[place];
}

const fullNames = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

function fault(message: string, remedy: string): Fault {
  return { code: "shifts-form", message, expected: shiftsForm, remedy };
}

/** The time of day at which the first work shift begins. */
export function startOfDay({ from }: ShiftPattern): string {
  return clock(from);
}

/** The value of `calendar`; the run begins at this local date and time of day. */
export function calendarText(pattern: ShiftPattern, date: string, time: string): string {
  const shifts = Array.from({ length: pattern.count }, (_, i) => shiftText(pattern, i)).join(", ");
  return `{ from: ${date}, at: "${time}", shifts: [${shifts}] }`;
}

function shiftText({ minutes, from, days }: ShiftPattern, place: number): string {
  const start = from + place * minutes;
  // A work shift that begins after midnight belongs to the next day.
  const later = Math.floor(start / minutesOfDay);
  const on = weekdays.filter((_, i) => days.includes(weekdays[(i - later + 7) % 7]!));
  return `{ days: [${on.join(", ")}], start: "${clock(start)}", end: "${clock(start + minutes)}" }`;
}

function clock(minute: number): string {
  const ofDay = minute % minutesOfDay;
  return [Math.floor(ofDay / 60), ofDay % 60].map((part) => String(part).padStart(2, "0")).join(":");
}

// Parses the start of the run: a local date, with or without a time of day.
import { daysOf } from "#foundation/civilDate.ts";
import type { Fault } from "#foundation/fault.ts";

export interface StartText {
  readonly date: string;
  /** Such as `06:00`; absent where only the date is given. */
  readonly time?: string;
}

export const startForm = '"2026-11-30 06:00", or "2026-11-30" alone';

export function parseStart(text: string): StartText | Fault {
  const [, date = "", time] = /^(\S+?)(?:[\sT]+((?:[01]\d|2[0-3]):[0-5]\d))?$/u.exec(text.trim()) ?? [];
  if (daysOf(date) !== undefined && date >= "1970") return { date, ...(time === undefined ? {} : { time }) };
  const message = `"${text}" is no date with a time of day.`;
  return { code: "start-form", message, expected: startForm, remedy: `Write ${startForm}.` };
}

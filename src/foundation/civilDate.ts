// Dates of the Gregorian calendar as whole days, without a clock or a time zone.

/** Days from 1970-01-01 to a date written as year-month-day; undefined where there is no such date. */
export function daysOf(text: string): number | undefined {
  const found = /^([0-9]{4})-([0-9]{2})-([0-9]{2})$/u.exec(text);
  if (!found) return undefined;
  const [year, month, day] = found.slice(1).map(Number) as [number, number, number];
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return undefined;
  let days = 0;
  for (let each = 1970; each < year; each++) days += isLeap(each) ? 366 : 365;
  for (let each = 1; each < month; each++) days += daysIn(year, each);
  return days + day - 1;
}

/** The date so many days after 1970-01-01, as year-month-day. */
export function dateOf(days: number): string {
  let [year, month, rest] = [1970, 1, days];
  while (rest >= (isLeap(year) ? 366 : 365)) rest -= isLeap(year++) ? 366 : 365;
  while (rest >= daysIn(year, month)) rest -= daysIn(year, month++);
  return `${year}-${twoDigits(month)}-${twoDigits(rest + 1)}`;
}

export const weekdays = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
export type Weekday = (typeof weekdays)[number];

/** 1970-01-01 was a Thursday. */
export function weekdayOf(days: number): Weekday {
  return weekdays[(((days + 3) % 7) + 7) % 7]!;
}

function isLeap(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

const twoDigits = (number: number): string => String(number).padStart(2, "0");

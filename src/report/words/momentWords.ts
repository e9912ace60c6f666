// Writes a moment of an order: as a local date and time where there is a calendar, else as a time after the start.
import { spokenWallTime } from "#scenario/resolving/wallTime.ts";
import type { Scenario } from "#scenario/scenario.ts";

const secondsOfMinute = 60;
const secondsOfHour = 3600;
const secondsOfDay = 86_400;

/** "Fri 2026-12-04 14:00", or "3 d 4.5 h after the start". */
export function momentWords(seconds: number, { calendar }: Pick<Scenario, "calendar">): string {
  if (!calendar) return `${spanWords(seconds)} after the start`;
  // To the minute, so that an order is never said to be done before it is.
  const [day = "", date = "", time = ""] = spokenWallTime(minutesUp(seconds), calendar).split(" ");
  return `${day.charAt(0).toUpperCase()}${day.slice(1)} ${date} ${time.slice(0, 5)}`;
}

function minutesUp(seconds: number): number {
  return Math.ceil(seconds / secondsOfMinute) * secondsOfMinute;
}

/** "3 d 4.5 h", "4 h 30 min" or "12 min". */
export function spanWords(seconds: number): string {
  if (seconds < secondsOfDay) {
    const minutes = Math.round(seconds / secondsOfMinute);
    const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
    return [...(hours > 0 ? [`${hours} h`] : []), ...(rest > 0 || hours === 0 ? [`${rest} min`] : [])].join(" ");
  }
  const tenths = Math.round((seconds / secondsOfHour) * 10);
  const days = Math.floor(tenths / 240);
  const hours = (tenths - days * 240) / 10;
  return [`${days} d`, ...(hours > 0 ? [`${hours} h`] : [])].join(" ");
}

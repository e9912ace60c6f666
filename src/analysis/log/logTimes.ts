// Instants as logs write them: with or without date, offset and zone, as numbers or as Excel writes them.
import { daysOf } from "#foundation/civilDate.ts";
import { numberOf, secondsOf, type DecimalMark } from "./logNumbers.ts";

export interface Instant {
  /** Since an arbitrary instant that is the same for the whole log. */
  readonly seconds: number;
  readonly hour?: number;
  readonly clash?: "twice" | "never" | undefined;
  /** The second of two equal local times. */
}

/** Whole microseconds: seconds since 1970 have no further digits. */
export const between = (from: number, until: number): number => Math.round((until - from) * 1e6) / 1e6;

/** Seconds to be added to local seconds to come to UTC: negative east of Greenwich. */
export interface Offset {
  readonly seconds: number;
  /** Where the local time comes twice: for the second time. */
  readonly later?: number;
  readonly clash?: "twice" | "never";
}

/** The offset of a zone at a local time in seconds since 1970. */
type ZoneOffset = (localSeconds: number) => Offset;
/** The offset of a zone at an instant in seconds since 1970. */
type ZoneOffsetAt = (seconds: number) => number;

export interface Zone {
  readonly offset: ZoneOffset;
  readonly offsetAt: ZoneOffsetAt;
}

export interface TimeFormat {
  readonly words: string;
  /** What a text means may depend on those before it; a text that is only looked at changes nothing for those after it. */
  readonly read: (text: string, isLook?: boolean) => Instant | undefined;
}

const DAY = 86400;

interface FormatHints {
  readonly mark: DecimalMark;
  /** Of the column's name. */
  readonly unit?: string;
  readonly zone?: Zone | undefined;
}

/** The format of the first cells of a column; undefined where none fits. */
export function timeFormat(samples: readonly string[], { mark, unit, zone }: FormatHints): TimeFormat | undefined {
  const values = samples.map((text) => numberOf(text, mark)).filter((value) => value !== undefined);
  if (values.length === samples.length) return numberFormat(values, mark, unit, zone);
  if (samples.every((text) => clockPattern.test(text))) return clockFormat();
  const dayFirst = samples.some((text) => Number(slashed.exec(text)?.[1]) > 12);
  const words = samples.some((text) => slashed.test(text))
    ? dayFirst
      ? "dates with the day first"
      : "dates with the month first, as no first number is above 12"
    : "dates and times";
  const probe = localReader(undefined);
  if (!samples.some((text) => instantOf(text, dayFirst, probe) !== undefined)) {
    // A cell that cannot be read takes nothing from the others.
    if (values.length > 0) return numberFormat(values, mark, unit, zone);
    return samples.some((text) => clockPattern.test(text)) ? clockFormat() : undefined;
  }
  const local = localReader(zone);
  return { words, read: (text, isLook) => instantOf(text, dayFirst, (seconds) => local(seconds, isLook)) };
}

function numberFormat(
  values: readonly number[],
  mark: DecimalMark,
  unit: string | undefined,
  zone: Zone | undefined,
): TimeFormat {
  const least = values.reduce((low, value) => Math.min(low, value), Infinity);
  const most = values.reduce((high, value) => Math.max(high, value), 0);
  const plain = (factor: number) => (text: string) => {
    const value = numberOf(text, mark);
    return value === undefined ? undefined : { seconds: value * factor };
  };
  const factor = unit === undefined ? undefined : secondsOf(unit);
  if (factor !== undefined && most * factor < 1e9) return { words: `times in ${unit}`, read: plain(factor) };
  const epoch = [1e9, 1e12, 1e15].findIndex((size) => least >= size && most < size * 10);
  if (epoch >= 0) {
    const size = [1, 1e-3, 1e-6][epoch]!;
    const words = `times since 1970 in ${["s", "ms", "µs"][epoch]!}`;
    return { words, read: (text) => atEpoch(plain(size)(text)?.seconds, zone) };
  }
  // Days since 1899-12-30, which a spreadsheet shows as dates: of the years 2000 to 2100, and not whole.
  if (least >= 36526 && most < 73051 && values.some((value) => !Number.isInteger(value))) {
    const local = localReader(zone);
    const read = (text: string, isLook?: boolean): Instant | undefined => {
      const days = numberOf(text, mark);
      // A spreadsheet keeps about a microsecond.
      return days === undefined ? undefined : local(Math.round((days - 25569) * DAY * 1e5) / 1e5, isLook);
    };
    return { words: "dates as a spreadsheet counts them", read };
  }
  return { words: "times in s", read: plain(1) };
}

function atEpoch(seconds: number | undefined, zone: Zone | undefined): Instant | undefined {
  if (seconds === undefined) return undefined;
  return { seconds, hour: hourOf(seconds - (zone?.offsetAt(seconds) ?? 0)) };
}

const hourOf = (localSeconds: number): number => Math.floor((((localSeconds % DAY) + DAY) % DAY) / 3600);

type LocalReader = (localSeconds: number, isLook?: boolean) => Instant;

/** Seconds by which a log's rows may be out of order. */
const DISORDER = 600;

/** Of local times that come twice the second one, where the first would lie before rows that were read. */
function localReader(zone: Zone | undefined): LocalReader {
  let last = -Infinity;
  return (localSeconds, isLook = false) => {
    const hour = hourOf(localSeconds);
    if (zone === undefined) return { seconds: localSeconds, hour };
    const { seconds, later, clash } = zone.offset(localSeconds);
    const first = localSeconds + seconds;
    const isLater = later !== undefined && first < last - DISORDER;
    const found = isLater ? localSeconds + later : first;
    if (!isLook) last = Math.max(last, found);
    return { seconds: found, hour, clash };
  };
}

const clockPattern = /^(\d{1,2}):(\d{2})(?::(\d{2}(?:[.,]\d+)?))?\s*([AaPp][Mm])?$/u;
const slashed = /^(\d{1,2})\/(\d{1,2})\/(\d{4})/u;
const dated =
  /^(?:(\d{4})-(\d{1,2})-(\d{1,2})|(\d{1,2})\.(\d{1,2})\.(\d{4})|(\d{1,2})\/(\d{1,2})\/(\d{4}))[T ,]*(.*)$/u;
const offsetPattern = /\s*(?:(Z)|([+-])(\d{2}):?(\d{2})?)$/u;

/** A time that is far before the one before it is on the next day. */
function clockFormat(): TimeFormat {
  let [day, before] = [0, -Infinity];
  const read = (text: string, isLook = false): Instant | undefined => {
    const seconds = secondsOfDay(text);
    if (seconds === undefined) return undefined;
    const own = seconds < before - DAY / 2 ? day + 1 : day;
    if (!isLook) [day, before] = [own, seconds];
    return { seconds: own * DAY + seconds, hour: hourOf(seconds) };
  };
  return { words: "times of day; a time far before the one before it is on the next day", read };
}

function secondsOfDay(text: string): number | undefined {
  const [, hours, minutes, seconds = "0", half] = clockPattern.exec(text) ?? [];
  if (hours === undefined) return undefined;
  const turned = half === undefined ? Number(hours) : (Number(hours) % 12) + (/p/iu.test(half) ? 12 : 0);
  const [m, s] = [Number(minutes), Number(seconds.replace(",", "."))];
  return turned < 24 && m < 60 && s < 61 ? turned * 3600 + m * 60 + s : undefined;
}

function instantOf(text: string, dayFirst: boolean, local: (localSeconds: number) => Instant): Instant | undefined {
  const parts = dated.exec(text);
  if (parts === null) return undefined;
  const [, y1, m1, d1, d2, m2, y2, s1, s2, y3, rest = ""] = parts;
  const [year, month, day] =
    y1 === undefined ? (y2 === undefined ? [y3, dayFirst ? s2 : s1, dayFirst ? s1 : s2] : [y2, m2, d2]) : [y1, m1, d1];
  const days = daysOf(`${year!}-${month!.padStart(2, "0")}-${day!.padStart(2, "0")}`);
  const offset = offsetPattern.exec(rest);
  const clock = offset ? rest.slice(0, offset.index) : rest;
  const seconds = clock === "" ? 0 : secondsOfDay(clock);
  if (days === undefined || seconds === undefined) return undefined;
  const atClock = days * DAY + seconds;
  if (offset === null) return local(atClock);
  const [, , sign, hours = "0", minutes = "0"] = offset;
  const east = (Number(hours) * 3600 + Number(minutes) * 60) * (sign === "-" ? -1 : 1);
  return { seconds: atClock - east, hour: hourOf(atClock) };
}

// Numbers, durations and their units as logs write them.

export type DecimalMark = "." | ",";

const plainNumber = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u;

/** A comma is decimal where a value has it as its last mark and not before three digits, or where cells are not separated by it. */
export function decimalMark(samples: readonly string[], delimiter: string): DecimalMark {
  const marks = samples.map((text) => /([.,])(\d*)\D*$/u.exec(text)).filter((found) => found !== null);
  if (marks.some(([, mark]) => mark === ".")) return marks.some(([, mark]) => mark === ",") ? lastMark(samples) : ".";
  const isClear = marks.some(([, , digits = ""]) => digits.length !== 3);
  return marks.length > 0 && (isClear || delimiter !== ",") ? "," : ".";
}

/** Of `1.234,5` and `1,234.5` the later mark. */
function lastMark(samples: readonly string[]): DecimalMark {
  const both = samples.find((text) => text.includes(".") && text.includes(","));
  return both !== undefined && both.lastIndexOf(",") > both.lastIndexOf(".") ? "," : ".";
}

/** The other mark may only separate thousands: `7,5` is never 75. */
const grouped: Readonly<Record<DecimalMark, RegExp>> = {
  ".": /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/u,
  ",": /^[+-]?\d{1,3}(?:\.\d{3})+(?:,\d*)?$/u,
};

/** Undefined where it is no finite number; thousands may be separated. */
export function numberOf(text: string, mark: DecimalMark): number | undefined {
  const other = mark === "." ? "," : ".";
  const whole = text.replaceAll(/[\s'’\u00a0\u202f]/gu, "");
  if (whole.includes(other) && !grouped[mark].test(whole)) return undefined;
  const bare = whole.replaceAll(other, "").replace(mark, ".");
  const value = plainNumber.test(bare) ? Number(bare) : NaN;
  return Number.isFinite(value) ? value : undefined;
}

const secondsIn: Readonly<Record<string, number>> = {
  us: 1e-6,
  µs: 1e-6,
  ms: 1e-3,
  msec: 1e-3,
  s: 1,
  sec: 1,
  sek: 1,
  seconds: 1,
  sekunden: 1,
  min: 60,
  minutes: 60,
  minuten: 60,
  h: 3600,
  hours: 3600,
  stunden: 3600,
};

/** Undefined where it is no unit of time. */
export const secondsOf = (unit: string): number | undefined => secondsIn[unit.toLowerCase()];

const clock = /^(-?)(?:(\d+):)?(\d+):(\d{1,2}(?:[.,]\d+)?)$/u;

/** Seconds of `7.5`, `7,5 s`, `1:02:03.5` or `2:03`; a plain number has the unit of its column. */
export function durationOf(text: string, mark: DecimalMark, unit: number): number | undefined {
  const [, sign, hours = "0", minutes = "", seconds = ""] = clock.exec(text) ?? [];
  if (sign !== undefined) {
    const size = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds.replace(",", "."));
    return sign === "-" ? -size : size;
  }
  const [, amount = "", own = ""] = /^(.*?)\s*(\p{L}*)$/u.exec(text) ?? [];
  const factor = own === "" ? unit : secondsOf(own);
  const value = numberOf(amount, mark);
  return value === undefined || factor === undefined ? undefined : value * factor;
}

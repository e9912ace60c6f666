// Writes numbers with no more digits than their interval supports.
import type { Interval } from "#analysis/statistics/interval.ts";

/** Where no interval limits them. */
const plainDigits = 4;

/** "1172.4 ± 0.6"; a number without an interval, or that never varies, stands alone with four digits. */
export function withInterval({ mean, halfWidth }: Pick<Interval, "mean" | "halfWidth">, factor = 1): string {
  const [value, half] = [mean * factor, (halfWidth ?? 0) * factor];
  if (half <= rounding * Math.abs(value)) return plainNumber(value);
  const place = placeOf(half);
  return `${roundedTo(value, place)} ± ${roundedTo(half, place)}`;
}

/** What arithmetic alone may have left of a spread that is none. */
const rounding = 1e-12;

export function plainNumber(value: number): string {
  return String(Number(value.toPrecision(plainDigits)));
}

/** One decimal where little is missing to none or to all. */
export function percent(share: number): string {
  const value = share * 100;
  const rounded = roundedTo(value, value < 10 || value > 90 ? -1 : 0);
  return `${value === 0 || rounded === "100.0" ? Math.round(value) : rounded} %`;
}

/** Two decimals: what a stopwatch in a hand can tell. */
export function seconds(value: number): string {
  return `${roundedTo(value, -2)} s`;
}

/** Power of ten of the last digit kept: the first of the half width, and one more behind a leading 1. */
function placeOf(half: number): number {
  const [digits = "", exponent = "0"] = half.toExponential(1).split("e");
  return Number(exponent) - (digits.startsWith("1") ? 1 : 0);
}

function roundedTo(value: number, place: number): string {
  if (place <= 0) return value.toFixed(Math.min(100, -place));
  const step = Number(`1e${place}`);
  return String(Math.round(value / step) * step);
}

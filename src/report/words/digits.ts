// Writes numbers with no more digits than their interval supports.
import type { Interval } from "#analysis/statistics/interval.ts";

/** Where no interval limits them. */
const plainDigits = 4;

/** "1,172.4 ± 0.6"; a number without an interval, or that does not vary, has four digits. */
export function withInterval({ mean, halfWidth }: Pick<Interval, "mean" | "halfWidth">, factor = 1): string {
  const [value, half] = [mean * factor, (halfWidth ?? 0) * factor];
  if (half <= rounding * Math.abs(value)) return plainNumber(value);
  const place = placeOf(half);
  return `${roundedTo(value, place)} ± ${roundedTo(half, place)}`;
}

/** A relative half width below this comes from rounding alone. */
const rounding = 1e-12;

export function plainNumber(value: number): string {
  return grouped(Number(value.toPrecision(plainDigits)));
}

/** "12,345.6": a comma between thousands. */
export function grouped(value: number | string): string {
  return String(value).replace(/^(-?)(\d{4,})/u, (_, sign: string, whole: string) => sign + inThousands(whole));
}

const inThousands = (whole: string): string => whole.replaceAll(/\B(?=(?:\d{3})+$)/gu, ",");

/** One decimal below 10 % and above 90 %. */
export function percent(share: number): string {
  const value = share * 100;
  const rounded = roundedTo(value, value < 10 || value > 90 ? -1 : 0);
  return `${value === 0 || rounded === "100.0" ? Math.round(value) : rounded} %`;
}

/** A share that a call or a table gives, as it would write it: "95 %". */
export function shareWords(share: number): string {
  return `${Number((share * 100).toFixed(2))} %`;
}

/**
 * Shares with one decimal that add up as their sum does (largest remainder method).
 *
 * @example percentsThatAddUp([1 / 3, 1 / 3, 1 / 3]) // ["33.4 %", "33.3 %", "33.3 %"]
 */
export function percentsThatAddUp(shares: readonly number[]): readonly string[] {
  const tenths = shares.map((share) => share * 1000);
  const whole = tenths.map(Math.floor);
  const missing = Math.round(sum(tenths)) - sum(whole);
  const byRemainder = tenths.map((value, i) => ({ i, rest: value - whole[i]! })).toSorted((a, b) => b.rest - a.rest);
  for (const { i } of byRemainder.slice(0, missing)) whole[i]! += 1;
  return whole.map((value) => `${(value / 10).toFixed(1)} %`);
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Two decimals, the resolution of a stopwatch. */
export function seconds(value: number): string {
  return `${roundedTo(value, -2)} s`;
}

/** Power of ten of the last digit kept: the first digit of the half width, or its second behind a leading 1. */
function placeOf(half: number): number {
  const [digits = "", exponent = "0"] = half.toExponential(1).split("e");
  return Number(exponent) - (digits.startsWith("1") ? 1 : 0);
}

function roundedTo(value: number, place: number): string {
  if (place <= 0) return grouped(value.toFixed(Math.min(100, -place)));
  const step = Number(`1e${place}`);
  return grouped(Math.round(value / step) * step);
}

// Compares a computed number with a printed one, within half of its last digit.
import { expect } from "vitest";

/** Half of the last printed digit: 0.005 for "4.13", 0.005e-6 for "53.53e-6". */
export function halfDigit(text: string): number {
  const [digits = "", exponent = "0"] = text.toLowerCase().split("e");
  const decimals = digits.split(".")[1]?.length ?? 0;
  return Number(`0.5e${Number(exponent) - decimals}`);
}

/** Fails unless `actual` rounds to the printed text; 1e-6 of the half digit allows for its own rounding. */
export function expectPrinted(actual: number, text: string): void {
  const distance = Math.abs(actual - Number(text));
  expect(distance, `${actual} is printed as ${text}`).toBeLessThanOrEqual(halfDigit(text) * (1 + 1e-6));
}

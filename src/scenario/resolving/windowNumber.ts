// A quantity of a draft in the unit of the process window.
import type { Dimension } from "#foundation/dimension.ts";

/** 0 °C. */
export const kelvin = 273.15;

const milligramsPerKilogram = 1_000_000;

/** A draft holds temperatures in kelvin and masses in milligrams; undefined where it holds no number. */
export function windowNumber(drafted: unknown, dimension: Dimension | "count"): number | undefined {
  if (typeof drafted !== "number") return undefined;
  if (dimension === "temperature") return drafted - kelvin;
  return dimension === "mass" ? drafted / milligramsPerKilogram : drafted;
}

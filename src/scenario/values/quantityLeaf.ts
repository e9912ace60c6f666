// The leaves that hold a quantity with its unit, and those that hold a mass to the milligram.
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import type { Fault } from "#foundation/fault.ts";
import { isQuantity, parseQuantity, quantityPattern } from "#foundation/quantity.ts";
import type { JsonSchema } from "./jsonSchema.ts";
import { leaf, refused, wrongType, type Leaf, type LeafReading } from "./leaf.ts";

/** A hundred years: up to here a time in microseconds is a whole number that a double holds exactly. */
const longest = 3_155_760_000;

/** In SI units: far beyond any quantity of a cell, and products of several still are finite numbers. */
const largest = 1e15;

/** In SI units: far below any quantity of a cell but 0, and quotients of several still are finite numbers. */
const smallest = 1e-30;

/** A tonne: no part and no shot of a blow molding cell is near it. */
const heaviest = 1000;

export interface Bounds {
  readonly above?: number;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** The unit to suggest for a number without one, where it is not the usual one of the dimension. */
  readonly usual?: string;
  /** What to do with a value outside, where there is more to say than to check it. */
  readonly remedy?: string;
}

/** Reads a quantity within bounds to SI. */
export function readQuantity(written: unknown, dimension: Dimension, bounds: Bounds = {}): LeafReading<number> {
  const expected = `${dimensions[dimension].noun} such as \`${dimensions[dimension].example}\``;
  if (typeof written !== "string" && typeof written !== "number") return refused(wrongType(written, expected));
  const reading = parseQuantity(written, dimension, bounds.usual);
  if (!isQuantity(reading)) return refused(reading);
  const limits = { atMost: dimension === "time" ? longest : largest, ...bounds };
  const outside = outOfBounds(reading.value, String(written), expected, limits);
  return outside === undefined ? { value: reading.value } : refused(outside);
}

function outOfBounds(
  value: number,
  shown: string,
  expected: string,
  { above, atLeast, atMost, remedy = "Check the number and the unit." }: Bounds,
): Fault | undefined {
  if (above !== undefined && value <= above) {
    return { code: "not-positive", message: `${shown} is not more than zero.`, expected, remedy: "Write more than 0." };
  }
  if ((atLeast !== undefined && value < atLeast) || (value !== 0 && Math.abs(value) < smallest)) {
    return { code: "too-small", message: `${shown} is too small.`, expected, remedy };
  }
  if (atMost !== undefined && value > atMost) {
    return { code: "too-large", message: `${shown} is too large.`, expected, remedy };
  }
  return undefined;
}

/** Refers to the definition of the dimension, so that each pattern is in the schema once. */
export function quantitySchema(dimension: Dimension): JsonSchema {
  return { $ref: `#/$defs/${dimension}` };
}

/** The definitions that `quantitySchema` refers to. */
export function quantityDefinitions(): JsonSchema {
  const entries = (Object.keys(dimensions) as Dimension[]).map((dimension) => {
    const { noun, example } = dimensions[dimension];
    const words = { description: `${noun} with its unit, such as ${example}`, examples: [example] };
    return [dimension, { ...words, type: "string", pattern: quantityPattern(dimension) }] as const;
  });
  return Object.fromEntries(entries);
}

export function quantity(dimension: Dimension, bounds: Bounds = {}): Leaf<number> {
  return leaf({
    expected: `${dimensions[dimension].noun} such as \`${dimensions[dimension].example}\``,
    json: quantitySchema(dimension),
    read: (written) => readQuantity(written, dimension, bounds),
  });
}

/** A plain number without a unit. */
export const plainNumber = /^\s*(?:\d+\.?\d*|\.\d+)\s*$/u;

/** A share that may be written as a ratio: `1.8` is `180 %`. */
export function ratio(bounds: Bounds & { readonly example: string }): Leaf<number> {
  const expected = `a share such as \`${bounds.example}\`, or a ratio as a plain number`;
  return leaf({
    expected,
    json: { anyOf: [quantitySchema("share"), { title: "a ratio", type: "number", minimum: 0 }] },
    read: (written) => {
      const text = typeof written === "number" || typeof written === "string" ? String(written) : "";
      const isPlain = plainNumber.test(text);
      const reading = isPlain ? { value: Number(text) } : readQuantity(written, "share");
      if ("faults" in reading) return reading;
      const shown = isPlain ? `${text}, which is ${Number((100 * reading.value).toPrecision(12))} %,` : text;
      const outside = outOfBounds(reading.value, shown, expected, bounds);
      return outside === undefined ? reading : refused(outside);
    },
  });
}

/** A mass in whole milligrams, so that masses add up exactly; ounces and pounds are rounded to one. */
export function readMass(written: unknown, bounds: Bounds = {}): LeafReading<number> {
  const reading = readQuantity(written, "mass", { ...bounds, atMost: heaviest });
  if ("faults" in reading) return reading;
  const exact = reading.value * 1_000_000;
  const whole = Math.round(exact);
  const customary = typeof written === "string" && /(?:lbs?|oz)\s*$/u.test(written);
  // Decimal grams come back from kilograms with a rounding error of a few parts in 1e16.
  const isWhole = Math.abs(exact - whole) <= exact * 1e-12;
  if ((!customary && !isWhole) || (whole === 0 && reading.value > 0)) {
    const message = `${String(written)} is not a whole number of milligrams.`;
    const remedy = `Write \`${Math.max(1, whole) / 1000} g\`.`;
    return refused({ code: "mass-too-fine", message, expected: "a mass to the milligram such as `42 g`", remedy });
  }
  return { value: whole };
}

/** A mass in whole milligrams. */
export function mass(bounds: Bounds = {}): Leaf<number> {
  return leaf({
    expected: "a mass such as `42 g`",
    json: quantitySchema("mass"),
    read: (written) => readMass(written, bounds),
  });
}

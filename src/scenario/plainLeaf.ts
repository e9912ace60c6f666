// The leaves that a glossary is made of: text, whole numbers, choices, quantities, masses to the milligram.
import { didYouMean } from "#foundation/didYouMean.ts";
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import type { Fault } from "#foundation/fault.ts";
import { isQuantity, parseQuantity, quantityPattern } from "#foundation/quantity.ts";
import { leaf, refused, wrongType, type JsonSchema, type Leaf, type LeafReading } from "./leaf.ts";

/** A hundred years: up to here a time in microseconds is a whole number that a double holds exactly. */
const longest = 3_155_760_000;

interface Bounds {
  readonly above?: number;
  readonly atMost?: number;
}

/** A scalar of YAML as `parseQuantity` takes it, or undefined. */
export function scalar(written: unknown): string | number | undefined {
  return typeof written === "string" || typeof written === "number" ? written : undefined;
}

/** Reads a quantity within bounds to SI. */
export function readQuantity(written: unknown, dimension: Dimension, bounds: Bounds = {}): LeafReading<number> {
  const expected = `${dimensions[dimension].noun} such as \`${dimensions[dimension].example}\``;
  const text = scalar(written);
  if (text === undefined) return refused(wrongType(written, expected));
  const reading = parseQuantity(text, dimension);
  if (!isQuantity(reading)) return refused(reading);
  const outside = beyond(reading.value, String(text), expected, {
    ...(dimension === "time" ? { atMost: longest } : {}),
    ...bounds,
  });
  return outside === undefined ? { value: reading.value } : refused(outside);
}

function beyond(value: number, text: string, expected: string, bounds: Bounds): Fault | undefined {
  if (bounds.above !== undefined && value <= bounds.above) {
    return { code: "not-positive", message: `${text} is not more than zero.`, expected, remedy: "Write more than 0." };
  }
  if (bounds.atMost !== undefined && value > bounds.atMost) {
    return { code: "too-large", message: `${text} is too large.`, expected, remedy: "Check the number and the unit." };
  }
  return undefined;
}

export function quantitySchema(dimension: Dimension): JsonSchema {
  return { type: "string", pattern: quantityPattern(dimension) };
}

export function quantity(dimension: Dimension, bounds: Bounds = {}): Leaf<number> {
  return leaf({
    expected: `${dimensions[dimension].noun} such as \`${dimensions[dimension].example}\``,
    json: quantitySchema(dimension),
    read: (written) => readQuantity(written, dimension, bounds),
  });
}

/** Masses are added up exactly, so each is a whole number of milligrams; ounces and pounds are rounded to one. */
export function readMilligrams(written: unknown, bounds: Bounds = {}): LeafReading<number> {
  const reading = readQuantity(written, "mass", { ...bounds, atMost: 1000 });
  if ("faults" in reading) return reading;
  const exact = reading.value * 1_000_000;
  const milligrams = Math.round(exact);
  const customary = typeof written === "string" && /lbs?\s*$|oz\s*$/u.test(written);
  if (!customary && Math.abs(exact - milligrams) > 1e-6 * Math.max(1, exact * 1e-6)) {
    const message = `${String(written)} is not a whole number of milligrams.`;
    const remedy = `Write \`${milligrams / 1000} g\`.`;
    return refused({ code: "mass-too-fine", message, expected: "a mass to the milligram such as `42 g`", remedy });
  }
  if (milligrams === 0 && bounds.above === 0) return readQuantity("0 g", "mass", bounds);
  return { value: milligrams };
}

/** A mass in whole milligrams. */
export function milligrams(bounds: Bounds = {}): Leaf<number> {
  return leaf({
    expected: "a mass such as `42 g`",
    json: quantitySchema("mass"),
    read: (written) => readMilligrams(written, bounds),
  });
}

export function wholeNumber(least: number, most: number, code = "out-of-range"): Leaf<number> {
  const expected = `a whole number from ${least} to ${most}`;
  return leaf({
    expected,
    json: { type: "integer", minimum: least, maximum: most },
    read: (written) => {
      if (typeof written !== "number") return refused(wrongType(written, expected));
      const remedy = `Write ${expected}.`;
      if (!Number.isInteger(written)) {
        return refused({ code: "not-whole", message: `${written} is not a whole number.`, expected, remedy });
      }
      if (written >= least && written <= most) return { value: written };
      return refused({ code, message: `${written} is outside ${least} to ${most}.`, expected, remedy });
    },
  });
}

export function oneOf<Choice extends string>(...choices: readonly Choice[]): Leaf<Choice> {
  const expected =
    choices.length === 1 ? `\`${choices[0]}\`` : `one of ${choices.map((each) => `\`${each}\``).join(", ")}`;
  return leaf({
    expected,
    json: { enum: choices },
    read: (written) => {
      if (typeof written === "object") return refused(wrongType(written, expected));
      const text = String(written);
      const known = choices.find((each) => each === text);
      if (known !== undefined) return { value: known };
      const meant = didYouMean(text, choices);
      const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
      return refused({ code: "unknown-choice", message: `"${text}" is not known here.`, expected, remedy });
    },
  });
}

/** Text of one line; `example` is shown when something else stands in its place. */
export function text(example: string): Leaf<string> {
  const expected = `a text such as \`${example}\``;
  return leaf({
    expected,
    json: { type: "string", pattern: String.raw`\S` },
    read: (written) => {
      if (typeof written === "number" || typeof written === "boolean") {
        return refused({ ...wrongType(written, expected), remedy: `Put it in quotes: \`"${written}"\`.` });
      }
      if (typeof written !== "string") return refused(wrongType(written, expected));
      if (written.trim() !== "") return { value: written.trim() };
      return refused({ code: "value-missing", message: "The text is empty.", expected, remedy: `Write ${expected}.` });
    },
  });
}

/** Text of a fixed form, such as a time of day. */
export function patterned(pattern: string, expected: string): Leaf<string> {
  const form = new RegExp(pattern, "u");
  return leaf({
    expected,
    json: { type: "string", pattern },
    read: (written) => {
      if (typeof written !== "string") return refused(wrongType(written, expected));
      if (form.test(written)) return { value: written };
      return refused({
        code: "wrong-form",
        message: `"${written}" has another form.`,
        expected,
        remedy: `Write ${expected}.`,
      });
    },
  });
}

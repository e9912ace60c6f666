// Reads a written quantity, such as "7.5 s" or "240 lb/h", to SI and writes it back.
import { didYouMean } from "./didYouMean.ts";
import { dimensions, dimensionFacts, type Dimension } from "./dimension.ts";
import type { Fault } from "./fault.ts";
import { allUnits, spellingsOf, unitsOf, unitSpelled, type Unit } from "./unit.ts";

export interface Quantity {
  /** In the SI unit of its dimension. */
  readonly value: number;
  /** The number and the unit as they were written. */
  readonly written: number;
  readonly unit: Unit;
}

const digits = String.raw`(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`;

function escaped(spelling: string): string {
  return spelling.replaceAll(/[.*+?^${}()|[\]\\/]/gu, String.raw`\$&`).replaceAll(" ", String.raw`\s+`);
}

/** The regular expression, as text, of everything that `parseQuantity` may accept in this dimension. */
export function quantityPattern(dimension: Dimension): string {
  const sign = dimensionFacts(dimension).signed ? "-?" : "";
  // Longest first, so that "min" is not read as "m" with a rest.
  const spellings = spellingsOf(dimension)
    .toSorted((one, other) => other.length - one.length)
    .map(escaped);
  return String.raw`^\s*${sign}${digits}\s*(?:${spellings.join("|")})\s*$`;
}

/** SI value of a number in a unit. */
export function inSi(written: number, unit: Unit): number {
  return ((written + unit.zero) * unit.numerator) / unit.denominator;
}

const written = new RegExp(String.raw`^(-?${digits})\s*(.*)$`, "u");

/**
 * Reads a quantity to its SI value, or returns what is wrong with it and the remedy. `usual` is the unit to suggest
 * for a number without one.
 *
 * @example parseQuantity("0.9 mm", "length") // { value: 0.0009, ... }
 */
export function parseQuantity(
  text: string | number,
  dimension: Dimension,
  usual: string = dimensions[dimension].usual,
): Quantity | Fault {
  if (typeof text === "number") return bareNumber(text, dimension, usual);
  const plain = text.trim();
  const [, amount = "", spelling = ""] = written.exec(plain) ?? [];
  const unit = unitSpelled(spelling, dimension);
  if (amount !== "" && spelling === "") return bareNumber(Number(amount), dimension, usual);
  if (amount === "" || unit === undefined) return misreading(plain, amount, spelling, dimension);
  return bounded(amount, unit) ?? { value: inSi(Number(amount), unit), written: Number(amount), unit };
}

function expectedOf(dimension: Dimension): string {
  return `${dimensions[dimension].noun} such as \`${dimensions[dimension].example}\``;
}

function fault(code: string, dimension: Dimension, message: string, remedy: string): Fault {
  return { code, message, expected: expectedOf(dimension), remedy };
}

function bareNumber(number: number, dimension: Dimension, usual: string): Fault {
  if (!Number.isFinite(number)) {
    return fault(
      "not-a-number",
      dimension,
      `${number} is no number to calculate with.`,
      "Write a plain number with its unit.",
    );
  }
  // A share below 1 is probably a fraction: 0.2 means 20 %, not 0.2 %.
  const shown = dimension === "share" && number < 1 ? Number((number * 100).toPrecision(12)) : number;
  const message = `${number} has no unit; did you mean \`${shown} ${usual}\`?`;
  const others = unitsOf(dimension).flatMap(({ symbol }) => (symbol === usual ? [] : symbol));
  const other = others.length === 0 ? "" : `, or another unit: ${others.join(", ")}`;
  return fault("unit-missing", dimension, message, `Write \`${shown} ${usual}\`${other}.`);
}

function bounded(amount: string, unit: Unit): Fault | undefined {
  const { dimension } = unit;
  const value = inSi(Number(amount), unit);
  if (!Number.isFinite(value)) {
    return fault("too-large", dimension, `${amount} is too large to calculate with.`, "Check the exponent.");
  }
  if (Number(amount) === 0 && /[1-9]/u.test(amount.split(/e/iu)[0] ?? "")) {
    return fault(
      "too-small",
      dimension,
      `${amount} is too small to calculate with.`,
      "Check the exponent, or write 0.",
    );
  }
  // As in the JSON Schema, where only signed dimensions have a sign.
  if (Object.is(Number(amount), -0) && !dimensionFacts(dimension).signed) {
    return fault("too-small", dimension, `${amount} has a minus sign.`, "Leave the sign out.");
  }
  if (dimension === "temperature" && value < 0) {
    return fault(
      "out-of-range",
      dimension,
      `${amount} ${unit.symbol} lies below absolute zero.`,
      "Check the sign and the unit.",
    );
  }
  if (value < 0 && !dimensionFacts(dimension).signed) {
    return fault("negative", dimension, `${amount} ${unit.symbol} is negative.`, `Write 0 or more.`);
  }
  return undefined;
}

const commaGroups = /^\d{1,3}(?:,\d{3})+(?!\d)/u;
const spacedGroups = /^\d{1,3}(?:[ '’_\u00a0\u2009\u202f]\d{3})+(?!\d)/u;
const decimalComma = /^(\d+),(\d+)/u;
const foreignMinus = /^[−–—]/u;

function misreading(plain: string, amount: string, spelling: string, dimension: Dimension): Fault {
  return (
    misreadNumber(plain, dimension) ??
    (amount === "" || /^[.,:/\d]/u.test(spelling)
      ? notANumber(plain, dimension)
      : misreadUnit(amount, spelling, dimension))
  );
}

function misreadNumber(plain: string, dimension: Dimension): Fault | undefined {
  const groups = (commaGroups.exec(plain) ?? spacedGroups.exec(plain))?.[0];
  if (groups !== undefined) return separatedThousands(plain, groups, dimension);
  if (decimalComma.test(plain)) {
    const meant = plain.replace(decimalComma, "$1.$2");
    return fault("decimal-comma", dimension, `"${plain}" has a decimal comma.`, `Write \`${meant}\` with a point.`);
  }
  if (!foreignMinus.test(plain)) return undefined;
  const message = `"${plain}" begins with a minus sign that is not a hyphen.`;
  if (!dimensionFacts(dimension).signed) return fault("negative", dimension, message, "Write 0 or more.");
  const meant = plain.replace(foreignMinus, "-");
  return fault("not-a-number", dimension, message, `Write \`${meant}\` with a plain hyphen.`);
}

function separatedThousands(plain: string, groups: string, dimension: Dimension): Fault {
  const rest = plain.slice(groups.length);
  const whole = groups.replaceAll(/\D/gu, "");
  // "1,200" may be either; "1,200,000" may not.
  const other = /^\d+,\d+$/u.test(groups)
    ? ` or, if a decimal comma was meant, \`${groups.replace(",", ".")}${rest}\``
    : "";
  return fault(
    "thousands-separator",
    dimension,
    `"${groups}" separates thousands.`,
    `Write \`${whole}${rest}\`${other}.`,
  );
}

function notANumber(plain: string, dimension: Dimension): Fault {
  const remedy = /^\d+:\d/u.test(plain)
    ? "Write one number with one unit, such as `90 s` or `1.5 min`."
    : `Write one plain number and its unit, such as \`${dimensions[dimension].example}\`.`;
  return fault(
    "not-a-number",
    dimension,
    plain === "" ? "The text is empty." : `"${plain}" is not a number with a unit.`,
    remedy,
  );
}

function misreadUnit(amount: string, spelling: string, dimension: Dimension): Fault {
  const known = spellingsOf(dimension).filter((each) => !each.startsWith("/"));
  const other = allUnits().find((unit) => unit.symbol === spelling || unit.aliases.includes(spelling));
  if (other !== undefined) {
    const message = `"${spelling}" is the unit of ${dimensions[other.dimension].noun}, not of ${dimensions[dimension].noun}.`;
    return fault("unit-mismatch", dimension, message, `Write one of: ${symbolsOf(dimension)}.`);
  }
  const meant = didYouMean(spelling, known);
  const remedy =
    meant === undefined ? `Write one of: ${symbolsOf(dimension)}.` : `Did you mean \`${amount} ${meant}\`?`;
  return fault("unit-unknown", dimension, `The unit "${spelling}" is not known.`, remedy);
}

function symbolsOf(dimension: Dimension): string {
  return unitsOf(dimension)
    .map((unit) => unit.symbol)
    .join(", ");
}

/** True where the reading succeeded. */
export function isQuantity(reading: Quantity | Fault): reading is Quantity {
  return "unit" in reading;
}

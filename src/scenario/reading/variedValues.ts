// Parses `--vary path=values`: a path and the values that a sweep sets there, one after the other.
import type { Fault } from "#foundation/fault.ts";
import { decimalPattern, evenRange, stepCount, stepRange } from "./decimalRange.ts";

export interface Varied {
  /** As `--set` takes it. */
  readonly path: string;
  /** As `--set` takes them. */
  readonly values: readonly string[];
}

/** Points of one sweep. */
export const mostPoints = 10_000;

const expected = "`path=7..10 s by 0.5 s`, `path=7..10 s/7` or `path=7 s,8 s,9 s`";

function refused(code: string, message: string, remedy: string): Fault {
  return { code, message, expected, remedy };
}

export function parseVaried(text: string): Varied | Fault {
  const equals = text.indexOf("=");
  const path = text.slice(0, equals).trim();
  if (equals < 0 || path === "") {
    return refused("vary-form", `"${text}" is not a path, an equals sign and values.`, `Write ${expected}.`);
  }
  const values: string[] = [];
  for (const piece of piecesOf(text.slice(equals + 1))) {
    const found = valuesOf(piece);
    if (!Array.isArray(found)) return found as Fault;
    values.push(...(found as readonly string[]));
  }
  const twice = values.find((value, i) => values.indexOf(value) < i);
  if (twice !== undefined) return refused("vary-twice", `The value ${twice} is named twice.`, "Name each value once.");
  return { path, values };
}

/** Splits at commas outside brackets and quotes, so that a value may be any YAML. */
function piecesOf(text: string): readonly string[] {
  const pieces: string[] = [""];
  let [depth, quote] = [0, ""];
  for (const letter of text) {
    if (quote !== "") quote = letter === quote ? "" : quote;
    else if (letter === '"' || letter === "'") quote = letter;
    else if ("[{".includes(letter)) depth += 1;
    else if ("]}".includes(letter)) depth -= 1;
    if (letter === "," && depth === 0 && quote === "") pieces.push("");
    else pieces[pieces.length - 1] += letter;
  }
  return pieces.map((piece) => piece.trim());
}

const unit = String.raw`\s*([^\s\d.+-][^.]*?)?\s*`;
const rangePattern = new RegExp(
  String.raw`^(${decimalPattern})${unit}\.\.\s*(${decimalPattern})${unit}(?:\bby\s*(${decimalPattern})${unit}|/\s*(\d+))$`,
  "u",
);

function valuesOf(piece: string): readonly string[] | Fault {
  if (piece === "") return refused("vary-form", "A value is missing.", "Remove the extra comma, or write the value.");
  if (!piece.includes("..") || /[[{"']/u.test(piece)) return [piece];
  const [whole, from = "", fromUnit, to = "", toUnit, by, byUnit, count] = rangePattern.exec(piece) ?? [];
  if (whole === undefined) return refused("vary-form", `"${piece}" is not a range.`, `Write ${expected}.`);
  const units = new Set([fromUnit, toUnit, byUnit].filter((each) => each !== undefined && each !== ""));
  if (units.size > 1) {
    return refused("vary-unit", `The range has the units ${[...units].join(" and ")}.`, "Write one unit at all ends.");
  }
  const numbers = by === undefined ? evenNumbers(from, to, Number(count)) : steppedNumbers(from, to, by);
  if ("code" in numbers) return numbers;
  const isMove = /^[+-]/u.test(from) || /^[+-]/u.test(to);
  const [symbol = ""] = units;
  return numbers.map((number) => `${isMove && !number.startsWith("-") ? "+" : ""}${number} ${symbol}`.trim());
}

function evenNumbers(from: string, to: string, count: number): readonly string[] | Fault {
  if (count < 2)
    return refused("vary-range", `A range of ${count} points has no two ends.`, "Ask for 2 points or more.");
  return count > mostPoints ? tooMany(count) : evenRange(from, to, count);
}

function steppedNumbers(from: string, to: string, by: string): readonly string[] | Fault {
  const count = stepCount(from, to, by);
  if (count === 0) return refused("vary-range", "The step of the range is 0.", "Write a step above 0.");
  return count > mostPoints ? tooMany(count) : stepRange(from, to, by);
}

export function tooMany(points: number): Fault {
  const message = `There are ${points} points, more than ${mostPoints}.`;
  return refused("vary-many", message, "Vary fewer values, or sweep them in several calls.");
}

export const varyIssueCodes = {
  "vary-form": ["a --vary is not a path and values", `Write ${expected}.`],
  "vary-twice": ["a --vary names a value or a path twice", "Name each value and each path once."],
  "vary-unit": ["the ends of a range have different units", "Write one unit at all ends."],
  "vary-range": ["a range has no step or fewer than two points", "Write a step above 0, or ask for 2 points or more."],
  "vary-many": [`a sweep has more than ${mostPoints} points`, "Vary fewer values, or sweep them in several calls."],
} as const;

// The positions of one lever: whole numbers one by one, times and temperatures by a shift, all else by a factor.
import { stringify } from "yaml";
import { allUnits } from "#foundation/unit.ts";
import { movedValue } from "#scenario/reading/movedValue.ts";
import { parseSetting } from "#scenario/reading/setting.ts";
import type { Lever, LeverPosition } from "./lever.ts";

/** The value of a lever as the text has it, and the paths of all places that have it. */
export interface Quantity {
  readonly written: unknown;
  readonly paths: readonly string[];
}

type Positions = Pick<Lever, "positions" | "present">;

const form = /^\s*(-?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)(?:\s+of\s+\w+)?\s*$/u;
/** Steps each way, of about 2 % for a shift. */
const shiftSteps = 25;
const mostPercent = 50;
const mostDegrees = 30;
/** Whole numbers below and above the present one. */
const [fewer, more] = [4, 6];
/** Longer values, such as measured times, are not written out. */
const longestText = 60;

/** Undefined where the value is no quantity. */
export function leverPositions(quantity: Quantity): Positions | undefined {
  const { written } = quantity;
  if (typeof written === "number" && Number.isInteger(written) && written >= 0) return countPositions(quantity);
  const first = firstNumber(written);
  if (first === undefined || first.number === 0) return undefined;
  const { number, unit } = first;
  const dimension = allUnits().find(({ symbol, aliases }) => symbol === unit || aliases.includes(unit))?.dimension;
  if (unit !== "" && dimension === undefined) return undefined;
  if (dimension === "temperature") return moves(quantity, [mostDegrees, mostDegrees], (i) => `${i} ${unit}`);
  if (dimension === "cycles" || dimension === "parts")
    return moves(quantity, [Math.min(shiftSteps, number - 1), shiftSteps], (i) => `${i} ${unit}`);
  if (dimension !== "time" || !canShift(written)) return moves(quantity, [mostPercent, mostPercent], (i) => `${i} %`);
  const { step, decimals } = niceStep(Math.abs(number) / (2 * shiftSteps));
  return moves(quantity, [shiftSteps, shiftSteps], (i) => `${(i * step).toFixed(decimals)} ${unit}`);
}

function countPositions({ written, paths }: Quantity): Positions {
  const value = Number(written);
  const least = Math.max(value === 0 ? 0 : 1, value - fewer);
  const numbers = Array.from({ length: value + more - least + 1 }, (_, i) => least + i);
  return {
    positions: numbers.map((number) => ({
      words: String(number),
      settings: number === value ? [] : paths.map((path) => `${path}=${number}`),
    })),
    present: value - least,
  };
}

function moves(
  { written, paths }: Quantity,
  [down, up]: readonly [number, number],
  moveText: (i: number) => string,
): Positions {
  const positions = Array.from({ length: down + up + 1 }, (_, place): LeverPosition => {
    const i = place - down;
    if (i === 0) return { words: textOf(written), settings: [] };
    const move = `${i > 0 ? "+" : ""}${moveText(i)}`;
    const settings = paths.map((path) => `${path}=${move}`);
    return { words: movedWords(written, settings[0]!, move), settings };
  });
  return { positions, present: down };
}

function movedWords(written: unknown, setting: string, move: string): string {
  const shown = move.replace("-", "−");
  const parsed = parseSetting(setting);
  if ("code" in parsed || parsed.change.kind === "value" || parsed.change.kind === "removal") return shown;
  if (JSON.stringify(written).length > longestText) return shown;
  const moved = movedValue(written, parsed.change, undefined);
  return "fault" in moved ? shown : `${textOf(moved.value)}, ${shown}`;
}

function textOf(value: unknown): string {
  const text = stringify(value, { collectionStyle: "flow", lineWidth: 0 }).trim();
  const plain = text
    .replace(/^\{ | \}$/gu, "")
    .replaceAll(/: \[ ?| ?\]/gu, (each) => (each.startsWith(":") ? " " : ""));
  return plain.length > longestText ? "measured values" : plain.replaceAll('"', "");
}

/** The number and unit of a value, or of the first parameter of a distribution. */
function firstNumber(written: unknown): { readonly number: number; readonly unit: string } | undefined {
  if (typeof written === "number") return { number: written, unit: "" };
  if (typeof written === "string") {
    const [, number, unit = ""] = form.exec(written) ?? [];
    return number === undefined ? undefined : { number: Number(number), unit: unit.replaceAll(/\s+/gu, " ") };
  }
  if (Array.isArray(written)) return firstNumber((written as readonly unknown[])[0]);
  if (typeof written !== "object" || written === null) return undefined;
  const [inner, ...others] = Object.values(written);
  return others.length > 0 ? undefined : firstNumber(inner);
}

/** The spread of these follows from their mean. */
const canShift = (written: unknown): boolean =>
  typeof written !== "object" || written === null || !("exponential" in written || "weibull" in written);

/** 1, 2 or 5 with zeros, the nearest below, and how many decimals it has. */
function niceStep(wanted: number): { readonly step: number; readonly decimals: number } {
  const [digits = "1", exponent = "0"] = wanted.toExponential(2).split("e");
  const digit = [5, 2, 1].find((each) => each <= Number(digits)) ?? 1;
  return { step: Number(`${digit}e${exponent}`), decimals: Math.max(0, -Number(exponent)) };
}

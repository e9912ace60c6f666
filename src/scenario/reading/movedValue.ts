// A value or a distribution after a move such as `-1 s` or `*0.9`, written as a scenario writes it.
import { dimensions } from "#foundation/dimension.ts";
import type { Fault } from "#foundation/fault.ts";
import { allUnits, type Unit } from "#foundation/unit.ts";
import { distributionShapes, type DistributionKind } from "#scenario/distributions/distributionShape.ts";
import { isMapping } from "#scenario/values/key.ts";
import { columnTexts } from "./readColumns.ts";
import type { ReadText } from "./readText.ts";
import type { Move } from "./setting.ts";

export type Moved = { readonly value: unknown } | { readonly fault: Fault };

/** Parameters that a shift moves, so that the spread stays; none where the spread follows from the mean. */
const shifted: Readonly<Record<DistributionKind, readonly string[]>> = {
  uniform: ["min", "max"],
  triangular: ["min", "mode", "max"],
  normal: ["mean"],
  lognormal: ["mean"],
  gamma: ["mean"],
  exponential: [],
  weibull: [],
};

/** `written` is the value in the text, as plain data. */
export function movedValue(written: unknown, move: Move, readText: ReadText | undefined): Moved {
  if (written === undefined) {
    return refused("There is no value to move.", "Set the value itself, without a sign.");
  }
  if (typeof written === "string" || typeof written === "number") return movedNumber(written, move);
  const [kind, ...others] = isMapping(written) ? Object.keys(written) : [];
  const inner = isMapping(written) && kind !== undefined ? written[kind] : undefined;
  if (kind === "empirical" && others.length === 0) return movedEmpirical(inner, move, readText);
  if (isDistributionKind(kind) && others.length === 0) return movedDistribution(kind, inner, move);
  const noun = Array.isArray(written) ? "A list" : "A mapping";
  return refused(`${noun} cannot be moved.`, "Name one value in it, or a distribution.");
}

function refused(message: string, remedy: string): { readonly fault: Fault } {
  return { fault: { code: "set-move", message, expected: "a number with its unit, or a distribution", remedy } };
}

function isDistributionKind(kind: string | undefined): kind is DistributionKind {
  return kind !== undefined && Object.hasOwn(distributionShapes, kind);
}

function movedDistribution(kind: DistributionKind, inner: unknown, move: Move): Moved {
  const { parameters } = distributionShapes[kind];
  const list: readonly unknown[] = Array.isArray(inner) ? inner : [inner];
  if (list.length !== parameters.length) {
    return refused(`The values of this ${kind} distribution cannot be moved.`, "Correct the distribution first.");
  }
  if (move.kind === "shift" && shifted[kind].length === 0) {
    const article = kind === "exponential" ? "an" : "a";
    const message = `A shift would change the spread of ${article} ${kind} distribution.`;
    return refused(message, "Scale it, such as `*0.9` or `-10 %`.");
  }
  const isMoved = (name: string | undefined): boolean =>
    move.kind === "factor" ? name !== "shape" : shifted[kind].some((each) => each === name);
  const moved = movedList(list, move, (place) => isMoved(parameters[place]));
  if ("fault" in moved) return moved;
  return { value: { [kind]: Array.isArray(inner) ? moved.value : moved.value[0] } };
}

function movedEmpirical(inner: unknown, move: Move, readText: ReadText | undefined): Moved {
  const list: readonly unknown[] | undefined = Array.isArray(inner) ? inner : columnTexts(inner, readText);
  if (list === undefined) return refused("The measured values cannot be read.", "Check the file and its column.");
  const moved = movedList(list, move, () => true);
  return "fault" in moved ? moved : { value: { empirical: moved.value } };
}

function movedList(
  list: readonly unknown[],
  move: Move,
  isMoved: (place: number) => boolean,
): { readonly value: readonly unknown[] } | { readonly fault: Fault } {
  const moved = list.map((each, place) => (isMoved(place) ? movedItem(each, move) : { value: each }));
  const fault = moved.find((each) => "fault" in each);
  return fault ?? { value: moved.flatMap((each) => ("value" in each ? [each.value] : [])) };
}

function movedItem(item: unknown, move: Move): Moved {
  if (typeof item === "string" || typeof item === "number") return movedNumber(item, move);
  return refused("A list or mapping inside a distribution cannot be moved.", "Correct the distribution first.");
}

/** A number, its unit, and of what it is a share: `30 % of part`. */
const form = /^\s*(-?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)(\s+of\s+\w+)?\s*$/u;

function movedNumber(written: string | number, move: Move): Moved {
  const [, number, spelling = "", share = ""] = form.exec(String(written)) ?? [];
  const units = unitsSpelled(spelling);
  if (number === undefined || (spelling !== "" && units.length === 0)) {
    return refused(`\`${written}\` is not a number with a unit, so it cannot be moved.`, "Set the value itself.");
  }
  const found = move.kind === "factor" ? scaled(Number(number), units, move) : shiftedBy(Number(number), units, move);
  if (typeof found !== "number") return found;
  const value = rounded(found, units);
  return { value: typeof written === "number" ? value : `${value} ${spelling}`.trimEnd() + share };
}

function unitsSpelled(spelling: string): readonly Unit[] {
  const plain = spelling.replaceAll(/\s+/gu, " ");
  return allUnits().filter(({ symbol, aliases }) => symbol === plain || aliases.includes(plain));
}

function scaled(number: number, units: readonly Unit[], { factor }: Extract<Move, { kind: "factor" }>): number | Moved {
  // Half of 60 °C is another temperature than half of 140 °F.
  if (!units.some(({ dimension }) => dimension === "temperature")) return number * factor;
  return refused("A temperature has no factor.", "Shift it, such as `+5 °C`.");
}

/** `-1 s` on `0.5 min` is taken from the minutes, so that the value keeps its unit. */
function shiftedBy(
  number: number,
  units: readonly Unit[],
  { amount, unit: spelling, text }: Extract<Move, { kind: "shift" }>,
): number | Moved {
  const [own] = units;
  const by = unitsSpelled(spelling);
  if (own === undefined && spelling === "") return number + amount;
  if (own !== undefined && spelling === "") {
    const remedy = `Write \`${text} ${own.symbol}\`.`;
    return { fault: { code: "unit-missing", message: `\`${text}\` has no unit.`, remedy } };
  }
  const like = by.find(({ dimension }) => units.some((unit) => unit.dimension === dimension));
  if (own !== undefined && like !== undefined) {
    return number + (amount * like.numerator * own.denominator) / (like.denominator * own.numerator);
  }
  const remedy = own === undefined ? "Write the move without a unit." : `Write it in ${own.symbol}.`;
  const [first] = by;
  if (first === undefined) {
    return { fault: { code: "unit-unknown", message: `The unit "${spelling}" is not known.`, remedy } };
  }
  const noun = own === undefined ? "a plain number" : dimensions[own.dimension].noun;
  const message = `\`${text}\` is ${dimensions[first.dimension].noun}, the value is ${noun}.`;
  return { fault: { code: "unit-mismatch", message, remedy } };
}

/** Enough digits for every value that people write, and few enough to hide what binary fractions leave over. */
const mostDigits = 12;

/** Masses go to the milligram, as a scenario has them; ounces and pounds are rounded when they are read. */
function rounded(value: number, [unit]: readonly Unit[]): number {
  const isMetricMass = unit?.dimension === "mass" && unit.symbol !== "lb" && unit.symbol !== "oz";
  const milligrams = isMetricMass ? (unit.numerator * 1_000_000) / unit.denominator : undefined;
  const exact = milligrams === undefined ? value : Math.round(value * milligrams) / milligrams;
  return Number(exact.toPrecision(mostDigits));
}

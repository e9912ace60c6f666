// Reads the values that a distribution is given, and suspects a decimal comma where YAML made two values of one.
import { refused, wrongType, type LeafFault, type LeafReading } from "#scenario/values/leaf.ts";
import type { DistributionKey } from "./distributionReading.ts";
import { readQuantity } from "#scenario/values/quantityLeaf.ts";

/** Least and greatest shape that the sampler's tables are measured for. */
export const shapeLimits = { least: 0.5, most: 20 } as const;

/** Values of a list in SI; `within` is the path of the first, or of the only one where it ends in no number. */
export function readParameters(
  list: readonly unknown[],
  nameOf: (place: number) => string,
  key: DistributionKey,
  within: readonly (string | number)[],
): LeafReading<readonly number[]> {
  const values: number[] = [];
  const faults: LeafFault[] = [];
  for (const [place, item] of list.entries()) {
    const reading = readParameter(item, nameOf(place), key);
    const path = within.map((step) => (typeof step === "number" ? place : step));
    if ("value" in reading) values.push(reading.value);
    else faults.push(...reading.faults.map((fault) => ({ ...fault, within: path })));
  }
  return faults.length > 0 ? refused(...faults) : { value: values };
}

function readParameter(item: unknown, name: string, { dimension, positive }: DistributionKey): LeafReading<number> {
  if (name !== "shape") return readQuantity(item, dimension, positive && name !== "sd" ? { above: 0 } : {});
  const { least, most } = shapeLimits;
  const expected = `a plain number from ${least} to ${most}`;
  if (typeof item !== "number") return refused(wrongType(item, expected));
  if (item >= least && item <= most) return { value: item };
  const message = `A shape of ${item} is outside ${least} to ${most}.`;
  return refused({ code: "distribution-shape", message, expected, remedy: `Write ${expected}.` });
}

/** YAML reads `[7,5 s, 8 s]` as three items: a whole number without a unit, then what follows the comma. */
export function decimalComma(list: readonly unknown[], kind: string): LeafFault | undefined {
  const place = list.findIndex((item, index) => {
    const next = list[index + 1];
    return Number.isInteger(item) && typeof next === "string" && /^\s*\d/u.test(next);
  });
  if (place < 0) return undefined;
  const meant = `${String(list[place])}.${String(list[place + 1]).trim()}`;
  return {
    code: "decimal-comma",
    message: `"${meant.replace(".", ",")}" looks like a decimal comma: the list reads it as two values.`,
    expected: "numbers with a decimal point, each with its unit",
    remedy: `Write \`${meant}\` with a point; if two values were meant, give the first its unit.`,
    within: [kind, place],
  };
}

// Reads a distribution of measured values: a list in the scenario, or the name of a column in a CSV file.
import { didYouMean } from "#foundation/didYouMean.ts";
import { isMapping } from "#scenario/values/key.ts";
import { absence, refused, wrongType, type LeafFault, type LeafReading } from "#scenario/values/leaf.ts";
import { decimalComma, readParameters } from "./distributionParameter.ts";
import type { DistributionKey, DistributionReading } from "./distributionReading.ts";

const forms = "a list of measured values, or `{ file: log.csv, column: cool_s }`";

export function readEmpirical(inner: unknown, key: DistributionKey): LeafReading<DistributionReading> {
  if (isMapping(inner)) return readColumnDistribution(inner, key);
  if (!Array.isArray(inner)) return refused({ ...wrongType(inner, forms), within: ["empirical"] });
  if (inner.length === 0) {
    const fault = {
      code: "distribution-length",
      message: "The list is empty.",
      expected: forms,
      remedy: `Write ${forms}.`,
    };
    return refused({ ...fault, within: ["empirical"] });
  }
  const comma = decimalComma(inner, "empirical");
  if (comma !== undefined) return refused(comma);
  const reading = readParameters(inner, () => "value", key, ["empirical", 0]);
  return "faults" in reading ? reading : { value: { kind: "empirical", values: reading.value } };
}

const columnKeys = {
  file: "a CSV file beside the scenario, such as `log.csv`",
  column: "the name of a column, such as `cool_s`",
  unit: "the unit of the values, such as `s`",
} as const;

function readColumnDistribution(
  inner: Readonly<Record<string, unknown>>,
  key: DistributionKey,
): LeafReading<DistributionReading> {
  const { file, column, unit } = inner;
  const faults = [
    ...Object.keys(inner).flatMap(unknownKeyFault),
    ...textFault("file", file),
    ...textFault("column", column),
    ...(unit === undefined ? [] : textFault("unit", unit)),
  ];
  if (faults.length > 0 || typeof file !== "string" || typeof column !== "string") return refused(...faults);
  return { value: { kind: "column", file, column, ...(typeof unit === "string" ? { unit } : {}), ...key } };
}

function unknownKeyFault(name: string): readonly LeafFault[] {
  if (Object.hasOwn(columnKeys, name)) return [];
  const known = Object.keys(columnKeys);
  const meant = didYouMean(name, known);
  const remedy = meant === undefined ? "Delete it." : `Did you mean \`${meant}\`?`;
  const message = `The key \`${name}\` is not known here.`;
  const expected = `one of ${known.join(", ")}`;
  return [{ code: "unknown-key", message, expected, remedy, within: ["empirical", name], at: "key" }];
}

function textFault(name: keyof typeof columnKeys, value: unknown): readonly LeafFault[] {
  if (typeof value === "string" && value.trim() !== "") return [];
  const wanted = columnKeys[name];
  const fault = value === undefined || value === null ? absence(value, wanted) : wrongType(value, wanted);
  return [{ ...fault, within: ["empirical", name] }];
}

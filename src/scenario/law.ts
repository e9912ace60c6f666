// How a time or a rate is written as a law: a plain quantity, or a mapping of one key such as `{ normal: [7.5 s, 0.3 s] }`.
import { didYouMean } from "#foundation/didYouMean.ts";
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import type { Distribution } from "#engine/distribution.ts";
import { isMapping } from "./key.ts";
import { leaf, refused, wrongType, type JsonSchema, type Leaf, type LeafReading } from "./leaf.ts";
import { lawShapes, type LawKind } from "./lawShape.ts";
import { quantitySchema, readQuantity } from "./plainLeaf.ts";

/** A law whose values stand in a column of a CSV file, not yet read. */
export interface ColumnLaw {
  readonly kind: "column";
  readonly file: string;
  readonly column: string;
  /** Of values that carry none themselves. */
  readonly unit?: string;
  readonly dimension: Dimension;
  readonly positive: boolean;
}

export type LawReading = Distribution | ColumnLaw;

const kinds = [...(Object.keys(lawShapes) as LawKind[]), "empirical"] as const;

/** Said after "expected": a plain quantity, or one of the laws shown with it. */
function forms(dimension: Dimension): string {
  const { noun, example } = dimensions[dimension];
  const law = dimension === "time" ? "{ normal: [7.5 s, 0.3 s] }" : "{ normal: [110 kg/h, 2 kg/h] }";
  return `${noun} such as \`${example}\`, or a law such as \`${law}\``;
}

interface LawKey {
  readonly dimension: Dimension;
  /** A rate of zero would last for ever. */
  readonly positive: boolean;
}

/** A time that may vary from cycle to cycle. */
export const timeLaw = lawLeaf({ dimension: "time", positive: false }, "timeLaw", "a time or a law of times");

/** A mass rate that may vary from cycle to cycle. */
export const rateLaw = lawLeaf({ dimension: "rate", positive: true }, "rateLaw", "a mass rate or a law of mass rates");

/** A time, a law of times, or `estimate`: computed from wall, material and temperatures. */
export const timeLawOrEstimate: Leaf<LawReading | "estimate"> = leaf<LawReading | "estimate">({
  expected: "a time such as `7.5 s`, a law of times, or `estimate`",
  json: { id: "timeLawOrEstimate", anyOf: [{ const: "estimate" }, { $ref: "#/$defs/timeLaw" }] },
  read: (written) =>
    written === "estimate" ? { value: written } : readLaw(written, { dimension: "time", positive: false }),
});

function lawLeaf(key: LawKey, id: string, description: string): Leaf<LawReading> {
  return leaf({
    expected: forms(key.dimension),
    json: { id, description, anyOf: [quantitySchema(key.dimension), lawSchema(key.dimension)] },
    read: (written) => readLaw(written, key),
  });
}

function readLaw(written: unknown, key: LawKey): LeafReading<LawReading> {
  if (isMapping(written)) return readNamedLaw(written, key);
  if (typeof written !== "string" && typeof written !== "number")
    return refused(wrongType(written, forms(key.dimension)));
  const reading = readQuantity(written, key.dimension, key.positive ? { above: 0 } : {});
  return "faults" in reading ? reading : { value: { kind: "fixed", value: reading.value } };
}

function readNamedLaw(written: Readonly<Record<string, unknown>>, key: LawKey): LeafReading<LawReading> {
  const names = Object.keys(written);
  const unknown = names.filter((name) => !kinds.some((kind) => kind === name));
  if (unknown.length > 0) return refused(...unknown.map(unknownLaw));
  const [name] = names;
  if (name === undefined || names.length > 1) {
    const message = name === undefined ? "The law has no name." : `Here are ${names.length} laws: ${names.join(", ")}.`;
    return refused({ code: "law-count", message, expected: `one of ${kinds.join(", ")}`, remedy: "Keep one law." });
  }
  const inner = written[name];
  return name === "empirical" ? readEmpirical(inner, key) : readParameters(name as LawKind, inner, key);
}

function unknownLaw(name: string): {
  code: string;
  message: string;
  expected: string;
  remedy: string;
  within: string[];
} {
  const expected = `one of ${kinds.join(", ")}`;
  if (/^\d/u.test(name)) {
    const remedy = "Write numbers with a decimal point: `7.5 s`.";
    return {
      code: "decimal-comma",
      message: `"${name}" looks like the rest of a number with a decimal comma.`,
      expected,
      remedy,
      within: [name],
    };
  }
  const meant = didYouMean(name, kinds);
  const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
  return { code: "law-unknown", message: `There is no law "${name}" here.`, expected, remedy, within: [name] };
}

function readParameters(kind: LawKind, inner: unknown, key: LawKey): LeafReading<Distribution> {
  const shape = lawShapes[kind];
  const single = shape.parameters.length === 1;
  const form = single ? `{ ${kind}: ${shape.parameters[0]} }` : `{ ${kind}: [${shape.parameters.join(", ")}] }`;
  const list = single ? [inner] : inner;
  if (!Array.isArray(list)) return refused({ ...wrongType(inner ?? {}, `\`${form}\``), within: [kind] });
  const comma = decimalComma(list, kind);
  if (comma !== undefined) return refused(comma);
  if (list.length !== shape.parameters.length) {
    const message = `A ${kind} law takes ${shape.parameters.length} values, here are ${list.length}.`;
    return refused({
      code: "law-length",
      message,
      expected: `\`${form}\``,
      remedy: `Write \`${form}\`.`,
      within: [kind],
    });
  }
  const readings = list.map((item, place) => readParameter(item, shape.parameters[place] ?? "", key));
  const faults = readings.flatMap((reading, place) =>
    "faults" in reading ? reading.faults.map((fault) => ({ ...fault, within: single ? [kind] : [kind, place] })) : [],
  );
  if (faults.length > 0) return refused(...faults);
  const values = readings.flatMap((reading) => ("value" in reading ? [reading.value] : []));
  const fault = shape.check(values, `\`${form}\``);
  return fault === undefined ? { value: shape.build(values) } : refused({ ...fault, within: [kind] });
}

function readParameter(item: unknown, parameter: string, key: LawKey): LeafReading<number> {
  if (item === null) return refused(wrongType({}, `a value for ${parameter}`));
  if (parameter !== "shape") {
    const positive = key.positive && parameter !== "sd";
    return readQuantity(item, key.dimension, positive ? { above: 0 } : {});
  }
  const expected = "a plain number such as `2.5`";
  if (typeof item !== "number") return refused(wrongType(item, expected));
  if (item >= 0.5 && item <= 20) return { value: item };
  const message = `A shape of ${item} is outside 0.5 to 20.`;
  return refused({ code: "law-shape", message, expected, remedy: "Write a shape from 0.5 to 20." });
}

/** YAML reads `[7,5 s, 8 s]` as three items: a whole number without a unit, then the rest of it. */
function decimalComma(
  list: readonly unknown[],
  kind: LawKind | "empirical",
): ReturnType<typeof unknownLaw> | undefined {
  const place = list.findIndex(
    (item, index) => Number.isInteger(item) && /^\s*\d+\s*\D/u.test(String(list[index + 1])),
  );
  // The shape of a weibull is a plain number, but nothing follows it.
  if (place < 0) return undefined;
  const meant = `${String(list[place])}.${String(list[place + 1]).trim()}`;
  return {
    code: "decimal-comma",
    message: `"${meant.replace(".", ",")}" looks like a decimal comma: the list reads it as two values.`,
    expected: "numbers with a decimal point, each with its unit",
    remedy: `Write \`${meant}\` with a point; if two values were meant, give the first its unit.`,
    within: [kind, String(place)],
  };
}

function readEmpirical(inner: unknown, key: LawKey): LeafReading<LawReading> {
  if (isMapping(inner)) return readColumnLaw(inner, key);
  const expected = "a list of measured values, or `{ file: log.csv, column: cool_s }`";
  if (!Array.isArray(inner)) return refused({ ...wrongType(inner ?? {}, expected), within: ["empirical"] });
  if (inner.length === 0) {
    return refused({
      code: "law-length",
      message: "The list is empty.",
      expected,
      remedy: `Write ${expected}.`,
      within: ["empirical"],
    });
  }
  const comma = decimalComma(inner, "empirical");
  if (comma !== undefined) return refused(comma);
  const readings = inner.map((item: unknown) => readParameter(item, "value", key));
  const faults = readings.flatMap((reading, place) =>
    "faults" in reading ? reading.faults.map((fault) => ({ ...fault, within: ["empirical", place] })) : [],
  );
  if (faults.length > 0) return refused(...faults);
  return {
    value: { kind: "empirical", values: readings.flatMap((reading) => ("value" in reading ? [reading.value] : [])) },
  };
}

function readColumnLaw(inner: Readonly<Record<string, unknown>>, key: LawKey): LeafReading<LawReading> {
  const keys = ["file", "column", "unit"] as const;
  const strangers = Object.keys(inner).filter((name) => !keys.some((each) => each === name));
  const faults = [
    ...strangers.map((name) => {
      const meant = didYouMean(name, keys);
      const remedy = meant === undefined ? "Delete it." : `Did you mean \`${meant}\`?`;
      return {
        code: "unknown-key",
        message: `The key \`${name}\` is not known here.`,
        expected: keys.join(", "),
        remedy,
        within: ["empirical", name],
      };
    }),
    ...keys.flatMap((name) => {
      const value = inner[name];
      if ((value === undefined && name === "unit") || (typeof value === "string" && value.trim() !== "")) return [];
      const expected = name === "file" ? "a CSV file beside the scenario, such as `log.csv`" : `the ${name}, as text`;
      const code = value === undefined ? "missing" : "wrong-type";
      return [
        {
          code,
          message: `\`${name}\` is ${value === undefined ? "missing" : "no text"}.`,
          expected,
          remedy: `Give ${expected}.`,
          within: ["empirical", name],
        },
      ];
    }),
  ];
  if (faults.length > 0) return refused(...faults);
  const { file, column, unit } = inner as { readonly file: string; readonly column: string; readonly unit?: string };
  return { value: { kind: "column", file, column, ...(unit === undefined ? {} : { unit }), ...key } };
}

function lawSchema(dimension: Dimension): JsonSchema {
  const own = quantitySchema(dimension);
  const parameter = (name: string): JsonSchema =>
    name === "shape" ? { type: "number", minimum: 0.5, maximum: 20 } : own;
  const properties = Object.fromEntries(
    (Object.keys(lawShapes) as LawKind[]).map((kind) => {
      const { parameters } = lawShapes[kind];
      if (parameters.length === 1) return [kind, { description: parameters.join(), ...own }];
      const items = { prefixItems: parameters.map(parameter), items: false, minItems: parameters.length };
      return [kind, { description: `[${parameters.join(", ")}]`, type: "array", ...items }];
    }),
  );
  const file = { type: "string", minLength: 1 };
  const column = {
    type: "object",
    properties: { file, column: file, unit: file },
    required: ["file", "column"],
    additionalProperties: false,
  };
  const empirical = { anyOf: [{ type: "array", items: own, minItems: 1 }, column] };
  return {
    type: "object",
    properties: { ...properties, empirical },
    additionalProperties: false,
    minProperties: 1,
    maxProperties: 1,
  };
}

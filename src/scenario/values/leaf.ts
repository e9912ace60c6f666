// A value at the end of a path: how it is read, in our own words when it cannot be, and how JSON Schema describes it.
import * as z from "zod/mini";
import type { Fault } from "#foundation/fault.ts";
import type { JsonSchema } from "./jsonSchema.ts";
import type { Finding, Path } from "./finding.ts";
import { readBy } from "./lenient.ts";

/** Every schema of the glossary with its description; in a registry of its own, without descriptions of other schemas. */
export const meanings = z.registry<JsonSchema>();

/** A fault of a value, or of a part of it. */
export type LeafFault = Fault & {
  readonly within?: readonly (string | number)[];
  /** Point at the key, not at its value. */
  readonly at?: "key";
};

/** What reading a leaf gives: its value, perhaps with a hint, or all that is wrong with it. */
export type LeafReading<Value> =
  { readonly value: Value; readonly hint?: Fault } | { readonly faults: readonly LeafFault[] };

export interface LeafSpec<Value> {
  /** The words after "expected": "a time such as `7.5 s`". */
  readonly expected: string;
  readonly json: JsonSchema;
  /** Gets what YAML gave, never undefined or null. */
  readonly read: (written: unknown) => LeafReading<Value>;
}

export type Leaf<Value> = z.ZodMiniType<Value>;

export function refused(...faults: readonly LeafFault[]): { readonly faults: readonly LeafFault[] } {
  return { faults };
}

/** The fault of an absent value: the key is absent or has no value. */
export function absence(written: unknown, expected: string): Fault {
  return written === undefined
    ? { code: "missing", message: "This key is missing.", expected, remedy: `Add it: ${expected}.` }
    : { code: "value-missing", message: "Nothing stands here.", expected, remedy: "Write a value, or delete the key." };
}

/** The fault of a text where a list was wanted, and so on. */
export function wrongType(written: unknown, expected: string): Fault {
  return { code: "wrong-type", message: `This is ${nounOf(written)}.`, expected, remedy: `Write ${expected}.` };
}

/** The fault of a key that is the rest of a number: YAML splits `{ mean: 0,9 mm }` at the comma. */
export function decimalCommaKey(key: string, expected: string): Fault {
  const message = `"${key}" looks like the rest of a number with a decimal comma.`;
  return { code: "decimal-comma", message, expected, remedy: "Write numbers with a decimal point: `7.5 s`." };
}

function nounOf(written: unknown): string {
  if (written === undefined || written === null) return "nothing";
  if (Array.isArray(written)) return "a list";
  if (typeof written === "string") return "a text";
  if (typeof written === "number") return "a number";
  return typeof written === "boolean" ? "a yes-or-no value" : "a mapping";
}

export function leaf<Value>(spec: LeafSpec<Value>): Leaf<Value> {
  const schema = readBy(({ value: written, issues }): Value => {
    const reading =
      written === undefined || written === null ? refused(absence(written, spec.expected)) : spec.read(written);
    if ("value" in reading) {
      if (reading.hint !== undefined) issues.push(rawIssue(written, [], { ...reading.hint, severity: "hint" }));
      return reading.value;
    }
    for (const { within, ...fault } of reading.faults) {
      issues.push(rawIssue(written, within ?? [], fault));
    }
    // A value that could not be read counts as absent in the checks that follow.
    return undefined as never;
  });
  return schema.register(meanings, spec.json);
}

function rawIssue(input: unknown, path: Path, fault: Omit<Finding, "path">): z.core.$ZodRawIssue {
  return { code: "custom", input, path: [...path], params: { fault } };
}

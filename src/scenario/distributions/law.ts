// The keys behind which a time or a rate may vary: a plain quantity, or a law such as `{ normal: [7.5 s, 0.3 s] }`.
import { leaf, type Leaf } from "#scenario/values/leaf.ts";
import type { LawKey, LawReading } from "./lawReading.ts";
import { lawSchema } from "./lawSchema.ts";
import { quantitySchema } from "#scenario/values/quantityLeaf.ts";
import { isMapping } from "#scenario/values/key.ts";
import { isNamedLaw, lawForms, readLaw } from "./readLaw.ts";

const time: LawKey = { dimension: "time", positive: false };
const rate: LawKey = { dimension: "rate", positive: true };

/** A time that may vary from cycle to cycle. */
export const timeLaw = lawLeaf(time, "timeLaw", "a time or a distribution of times");

/** A mass rate that may vary from cycle to cycle. */
export const rateLaw = lawLeaf(rate, "rateLaw", "a mass rate or a distribution of mass rates");

/** A time, a law of times, or `estimate`: computed from wall, material and temperatures. */
export const timeLawOrEstimate = leaf<LawReading | "estimate">({
  expected: "a time such as `7.5 s`, a distribution of times, or `estimate`",
  json: { id: "timeLawOrEstimate", anyOf: [{ const: "estimate" }, { $ref: "#/$defs/timeLaw" }] },
  read: (written) => (written === "estimate" ? { value: written } : readLaw(written, time)),
});

/** A time or a law of times where a mapping of keys may stand as well; `form` is an example of that. */
export function timeLawBeside(form: string): Leaf<LawReading> {
  return leaf({
    expected: `a time such as \`0.8 s\`, a distribution of times, or \`${form}\``,
    json: { $ref: "#/$defs/timeLaw" },
    read: (written) => readLaw(written, time),
  });
}

/** Whether a mapping holds keys: a law of times is written as a mapping too. */
export function isKeysBesideLaw(written: unknown): boolean {
  return isMapping(written) && !isNamedLaw(written);
}

function lawLeaf(key: LawKey, id: string, description: string): Leaf<LawReading> {
  return leaf({
    expected: lawForms(key.dimension),
    json: { id, description, anyOf: [quantitySchema(key.dimension), lawSchema(key.dimension)] },
    read: (written) => readLaw(written, key),
  });
}

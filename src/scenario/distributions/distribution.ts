// The keys behind which a time or a rate may vary: a plain quantity, or a distribution such as `{ normal: [7.5 s, 0.3 s] }`.
import { leaf, type Leaf } from "#scenario/values/leaf.ts";
import type { DistributionKey, DistributionReading } from "./distributionReading.ts";
import { distributionSchema } from "./distributionSchema.ts";
import { quantitySchema } from "#scenario/values/quantityLeaf.ts";
import { isMapping } from "#scenario/values/key.ts";
import { distributionForms, isNamedDistribution, readDistribution } from "./readDistribution.ts";

const time: DistributionKey = { dimension: "time", positive: false };
const rate: DistributionKey = { dimension: "rate", positive: true };

/** A time that may vary from cycle to cycle. */
export const drawnTime = distributionLeaf(time, "drawnTime", "a time or a distribution of times");

/** A mass rate that may vary from cycle to cycle. */
export const rateDistribution = distributionLeaf(
  rate,
  "rateDistribution",
  "a mass rate or a distribution of mass rates",
);

/** A time, a distribution of times, or `estimate`: computed from wall, material and temperatures. */
export const timeDistributionOrEstimate = leaf<DistributionReading | "estimate">({
  expected: "a time such as `7.5 s`, a distribution of times, or `estimate`",
  json: { id: "timeDistributionOrEstimate", anyOf: [{ const: "estimate" }, { $ref: "#/$defs/drawnTime" }] },
  read: (written) => (written === "estimate" ? { value: written } : readDistribution(written, time)),
});

/** A time or a distribution of times where a mapping of keys is also allowed; `form` is an example of the mapping. */
export function drawnTimeBeside(form: string): Leaf<DistributionReading> {
  return leaf({
    expected: `a time such as \`0.8 s\`, a distribution of times, or \`${form}\``,
    json: { $ref: "#/$defs/drawnTime" },
    read: (written) => readDistribution(written, time),
  });
}

/** Whether a mapping holds keys: a distribution is written as a mapping too. */
export function isKeysBesideDistribution(written: unknown): boolean {
  return isMapping(written) && !isNamedDistribution(written);
}

function distributionLeaf(key: DistributionKey, id: string, description: string): Leaf<DistributionReading> {
  return leaf({
    expected: distributionForms(key.dimension),
    json: { id, description, anyOf: [quantitySchema(key.dimension), distributionSchema(key.dimension)] },
    read: (written) => readDistribution(written, key),
  });
}

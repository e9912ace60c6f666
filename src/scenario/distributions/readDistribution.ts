// Reads a distribution: a plain quantity, or a mapping with the name of a distribution as its one key.
import type { Distribution } from "#engine/distributions/distribution.ts";
import { didYouMean } from "#foundation/didYouMean.ts";
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import { readEmpirical } from "./empiricalDistribution.ts";
import { isMapping } from "#scenario/values/key.ts";
import { decimalCommaKey, refused, wrongType, type LeafFault, type LeafReading } from "#scenario/values/leaf.ts";
import { decimalComma, readParameters } from "./distributionParameter.ts";
import type { DistributionKey, DistributionReading } from "./distributionReading.ts";
import { distributionShapes, type DistributionKind } from "./distributionShape.ts";
import { readQuantity } from "#scenario/values/quantityLeaf.ts";

const kinds = [...(Object.keys(distributionShapes) as DistributionKind[]), "empirical"] as const;
const oneOfKinds = `one of ${kinds.join(", ")}`;

/** Whether it is a mapping with the name of a distribution, or with a typing error in one. */
export function isNamedDistribution(written: unknown): boolean {
  return isMapping(written) && Object.keys(written).some((key) => didYouMean(key, kinds) !== undefined);
}

/** The words after "expected": a plain quantity, or a distribution such as the one shown. */
export function distributionForms(dimension: Dimension): string {
  const { noun, example } = dimensions[dimension];
  const distribution = dimension === "time" ? "{ normal: [7.5 s, 0.3 s] }" : "{ normal: [110 kg/h, 2 kg/h] }";
  return `${noun} such as \`${example}\`, or a distribution such as \`${distribution}\``;
}

export function readDistribution(written: unknown, key: DistributionKey): LeafReading<DistributionReading> {
  if (isMapping(written)) return readNamedDistribution(written, key);
  if (typeof written !== "string" && typeof written !== "number") {
    return refused(wrongType(written, distributionForms(key.dimension)));
  }
  const reading = readQuantity(written, key.dimension, key.positive ? { above: 0 } : {});
  return "faults" in reading ? reading : { value: { kind: "fixed", value: reading.value } };
}

function readNamedDistribution(
  written: Readonly<Record<string, unknown>>,
  key: DistributionKey,
): LeafReading<DistributionReading> {
  const names = Object.keys(written);
  const unknown = names.filter((name) => !kinds.some((kind) => kind === name));
  if (unknown.length > 0) return refused(...unknown.map(unknownDistribution));
  const [name] = names;
  if (name === undefined || names.length > 1) {
    const message =
      name === undefined
        ? "The distribution has no name."
        : `Here are ${names.length} distributions: ${names.join(", ")}.`;
    return refused({ code: "distribution-count", message, expected: oneOfKinds, remedy: "Keep one distribution." });
  }
  const inner = written[name];
  return name === "empirical" ? readEmpirical(inner, key) : readShaped(name as DistributionKind, inner, key);
}

function unknownDistribution(name: string): LeafFault {
  if (/^\d/u.test(name)) return { ...decimalCommaKey(name, oneOfKinds), within: [name], at: "key" };
  const meant = didYouMean(name, kinds);
  const remedy = meant === undefined ? `Write ${oneOfKinds}.` : `Did you mean \`${meant}\`?`;
  const message = `There is no distribution "${name}".`;
  return { code: "distribution-unknown", message, expected: oneOfKinds, remedy, within: [name], at: "key" };
}

function readShaped(kind: DistributionKind, inner: unknown, key: DistributionKey): LeafReading<Distribution> {
  const { parameters, check, build } = distributionShapes[kind];
  const single = parameters.length === 1;
  const form = single ? `\`{ ${kind}: ${parameters.join()} }\`` : `\`{ ${kind}: [${parameters.join(", ")}] }\``;
  const list: readonly unknown[] | undefined = single ? [inner] : Array.isArray(inner) ? inner : undefined;
  if (list === undefined) return refused({ ...wrongType(inner, form), within: [kind] });
  const comma = decimalComma(list, kind);
  if (comma !== undefined) return refused(comma);
  if (list.length !== parameters.length) {
    const message = `A ${kind} distribution takes ${parameters.length} values, here are ${list.length}.`;
    return refused({ code: "distribution-length", message, expected: form, remedy: `Write ${form}.`, within: [kind] });
  }
  const reading = readParameters(list, (place) => parameters[place] ?? "", key, single ? [kind] : [kind, 0]);
  if ("faults" in reading) return reading;
  const fault = check(reading.value, form);
  return fault === undefined ? { value: build(reading.value) } : refused({ ...fault, within: [kind] });
}

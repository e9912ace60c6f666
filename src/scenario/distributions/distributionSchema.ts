// The JSON Schema of a distribution of one dimension.
import type { Dimension } from "#foundation/dimension.ts";
import type { JsonSchema } from "#scenario/values/jsonSchema.ts";
import { shapeLimits } from "./distributionParameter.ts";
import { distributionShapes, type DistributionKind } from "./distributionShape.ts";
import { quantitySchema } from "#scenario/values/quantityLeaf.ts";

export function distributionSchema(dimension: Dimension): JsonSchema {
  const kinds = Object.keys(distributionShapes) as DistributionKind[];
  return {
    type: "object",
    // Made only when a schema is needed.
    get properties() {
      const known = Object.fromEntries(kinds.map((kind) => [kind, parametersSchema(kind, dimension)]));
      return { ...known, empirical: empiricalSchema(dimension) };
    },
    additionalProperties: false,
    minProperties: 1,
    maxProperties: 1,
  };
}

function parametersSchema(kind: DistributionKind, dimension: Dimension): JsonSchema {
  const { parameters } = distributionShapes[kind];
  const own = quantitySchema(dimension);
  if (parameters.length === 1) return { ...own, description: parameters.join() };
  const shape = { type: "number", minimum: shapeLimits.least, maximum: shapeLimits.most };
  return {
    description: `[${parameters.join(", ")}]`,
    type: "array",
    prefixItems: parameters.map((parameter) => (parameter === "shape" ? shape : own)),
    items: false,
    minItems: parameters.length,
  };
}

function empiricalSchema(dimension: Dimension): JsonSchema {
  const text = { type: "string", pattern: String.raw`\S` };
  const column = {
    type: "object",
    properties: { file: text, column: text, unit: text },
    required: ["file", "column"],
    additionalProperties: false,
  };
  return {
    description: "measured values, each as likely as the others",
    anyOf: [{ type: "array", items: quantitySchema(dimension), minItems: 1 }, column],
  };
}

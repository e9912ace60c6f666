// The JSON Schema of a scenario file, for editors and other programs.
import * as z from "zod/mini";
import { parse } from "yaml";
import { containers } from "#scenario/values/key.ts";
import { glossary } from "./glossary.ts";
import type { JsonSchema } from "#scenario/values/jsonSchema.ts";
import { meanings } from "#scenario/values/leaf.ts";
import { quantityDefinitions } from "#scenario/values/quantityLeaf.ts";

/** JSON Schema, draft 2020-12, of what a scenario file may hold; it comes from the glossary that reading goes by. */
export function scenarioSchema(): JsonSchema {
  const schema = z.toJSONSchema(glossary, {
    io: "input",
    metadata: meanings,
    target: "draft-2020-12",
    override: ({ zodSchema, jsonSchema }) => {
      const example = containers.get(zodSchema)?.example;
      if (example !== undefined) jsonSchema.examples = [parse(example)];
    },
  });
  const $defs = { ...quantityDefinitions(), ...schema.$defs };
  return { ...schema, $defs, title: "Scenario of an extrusion blow molding cell" };
}

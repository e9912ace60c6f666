// Where in the glossary each key lives, so that a key in the wrong place is sent home.
import { scenarioSchema } from "./scenarioSchema.ts";

interface SchemaNode {
  readonly $ref?: string;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly items?: SchemaNode | boolean;
  readonly additionalProperties?: SchemaNode | boolean;
  readonly anyOf?: readonly SchemaNode[];
}

type Index = ReadonlyMap<string, readonly string[]>;

let index: Index | undefined;

/** The sections that have this key, as paths; empty where no section has it. */
export function homesOf(key: string): readonly string[] {
  index ??= buildIndex();
  return index.get(key) ?? [];
}

function buildIndex(): Index {
  const schema = scenarioSchema() as SchemaNode & { readonly $defs?: Readonly<Record<string, SchemaNode>> };
  const homes = new Map<string, string[]>();
  const visit = (node: SchemaNode, path: string): void => {
    const resolved = node.$ref?.startsWith("#/$defs/station") ? schema.$defs?.["station"] : undefined;
    if (resolved !== undefined) visit(resolved, path);
    for (const [key, value] of Object.entries(node.properties ?? {})) {
      const list = homes.get(key) ?? [];
      if (!list.includes(path)) homes.set(key, [...list, path]);
      visit(value, path === "" ? key : `${path}.${key}`);
    }
    for (const option of node.anyOf ?? []) visit(option, path);
    if (typeof node.items === "object") visit(node.items, path);
    if (typeof node.additionalProperties === "object") visit(node.additionalProperties, path);
  };
  visit(schema, "");
  // A key at the top has no section to name.
  return new Map([...homes].map(([key, paths]) => [key, paths.filter((path) => path !== "").slice(0, 2)]));
}

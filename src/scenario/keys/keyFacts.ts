// Every key of a scenario with all that is said of it: meaning, value, default, example and choices, read from the schema.
import { stringify } from "yaml";
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import { unitsOf } from "#foundation/unit.ts";
import { defaults } from "#scenario/values/defaults.ts";
import { scenarioSchema } from "./scenarioSchema.ts";

interface ChoiceFacts {
  readonly word: string;
  readonly meaning: string;
}

export interface KeyFacts {
  readonly name: string;
  /** Where it stands; `*` is any station, server or entry of a list. */
  readonly paths: readonly string[];
  readonly meaning: string;
  /** What may stand behind it, in words. */
  readonly value: string;
  readonly isNeeded: boolean;
  /** What is assumed where it is absent, and why. */
  readonly assumed?: { readonly value: string; readonly reason: string };
  /** As it is written, with the key. */
  readonly example: string;
  readonly choices: readonly ChoiceFacts[];
}

type Plain = string | number | boolean;

interface SchemaNode {
  readonly $ref?: string;
  readonly description?: string;
  readonly default?: Plain | object;
  readonly examples?: readonly unknown[];
  readonly const?: Plain;
  readonly enum?: readonly Plain[];
  readonly title?: string;
  readonly type?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly items?: SchemaNode;
  readonly additionalProperties?: SchemaNode | false;
  readonly anyOf?: readonly SchemaNode[];
}

type Root = SchemaNode & { readonly $defs: Readonly<Record<string, SchemaNode>> };

/** Keys that stand in several places with the same meaning are one. */
export function keyFacts(): readonly KeyFacts[] {
  const found = new Map<string, KeyFacts>();
  for (const facts of placedKeys(scenarioSchema() as unknown as Root)) {
    const { paths, ...same } = facts;
    const key = JSON.stringify({ ...same, assumed: facts.assumed?.value });
    const known = found.get(key)?.paths ?? [];
    found.set(key, { ...same, paths: [...new Set([...known, ...paths])] });
  }
  return [...found.values()];
}

function placedKeys(root: Root): readonly KeyFacts[] {
  const keys: KeyFacts[] = [];
  const visit = (node: SchemaNode, path: string): void => {
    const home = mappingOf(node, root);
    for (const [name, child] of Object.entries(home?.properties ?? {})) {
      // It names this schema for editors, and says nothing of a cell.
      if (name === "$schema") continue;
      const own = path === "" ? name : `${path}.${name}`;
      keys.push(factsOf({ name, path: own, node: child, home: home!, root }));
      visit(child, own);
    }
    const entries = [node, ...(node.anyOf ?? [])].flatMap((each) => each.items ?? (each.additionalProperties || []));
    for (const entry of entries) visit(entry, `${path}.*`);
  };
  visit(root, "");
  return keys;
}

/** A node's mapping, also where something else may stand there too; a station's is of the list as well. */
function mappingOf(node: SchemaNode, root: Root): SchemaNode | undefined {
  const options = [node, ...(node.anyOf ?? [])].map((each) => resolved(each, root));
  const isList = options.some(({ items }) => items !== undefined);
  return isList ? undefined : options.find(({ properties }) => properties !== undefined);
}

/** Only a station has a definition with keys; a quantity's or a distribution's holds none. */
function resolved(node: SchemaNode, root: Root): SchemaNode {
  const name = refOf(node);
  return name?.startsWith("station") === true ? (root.$defs["station"] ?? node) : node;
}

function refOf({ $ref }: SchemaNode): string | undefined {
  return $ref?.replace("#/$defs/", "");
}

interface Place {
  readonly name: string;
  readonly path: string;
  readonly node: SchemaNode;
  readonly home: SchemaNode;
  readonly root: Root;
}

function factsOf({ name, path, node, home, root }: Place): KeyFacts {
  const assumed = assumedAt(path, node);
  const [example] = (home.examples ?? []) as readonly Readonly<Record<string, unknown>>[];
  const shown = example?.[name] ?? exampleOf(node, root);
  return {
    name,
    paths: [path],
    meaning: node.description ?? "",
    value: valueWords(node, root),
    isNeeded: home.required?.includes(name) === true && node.default === undefined,
    ...(assumed ? { assumed } : {}),
    example: `${name}: ${flow(node.examples?.[0] ?? shown)}`,
    choices: choicesOf(node),
  };
}

/** Every default of a key has its reason in one table; a section that may be absent as a whole has none. */
function assumedAt(path: string, { default: value }: SchemaNode): KeyFacts["assumed"] {
  const row = Object.entries(defaults).find(([pattern]) => pattern === path.replace(/^products\.\*/u, "product"));
  if (row === undefined || value === undefined || typeof value === "object") return undefined;
  return { value: String(value), reason: row[1].reason };
}

function exampleOf(node: SchemaNode, root: Root): unknown {
  const { default: assumed, examples, enum: words, anyOf = [], items, minimum } = node;
  const [first] = examples ?? words ?? (node.const === undefined ? [] : [node.const]);
  if (first !== undefined) return first;
  if (assumed !== undefined && JSON.stringify(assumed) !== "{}") return assumed;
  if (minimum !== undefined) return Math.max(1, minimum);
  if (node.type === "array") return [exampleOf(items ?? {}, root)];
  const target = root.$defs[refOf(node) ?? ""];
  if (target) return exampleOf(target, root);
  return anyOf.map((each) => exampleOf(each, root)).find((each) => each !== undefined);
}

/** On one line, as in braces and brackets. */
function flow(value: unknown): string {
  const text = stringify(value, { collectionStyle: "flow", lineWidth: 0 }).trim();
  return text.replaceAll("[ ", "[").replaceAll(" ]", "]");
}

function choicesOf({ anyOf = [], items }: SchemaNode): readonly ChoiceFacts[] {
  const options = [...anyOf, ...(items?.anyOf ?? [])];
  return options.flatMap(({ const: word, description: meaning }) =>
    typeof word === "string" && meaning !== undefined ? [{ word, meaning }] : [],
  );
}

function valueWords(node: SchemaNode, root: Root): string {
  const { anyOf, type } = node;
  const name = refOf(node);
  if (name !== undefined) return name.startsWith("station") ? "a station" : referredWords(name);
  if (anyOf) return optionWords(anyOf, root);
  if (node.const !== undefined) return String(node.const);
  if (node.enum) return node.enum.join(" or ");
  if (type === "array") return `a list, each entry ${valueWords(node.items ?? {}, root)}`;
  if (type === "object") return node.additionalProperties ? "a mapping by name" : keysWords(node);
  if (type === "integer") return integerWords(node);
  return type === "boolean" ? "yes or no" : (node.title ?? "a text");
}

function integerWords({ minimum, maximum }: SchemaNode): string {
  return minimum === undefined ? "a whole number" : `a whole number from ${minimum} to ${maximum}`;
}

function optionWords(anyOf: readonly SchemaNode[], root: Root): string {
  return [...new Set(anyOf.map((each) => valueWords(each, root)))].join(" or ");
}

function keysWords({ properties = {} }: SchemaNode): string {
  const names = Object.keys(properties);
  return `a mapping with ${names.length === 1 ? "the key" : "the keys"} ${names.join(", ")}`;
}

/** What the definitions of values that may vary are made of. */
const varying: Readonly<Record<string, Dimension>> = { drawnTime: "time", rateDistribution: "rate" };

function referredWords(name: string): string {
  if (name === "timeDistributionOrEstimate") return `${referredWords("drawnTime")}, or estimate`;
  const dimension = varying[name] ?? (name as Dimension);
  const { noun } = dimensions[dimension];
  const units = unitsOf(dimension).map(({ symbol }) => symbol);
  return `${noun} (${units.join(", ")})${name in varying ? " or a distribution" : ""}`;
}

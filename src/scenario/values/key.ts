// How keys are put together to mappings and lists, each described once for validation and JSON Schema alike.
import * as z from "zod/mini";
import { defaults, type DefaultPath } from "./defaults.ts";
import { meanings } from "./leaf.ts";
import { branching } from "./lenient.ts";

/** No cell has more of anything; measured values are no list of this kind. */
const mostEntries = 100;

/** The expected mapping or list in words, for messages; for a mapping an example in YAML. */
export const containers = z.registry<{ readonly expected: string; readonly example?: string }>();

/** `example` only where the example of the value does not fit this key. */
function described<Schema extends z.core.$ZodType>(schema: Schema, description: string, example?: unknown): Schema {
  meanings.add(schema, { description, ...(example === undefined ? {} : { examples: [example] }) });
  return schema;
}

export function required<Schema extends z.core.$ZodType>(
  schema: Schema,
  description: string,
  example?: unknown,
): z.ZodMiniNonOptional<Schema> {
  return described(z.nonoptional(schema), description, example);
}

export function optional<Schema extends z.core.$ZodType>(
  schema: Schema,
  description: string,
  example?: unknown,
): z.ZodMiniOptional<Schema> {
  return described(z.optional(schema), description, example);
}

/** A key with a default value and its reason in the table of defaults. */
export function defaulted<Schema extends z.core.$ZodType>(
  schema: Schema,
  path: DefaultPath,
  description: string,
): z.ZodMiniPrefault<Schema> {
  const value = defaults[path].value as z.core.util.NoUndefined<z.core.input<Schema>>;
  return described(z.prefault(schema, value), description);
}

/** An optional mapping whose keys all have defaults or are optional. */
export function section<Schema extends z.core.$ZodType>(
  schema: Schema,
  description: string,
): z.ZodMiniPrefault<Schema> {
  const nothing = {} as z.core.util.NoUndefined<z.core.input<Schema>>;
  return described(z.prefault(schema, nothing), description);
}

/** Whatever is not described is refused. */
const nothing = z.never();

/**
 * Its keys are described on demand: most scenarios use few of the mappings, and building the
 * descriptions of the others takes longer than reading the file. `example` is shown for other values.
 */
export function mapping<Shape extends z.core.$ZodShape>(
  describe: () => Shape,
  example: string,
): z.ZodMiniObject<Shape, z.core.$strict> {
  let shape: Shape | undefined;
  const schema = new z.ZodMiniObject({
    type: "object",
    get shape() {
      return (shape ??= describe());
    },
    catchall: nothing,
  }) as z.ZodMiniObject<Shape, z.core.$strict>;
  return schema.register(containers, { expected: `a mapping such as \`${example}\``, example });
}

export function listOf<Item extends z.core.$ZodType>(item: Item, expected: string): z.ZodMiniArray<Item> {
  return z.array(item).check(z.minLength(1), z.maxLength(mostEntries)).register(containers, { expected });
}

/** `name` is one that an entry may have. */
export function byName<Item extends z.core.$ZodType>(
  item: Item,
  expected: string,
  name: string,
): z.ZodMiniRecord<z.ZodMiniString<string>, Item> {
  const example = `{ ${name}: ${containers.get(item)?.example ?? "{}"} }`;
  const schema = z.record(z.string(), item).check(atMostEntries).register(containers, { expected, example });
  meanings.add(schema, { maxProperties: mostEntries });
  return schema;
}

const atMostEntries = z.check<Readonly<Record<string, unknown>>>(({ value, issues }) => {
  if (Object.keys(value).length <= mostEntries) return;
  issues.push({ code: "too_big", origin: "object", maximum: mostEntries, inclusive: true, input: value });
});

export function isMapping(written: unknown): written is Readonly<Record<string, unknown>> {
  return typeof written === "object" && written !== null && !Array.isArray(written);
}

/** A mapping or another value: only the intended branch is read, so that only its findings are reported. */
export function eitherOr<Other extends z.core.$ZodType, Keys extends z.core.$ZodType>(
  other: Other,
  keys: Keys,
  isKeys: (written: unknown) => boolean = isMapping,
): z.ZodMiniUnion<readonly [Other, Keys]> {
  return branching(other, keys, isKeys);
}

// The four uses of internals of the validation library, with their reasons.
import * as z from "zod/mini";

type Schema = z.core.$ZodType;

export interface LenientReading {
  /** What could be read; a part that could not is absent or, where a mapping or list was wanted, as it was written. */
  readonly value: unknown;
  readonly issues: readonly z.core.$ZodRawIssue[];
}

/** The public way to parse gives either a value or issues; the checks across keys need what could be read beside what could not. */
export function readLeniently(schema: Schema, written: unknown): LenientReading {
  // oxlint-disable-next-line no-underscore-dangle
  const payload = schema._zod.run({ value: written, issues: [] }, { async: false });
  // Nothing in the glossary is asynchronous.
  return payload instanceof Promise ? { value: undefined, issues: [] } : payload;
}

/** One schema that reads in a way of its own; the public way, a transform behind a value of any kind, takes three of them. */
export function readBy<Value>(read: (payload: z.core.ParsePayload) => Value): z.ZodMiniType<Value> {
  const schema = z.unknown();
  // oxlint-disable-next-line no-underscore-dangle
  schema._zod.run = (payload): z.core.ParsePayload => {
    payload.value = read(payload);
    return payload;
  };
  return schema as z.ZodMiniType<Value>;
}

/** A union that reads only the branch that was meant: the public one tries all, and then cannot say which faults matter. */
export function branching<Other extends Schema, Keys extends Schema>(
  other: Other,
  keys: Keys,
  isKeys: (written: unknown) => boolean,
): z.ZodMiniUnion<readonly [Other, Keys]> {
  const union = z.union([other, keys]);
  // oxlint-disable-next-line no-underscore-dangle
  union._zod.run = (payload, context): z.core.util.MaybeAsync<z.core.ParsePayload> =>
    // oxlint-disable-next-line no-underscore-dangle
    (isKeys(payload.value) ? keys : other)._zod.run(payload, context);
  return union;
}

/** Keys of a mapping's schema; none for other schemas. */
export function keysOf(schema: unknown): readonly string[] {
  // oxlint-disable-next-line no-underscore-dangle
  return Object.keys((schema as Partial<z.core.$ZodObject> | undefined)?._zod?.def.shape ?? {});
}

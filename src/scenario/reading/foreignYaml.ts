// What YAML has and a scenario has not: directives, anchors, aliases, tags, duplicate keys, and keys that are no plain words.
import { isMap, isScalar, isSeq, Scalar, visit, type Alias, type Document } from "yaml";
import type { Fault } from "#foundation/fault.ts";

export interface ForeignPart {
  readonly offset: number;
  readonly fault: Fault;
}

/** A text with more of them is no scenario, and a message for each would only bury the first. */
const mostParts = 100;

/** Finds all such parts and removes them from the document, so that the rest can be read. */
export function removeForeignParts(document: Document): readonly ForeignPart[] {
  const parts: ForeignPart[] = directives(document);
  const report = (range: readonly number[] | null | undefined, fault: Fault): void => {
    if (parts.length < mostParts) parts.push({ offset: range?.[0] ?? 0, fault });
  };
  const add = (range: readonly number[] | null | undefined, code: string, what: string, remedy: string): void =>
    report(range, { code, message: `${what} not part of the format.`, remedy });
  visit(document, {
    Map: (_, { items }) => {
      const seen = new Set<unknown>();
      for (const { key } of items) {
        if (!isScalar(key)) continue;
        if (seen.has(key.value)) {
          const message = `The key \`${String(key.value)}\` stands here twice.`;
          report(key.range, { code: "duplicate-key", message, remedy: "Delete one of the two." });
        }
        seen.add(key.value);
      }
    },
    Alias: (_, node) => {
      add(node.range, "yaml-anchor", "Aliases are", "Write the value out.");
      return plainValue(node, document);
    },
    Value: (_, { range, anchor, tag }) => {
      const remedy = "Delete the anchor and write the value out.";
      if (anchor !== undefined) add(range, "yaml-anchor", `Anchors such as \`&${anchor}\` are`, remedy);
      if (tag !== undefined) add(range, "yaml-tag", `Tags such as \`!!str\` are`, "Delete it; quotes make a text.");
    },
    Pair: (_, { key }) => {
      // JavaScript keeps this one word for itself, and a mapping would lose it.
      if (isScalar(key) && key.value === "__proto__") {
        add(key.range, "yaml-key", "The key `__proto__` is", "Choose another word.");
        return visit.REMOVE;
      }
      if (!isMap(key) && !isSeq(key)) return undefined;
      add(key.range, "yaml-key", "Lists and mappings as keys are", "Write a plain word as the key.");
      return visit.REMOVE;
    },
  });
  return parts;
}

function directives({ directives: found }: Document): ForeignPart[] {
  if (found === undefined || (!found.yaml.explicit && Object.keys(found.tags).length === 1)) return [];
  const message = "Directives such as `%YAML` are not part of the format.";
  return [{ offset: 0, fault: { code: "yaml-directive", message, remedy: "Delete the line." } }];
}

/** A value in place of its alias; of a list or mapping nothing, since aliases of aliases can grow without end. */
function plainValue(alias: Alias, document: Document): Scalar {
  const target = alias.resolve(document);
  const scalar = new Scalar(isScalar(target) ? target.value : null);
  if (alias.range) scalar.range = alias.range;
  return scalar;
}

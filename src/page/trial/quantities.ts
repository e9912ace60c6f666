// All numeric quantities of a scenario text; equal values of all entries of a list are one.
import { distributionShapes } from "#scenario/distributions/distributionShape.ts";
import { isMapping } from "#scenario/values/key.ts";
import type { Quantity } from "./leverPositions.ts";

interface Found extends Quantity {
  /** The path with `*` for each entry of a list. */
  readonly pattern: string;
}

/** They are no quantities of the cell, or have levers of their own. */
const leftOut = new Set(["$schema", "format", "title", "run", "order", "orders", "options", "measured", "layouts"]);
const names = new Set(["name", "product", "material", "priority", "count", "from", "on", "at", "start", "end", "days"]);

export function quantitiesIn(content: unknown): readonly Quantity[] {
  const found = isMapping(content)
    ? Object.entries(content).flatMap(([key, value]) => (leftOut.has(key) ? [] : below(value, key, key)))
    : [];
  const patterns = [...new Set(found.map(({ pattern }) => pattern))];
  return patterns.flatMap((pattern) =>
    together(
      pattern,
      found.filter((each) => each.pattern === pattern),
    ),
  );
}

/** One where all values are equal, else one for each value. */
function together(pattern: string, all: readonly Found[]): readonly Quantity[] {
  const texts = [...new Set(all.map(({ written }) => JSON.stringify(written)))];
  if (texts.length === 1 && all.length > 1) return [{ written: all[0]!.written, paths: [pattern] }];
  return texts.map((text) => {
    const alike = all.filter(({ written }) => JSON.stringify(written) === text);
    return { written: alike[0]!.written, paths: alike.flatMap(({ paths }) => paths) };
  });
}

function below(value: unknown, path: string, pattern: string): readonly Found[] {
  if (typeof value === "number" || typeof value === "string" || isDistribution(value))
    return [{ written: value, paths: [path], pattern }];
  if (Array.isArray(value)) return entriesBelow(value, path, pattern);
  if (!isMapping(value)) return [];
  // `stations` written as one mapping is its own only entry.
  const [from, fromPattern] = path === "stations" ? ["stations.*", "stations.*"] : [path, pattern];
  return Object.entries(value).flatMap(([key, inner]) =>
    names.has(key) ? [] : below(inner, `${from}.${key}`, `${fromPattern}.${key}`),
  );
}

function entriesBelow(entries: readonly unknown[], path: string, pattern: string): readonly Found[] {
  const nameOf = (entry: unknown): unknown => (isMapping(entry) ? entry["name"] : undefined);
  return entries.flatMap((entry, i) => {
    const name = nameOf(entry);
    const isNamed = typeof name === "string" && entries.filter((each) => nameOf(each) === name).length === 1;
    return below(entry, isNamed ? `${path}.${name}` : `${path}[${i}]`, `${pattern}.*`);
  });
}

function isDistribution(value: unknown): boolean {
  if (!isMapping(value)) return false;
  const [kind = "", ...others] = Object.keys(value);
  return others.length === 0 && (kind === "empirical" || Object.hasOwn(distributionShapes, kind));
}

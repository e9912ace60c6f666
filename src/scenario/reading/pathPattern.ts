// Finds the places in a scenario's content that match a path with `*`.
import type { Path } from "#scenario/values/finding.ts";
import { isMapping } from "#scenario/values/key.ts";

/** The value at a path, or undefined where there is none. */
export function valueAt(content: unknown, path: Path): unknown {
  return path.reduce<unknown>((node, key) => {
    if (Array.isArray(node)) return (node as readonly unknown[])[Number(key)];
    return isMapping(node) && Object.hasOwn(node, key) ? node[String(key)] : undefined;
  }, content);
}

/** Paths that match a pattern such as `stations.*.steps.cool`; their last key may be absent in the content. */
export function pathsOf(content: unknown, pattern: string): readonly Path[] {
  let paths: readonly Path[] = [[]];
  for (const key of pattern.split(".")) {
    paths = paths.flatMap((path) => (key === "*" ? itemsAt(content, path) : [[...path, key]]));
  }
  return paths;
}

/** Of a list or a mapping by name each entry; `stations` written as one mapping is its own only entry. */
function itemsAt(content: unknown, path: Path): readonly Path[] {
  const node = valueAt(content, path);
  if (Array.isArray(node)) return node.map((_, index) => [...path, index]);
  if (!isMapping(node)) return [];
  return path[0] === "stations" ? [path] : Object.keys(node).map((key) => [...path, key]);
}

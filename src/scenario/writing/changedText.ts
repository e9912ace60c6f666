// Puts new values in place of old ones in the text of a scenario and keeps every other character.
import { isMap, isNode, isScalar, isSeq, parseDocument } from "yaml";

/** A value that a measured one replaces; `path` has the names of stations and stops in place of their numbers. */
export interface WantedChange {
  readonly path: readonly string[];
  readonly text: string;
}

interface MadeChange {
  readonly path: string;
  readonly line: number;
  readonly before: string;
  readonly after: string;
}

export interface ChangedText {
  readonly text: string;
  readonly changes: readonly MadeChange[];
  /** Paths that the text does not have. */
  readonly missing: readonly string[];
}

/** The text is valid YAML. Names and keys are compared without regard to case. */
export function changedText(text: string, wanted: readonly WantedChange[]): ChangedText {
  const document = parseDocument(text, { version: "1.2", schema: "core" });
  const missing: string[] = [];
  const placed = wanted.map(({ path, text: after }) => {
    return { path: path.join("."), range: rangeAt(document.contents, path), after };
  });
  const found = placed.flatMap(({ path, range, after }) => {
    // Several stations with one entry cannot have different values.
    const isShared = placed.filter((each) => each.range?.[0] === range?.[0]).length > 1;
    if (range !== undefined && !isShared) return [{ path, from: range[0], to: range[1], after }];
    missing.push(path);
    return [];
  });
  const changes = found.filter(({ from, to, after }) => plain(text.slice(from, to)) !== plain(after));
  const made = changes.map(({ path, from, to, after }) => ({
    path,
    line: text.slice(0, from).split("\n").length,
    before: text.slice(from, to).trim().replaceAll(/\s+/gu, " "),
    after,
  }));
  // From the last to the first, so that places stay valid.
  const changed = changes
    .toSorted((one, other) => other.from - one.from)
    .reduce((whole, { from, to, after }) => whole.slice(0, from) + after + whole.slice(to), text);
  return { text: changed, changes: made, missing };
}

/** An equal value stays as it is written: `0.30 s` is 0.3 s. */
function plain(value: string): string {
  return value.replaceAll(/\d+\.\d+/gu, (number) => String(Number(number))).replaceAll(/\s+/gu, "");
}

const alike = (one: unknown, other: string): boolean => String(one).toLowerCase() === other.toLowerCase();

/** By its name; `left 2` is one of those that the entry `left` counts. */
function entryOf(items: readonly unknown[], name: string): unknown {
  const named = (wanted: string): unknown => items.find((item) => isMap(item) && alike(item.get("name"), wanted));
  return named(name) ?? named(name.replace(/ \d+$/u, ""));
}

/** First and last character of the value. A step written as `{ time, by }` has its value under `time`. */
function rangeAt(root: unknown, path: readonly string[]): readonly [from: number, to: number] | undefined {
  let node: unknown = root;
  for (const [depth, key] of path.entries()) {
    // `stations` written as one mapping is its own only entry.
    if (isMap(node) && depth === 1 && path[0] === "stations" && node.has("steps")) continue;
    if (isMap(node)) node = node.items.find((pair) => isScalar(pair.key) && alike(pair.key.value, key))?.value;
    else if (isSeq(node)) node = entryOf(node.items, key);
    else return undefined;
  }
  const time = isMap(node) ? node.get("time", true) : undefined;
  const value = isNode(time) ? time : node;
  const range = isNode(value) ? value.range : undefined;
  return range ? [range[0], range[1]] : undefined;
}

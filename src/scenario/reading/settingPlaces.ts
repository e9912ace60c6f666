// The places in a scenario's text that match the path of a --set.
import { isMap, isScalar, isSeq, type Pair } from "yaml";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Fault } from "#foundation/fault.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { ScenarioText } from "./scenarioText.ts";
import type { Setting } from "./setting.ts";

interface Spot {
  readonly path: Path;
  /** The path as a user writes it. */
  readonly where: string;
  /** Undefined where the text has nothing at this path. */
  readonly node: unknown;
}

/** Names and `*` give way to the numbers and keys of entries; of a path the text may have only the beginning. */
export function placesOf({ document }: ScenarioText, { path, change }: Setting): readonly Path[] | Fault {
  let spots: readonly Spot[] = [{ path: [], where: "", node: document.contents }];
  for (const [depth, key] of path.entries()) {
    const wanted = depth === path.length - 1 && change.kind === "value" ? Number(change.text) : NaN;
    const found = spots.map((spot) => spotsBelow(spot, key, wanted));
    const fault = found.find((each) => "code" in each);
    if (fault !== undefined) return fault;
    spots = found.flatMap((each) => ("code" in each ? [] : each));
  }
  if (spots.length > 0) return spots.map((spot) => spot.path);
  return pathFault("The file has no entry that `*` could stand for.", "Name a list or mapping that the file has.");
}

export function pairOf(map: { readonly items: readonly Pair[] }, key: string): Pair | undefined {
  return map.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === key);
}

function pathFault(message: string, remedy: string, expected = "a path of the scenario"): Fault {
  return { code: "set-path", message, expected, remedy };
}

function spotsBelow(spot: Spot, key: string | number, wanted: number): readonly Spot[] | Fault {
  const { path, where, node } = spot;
  if (isSeq(node)) return entriesOf(spot, node.items, key, wanted);
  const isAbsent = node === undefined || node === null || (isScalar(node) && node.value === null);
  if (!isAbsent && !isMap(node)) {
    return pathFault(`\`${where}\` is a plain value, it has no \`${key}\`.`, `Set \`${where}\` as a whole.`);
  }
  if (typeof key === "number") return noList(where, key, isAbsent);
  const below = (name: string, child: unknown): Spot => {
    return { path: [...path, name], where: where === "" ? name : `${where}.${name}`, node: child };
  };
  if (key !== "*") return [below(key, isMap(node) ? pairOf(node, key)?.value : undefined)];
  if (!isMap(node)) return [];
  // `stations` written as one mapping is its own only entry.
  if (where === "stations") return [spot];
  return node.items.flatMap((pair) => (isScalar(pair.key) ? [below(String(pair.key.value), pair.value)] : []));
}

function noList(where: string, index: number, isAbsent: boolean): Fault {
  if (isAbsent) return pathFault(`The file has no list \`${where}\`.`, `Set \`${where}\` as a whole.`);
  const noun = where === "" ? "The scenario" : `\`${where}\``;
  return pathFault(`${noun} is a mapping, not a list.`, `Leave out \`[${index}]\`.`);
}

function entriesOf(
  { path, where }: Spot,
  items: readonly unknown[],
  key: string | number,
  wanted: number,
): readonly Spot[] | Fault {
  const all = items.map((node, index) => ({ path: [...path, index], where: entryPath(where, items, index), node }));
  if (key === "*") return all;
  if (typeof key === "number") {
    const entry = all[key];
    if (entry !== undefined) return [entry];
    const message = `The list has ${items.length} entries, none is [${key}].`;
    return pathFault(message, `Write a number from 0 to ${items.length - 1}.`);
  }
  const named = all.filter(({ node }) => nameOf(node) === key);
  if (named.length > 0) return named;
  if (where !== "stations" || key !== "count") return unknownName(where, items, key);
  // `stations.count` of a list with one entry means that entry's count.
  const counted = { path: [...path, 0, key], where: `${where}.${key}`, node: undefined };
  return items.length === 1 ? [counted] : listedCount(items, wanted);
}

function nameOf(node: unknown): string | undefined {
  const name = isMap(node) ? node.get("name") : undefined;
  return typeof name === "string" ? name : undefined;
}

function entryPath(where: string, items: readonly unknown[], index: number): string {
  const name = nameOf(items[index]);
  const isUnique = name !== undefined && items.filter((item) => nameOf(item) === name).length === 1;
  return isUnique ? `${where}.${name}` : `${where}[${index}]`;
}

/** How to come to so many stations where they are listed: a count for one of them, or one of them removed. */
function listedCount(items: readonly unknown[], wanted: number): Fault {
  const message = "The file lists its stations one by one, so `stations` has no count.";
  const counts = items.map((item) => {
    const count = isMap(item) ? item.get("count") : undefined;
    return typeof count === "number" ? count : 1;
  });
  const total = counts.reduce((sum, count) => sum + count, 0);
  const [first, last] = [0, items.length - 1].map((index) => entryPath("stations", items, index));
  const own = wanted - total + (counts[0] ?? 0);
  if (!Number.isInteger(wanted)) return pathFault(message, `Give one of them a count, such as \`${first}.count=2\`.`);
  if (wanted === total) return pathFault(message, `Leave it out: the file has ${total} stations.`);
  if (own < 1) return pathFault(message, `Remove a station: \`${last}=null\`.`);
  return pathFault(message, `Give one of them a count: \`${first}.count=${own}\` makes ${wanted} stations.`);
}

function unknownName(where: string, items: readonly unknown[], key: string): Fault {
  const message = where === "stations" ? `There is no station "${key}".` : `\`${where}\` has no entry "${key}".`;
  const names = [...new Set(items.flatMap((item) => nameOf(item) ?? []))];
  if (names.length === 0) return pathFault(message, `Write the entry's number in brackets: \`${where}[0]\`.`);
  const known = names.map((name) => `\`${where}.${name}\``).join(", ");
  const group = names.find((name) => key.startsWith(`${name} `) && /^\d+$/u.test(key.slice(name.length + 1)));
  if (group !== undefined)
    return pathFault(message, `Write \`${where}.${group}\`, which sets all that it counts.`, known);
  const meant = didYouMean(key, names);
  const remedy = meant === undefined ? `Write one of: ${known}.` : `Did you mean \`${where}.${meant}\`?`;
  return pathFault(message, remedy, known);
}

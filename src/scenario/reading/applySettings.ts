// Puts the values of --set into a scenario's text before it is read, so that they are checked like any other.
import { isMap, isScalar, isSeq, YAMLMap, type Pair } from "yaml";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Fault } from "#foundation/fault.ts";
import type { Issue } from "#foundation/issue.ts";
import { emptySetting, parseSetting, type Setting } from "./setting.ts";
import type { ScenarioText } from "./scenarioText.ts";
import { Source } from "./source.ts";
import { parseText } from "./yamlText.ts";

/** Returns what is wrong with the settings themselves; faults of their values come up when the scenario is read. */
export function applySettings(text: ScenarioText, settings: readonly string[]): readonly Issue[] {
  return settings.flatMap((written, index) => {
    const file = `--set ${index + 1}`;
    const setting = parseSetting(written);
    if (!("path" in setting)) return [issueOf(setting, file, written, "")];
    const source = new Source(file, setting.value, setting.indent);
    const { document, issues } = parseText(source);
    if (issues.length > 0) return issues;
    // Only a comment stands behind the equals sign.
    if (document === undefined) return [issueOf(emptySetting, file, written, "")];
    const key = new Source(file, written);
    const fault = put(text, setting, document.contents, { value: source, key });
    return fault === undefined ? [] : [issueOf(fault, file, written, written.slice(0, setting.indent - 1).trim())];
  });
}

function issueOf(fault: Fault, file: string, value: string, path: string): Issue {
  return { ...fault, severity: "error", fate: "file", place: { file, line: 1, column: 1 }, path, value };
}

interface Origins {
  readonly value: Source;
  readonly key: Source;
}

function put(text: ScenarioText, { path }: Setting, value: unknown, origins: Origins): Fault | undefined {
  let node: unknown = text.document.contents;
  for (const [depth, key] of path.entries()) {
    const last = depth === path.length - 1;
    if (isSeq(node)) {
      const index = itemIndex(text, key, node.items, depth === 1 && path[0] === "stations", last);
      if (typeof index === "object" && "code" in index) return index;
      // `stations.count` of a list with one entry means that entry's count.
      if (typeof index === "object") {
        node = node.items[index.through];
        setKey(text, node, String(key), value, origins);
        return undefined;
      }
      if (last) replaceItem(text, node.items, index, value, origins);
      node = node.items[index];
    } else if (isMap(node)) {
      if (typeof key === "number") return noList(key, path.slice(0, depth).join("."));
      node = last ? setKey(text, node, key, value, origins) : descend(text, node, key, origins);
    } else {
      const where = path.slice(0, depth).join(".");
      const message = `\`${where}\` is a plain value, it has no \`${key}\`.`;
      return { code: "set-path", message, expected: "a path of the scenario", remedy: `Set \`${where}\` as a whole.` };
    }
  }
  return undefined;
}

function noList(index: number, where: string): Fault {
  const message = `\`${where === "" ? "the scenario" : where}\` is a mapping, not a list.`;
  return { code: "set-path", message, expected: "a path of the scenario", remedy: `Leave out \`[${index}]\`.` };
}

function setKey(text: ScenarioText, map: unknown, key: string, value: unknown, origins: Origins): unknown {
  if (!isMap(map)) return undefined;
  const pair = pairOf(map, key) ?? addPair(text, map, key, origins);
  pair.value = value;
  text.credit(value, origins.value);
  return value;
}

function descend(text: ScenarioText, map: YAMLMap, key: string, origins: Origins): unknown {
  const pair = pairOf(map, key) ?? addPair(text, map, key, origins);
  if (isScalar(pair.value) && pair.value.value === null) pair.value = null;
  pair.value ??= new YAMLMap();
  return pair.value;
}

function pairOf(map: YAMLMap, key: string): Pair | undefined {
  return map.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === key);
}

function addPair(text: ScenarioText, map: YAMLMap, key: string, origins: Origins): Pair {
  const pair = text.document.createPair(key, null);
  // The key is pointed at where it stands in the path.
  const from = Math.max(0, origins.key.text.indexOf(key));
  if (isScalar(pair.key)) pair.key.range = [from, from + key.length, from + key.length];
  text.credit(pair.key, origins.key);
  map.items.push(pair);
  return pair;
}

function replaceItem(text: ScenarioText, items: unknown[], index: number, value: unknown, origins: Origins): void {
  items[index] = value;
  text.credit(value, origins.value);
}

type Item = number | { readonly through: number } | Fault;

function itemIndex(
  text: ScenarioText,
  key: string | number,
  items: readonly unknown[],
  ofStations: boolean,
  last: boolean,
): Item {
  if (typeof key === "number") {
    if (key < items.length) return key;
    const remedy = `Write a number from 0 to ${items.length - 1}.`;
    return { code: "set-path", message: `The list has ${items.length} entries, none is [${key}].`, remedy };
  }
  const names = ofStations ? text.stationNames() : [];
  const index = names.indexOf(key);
  if (index >= 0) return index;
  if (ofStations && key === "count" && last) {
    if (items.length === 1) return { through: 0 };
    const remedy = "Write `stations[0].count` or `stations.left.count`.";
    return {
      code: "set-path",
      message: `\`stations\` is a list of ${items.length}, it has no count of its own.`,
      remedy,
    };
  }
  return unknownItem(
    key,
    names.filter((name) => name !== undefined),
    ofStations,
  );
}

function unknownItem(key: string, names: readonly string[], ofStations: boolean): Fault {
  if (!ofStations) {
    return {
      code: "set-path",
      message: `\`${key}\` is no entry of a list.`,
      remedy: "Write the entry's number in brackets, from `[0]`.",
    };
  }
  const group = names.find((name) => key.startsWith(`${name} `) && /^\d+$/u.test(key.slice(name.length + 1)));
  const meant = group ?? didYouMean(key, names);
  const known = names.length === 0 ? "`stations[0]` and so on" : names.map((name) => `\`stations.${name}\``).join(", ");
  const which =
    group === undefined
      ? `Did you mean \`stations.${meant}\`?`
      : `Write \`stations.${group}\`, which sets all that it counts.`;
  const remedy = meant === undefined ? `Write one of: ${known}.` : which;
  return { code: "set-path", message: `There is no station "${key}".`, expected: known, remedy };
}

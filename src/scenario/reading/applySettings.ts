// Writes the values of --set and of run options into a scenario's text before it is read, so that all values are checked alike.
import { isMap, isNode, isScalar, isSeq, Scalar, stringify, YAMLMap, type Pair } from "yaml";
import type { Fault } from "#foundation/fault.ts";
import type { Issue } from "#foundation/issue.ts";
import { defaults } from "#scenario/values/defaults.ts";
import type { Path } from "#scenario/values/finding.ts";
import { lostSpread } from "./lostSpread.ts";
import { movedValue } from "./movedValue.ts";
import type { ReadText } from "./readText.ts";
import type { ScenarioText } from "./scenarioText.ts";
import { emptySetting, parseSetting, type Move, type Setting } from "./setting.ts";
import { pairOf, placesOf } from "./settingPlaces.ts";
import type { Settings } from "./settings.ts";
import { Source } from "./source.ts";
import { parseText } from "./yamlText.ts";

/** One setting and the texts that its parts come from. */
interface Call {
  readonly text: ScenarioText;
  readonly readText: ReadText | undefined;
  /** As places name it: `--set 2`, `--length`. */
  readonly file: string;
  readonly written: string;
  /** Where new keys are pointed at. */
  readonly key: Source;
}

/** Returns the issues of the settings; issues of their values are found when the scenario is read. */
export function applySettings(
  text: ScenarioText,
  { set = [], run = {} }: Settings,
  readText?: ReadText,
): readonly Issue[] {
  const callOf = (file: string, written: string): Call => {
    return { text, readText, file, written, key: new Source(file, written) };
  };
  return [
    ...set.flatMap((written, index) => apply(callOf(`--set ${index + 1}`, written), parseSetting(written))),
    ...Object.entries(run).flatMap(([key, written]) => apply(callOf(`--${key}`, written), optionSetting(key, written))),
  ];
}

/** An option of its own gives a value, never a move; a seed is a text even where it looks like a number. */
function optionSetting(key: string, written: string): Setting | Fault {
  if (written.trim() === "") {
    return { code: "value-missing", message: "The option has no value.", remedy: "Give it a value, or leave it out." };
  }
  const text = key === "seed" ? JSON.stringify(written) : written;
  return { path: ["run", key], change: { kind: "value", text, indent: 0 } };
}

function apply(call: Call, setting: Setting | Fault): readonly Issue[] {
  if ("code" in setting) return [issueOf(setting, call)];
  const { change, path } = setting;
  const places = placesOf(call.text, setting);
  if ("code" in places) {
    const [pathText = "", value] = call.written.split("=", 2).map((part) => part.trim());
    return [issueOf(places, call, pathText, value)];
  }
  if (change.kind === "value") {
    const before = places.map((place) => writtenAt(call.text, place));
    const issues = firstFaults(places, (place) => put(call, place, new Source(call.file, change.text, change.indent)));
    return issues.length > 0 ? issues : spreadWarnings(call, places, before);
  }
  if (change.kind !== "removal") return moveAll(call, path, places, change);
  // From the last entry to the first, so that indexes stay valid.
  for (const place of places.toReversed()) remove(call, place);
  return [];
}

/** One warning a setting, at the first place that loses its spread. */
function spreadWarnings(call: Call, places: readonly Path[], before: readonly unknown[]): readonly Issue[] {
  const warnings = places.flatMap((place, i) => {
    const fault = lostSpread(before[i], writtenAt(call.text, place));
    if (fault === undefined) return [];
    const value = call.written.slice(call.written.indexOf("=") + 1).trim();
    return [{ ...issueOf(fault, call, call.text.pathText(place), value), severity: "warning" } as const];
  });
  return warnings.slice(0, 1);
}

function issueOf(fault: Fault, { file, written }: Call, path = "", value = written): Issue {
  const place = { file, line: 1, column: 1 };
  return { ...fault, severity: "error", fate: "file", place, path, ...(value.trim() === "" ? {} : { value }) };
}

/** A faulty value is reported once, not at every place. */
function firstFaults(places: readonly Path[], act: (place: Path) => readonly Issue[]): readonly Issue[] {
  for (const place of places) {
    const issues = act(place);
    if (issues.length > 0) return issues;
  }
  return [];
}

/** Where `*` stands for several entries, those without the value are left as they are. */
function moveAll(call: Call, path: Path, places: readonly Path[], move: Move): readonly Issue[] {
  const found = places.map((place) => ({ place, written: writtenAt(call.text, place) }));
  const present = found.filter(({ written }) => written !== undefined);
  const isMissing = present.length === 0 || !path.includes("*");
  const issues = (isMissing ? found : present).flatMap(({ place, written }) => {
    const moved = movedValue(written, move, call.readText);
    if ("fault" in moved) return [issueOf(moved.fault, call, call.text.pathText(place), move.text)];
    const text = stringify(moved.value, { collectionStyle: "flow", lineWidth: 0 }).trim();
    return put(call, place, new Source(call.file, text, 0, `, moved by ${move.text}`));
  });
  return issues.filter(({ message }, i) => issues.findIndex((issue) => issue.message === message) === i);
}

/** As plain data; what the text does not say is what the reader assumes. */
function writtenAt(text: ScenarioText, path: Path): unknown {
  const node = path.reduce<unknown>((parent, key) => childOf(parent, key), text.document.contents);
  const written = isNode(node) ? (node.toJS(text.document) as unknown) : undefined;
  return written ?? defaultAt(path);
}

function childOf(node: unknown, key: string | number): unknown {
  if (isSeq(node)) return node.items[Number(key)];
  return isMap(node) ? pairOf(node, String(key))?.value : undefined;
}

function defaultAt(path: Path): unknown {
  const found = Object.entries(defaults).find(([pattern]) => {
    const keys = pattern.split(".");
    return keys.length === path.length && keys.every((key, depth) => key === "*" || key === path[depth]);
  });
  return found?.[1].value;
}

function put(call: Call, path: Path, source: Source): readonly Issue[] {
  const { document, issues } = parseText(source);
  if (issues.length > 0) return issues;
  // There is only a comment.
  if (document === undefined) return [issueOf(emptySetting, call)];
  const value = document.contents;
  const key = path.at(-1)!;
  const parent = path
    .slice(0, -1)
    .reduce<unknown>((node, each) => descend(call, node, each), call.text.document.contents);
  keepComment(childOf(parent, key), value);
  if (isSeq(parent)) parent.items[Number(key)] = value;
  else if (isMap(parent)) (pairOf(parent, String(key)) ?? addPair(call, parent, String(key))).value = value;
  call.text.credit(value, source);
  return [];
}

/** A comment behind a value stays where the text is written again. */
function keepComment(before: unknown, after: unknown): void {
  if (isNode(before) && isNode(after) && before.comment) after.comment ??= before.comment;
}

/** The entry under a key, a new mapping where the text has none. */
function descend(call: Call, node: unknown, key: string | number): unknown {
  if (!isMap(node)) return childOf(node, key);
  const pair = pairOf(node, String(key)) ?? addPair(call, node, String(key));
  if (isScalar(pair.value) && pair.value.value === null) pair.value = null;
  pair.value ??= new YAMLMap();
  return pair.value;
}

function addPair({ text, key: source }: Call, map: YAMLMap, key: string): Pair {
  const pair = text.document.createPair(key, null);
  // The finding points at the key in the path.
  const from = Math.max(0, source.text.indexOf(key));
  if (isScalar(pair.key)) pair.key.range = [from, from + key.length, from + key.length];
  text.credit(pair.key, source);
  map.items.push(pair);
  return pair;
}

/** A list without entries is removed. */
function remove(call: Call, path: Path): void {
  let parent: unknown = call.text.document.contents;
  for (const [depth, key] of path.entries()) {
    const child = childOf(parent, key);
    if (child === undefined || child === null) {
      // Nothing to remove, but a key that is not known is still a mistake.
      if (isMap(parent))
        (pairOf(parent, String(key)) ?? addPair(call, parent, String(key))).value = new Scalar(undefined);
      return;
    }
    if (depth < path.length - 1) parent = child;
  }
  const key = path.at(-1)!;
  if (isMap(parent)) {
    const pair = pairOf(parent, String(key));
    parent.items = parent.items.filter((each) => each !== pair);
    call.text.creditRemoval(parent, String(key), call.key);
  }
  if (!isSeq(parent)) return;
  parent.items.splice(Number(key), 1);
  if (parent.items.length === 0) remove(call, path.slice(0, -1));
}

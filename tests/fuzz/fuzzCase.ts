// One input of the fuzz test: a shipped scenario, changed at random, with the file beside it and the settings of the call.
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parse, stringify } from "yaml";
import { scenarioSchema } from "#scenario/keys/scenarioSchema.ts";
import { validTexts } from "../unit/scenario/validTexts.ts";
import { chanceOf, type Chance } from "./chance.ts";
import { mutate } from "./mutation.ts";
import { hostileTexts, oddValue } from "./oddValue.ts";
import { Schema, type Container } from "./tree.ts";

export interface FuzzCase {
  readonly text: string;
  readonly set: readonly string[];
  /** What any file beside the scenario holds; undefined where there is none. */
  readonly column: string | undefined;
}

const inProject = (place: string): string => fileURLToPath(new URL(`../../${place}`, import.meta.url));

function textsIn(folder: string): readonly string[] {
  const names = readdirSync(inProject(folder)).filter((name) => name.endsWith(".yaml"));
  return names.toSorted().map((name) => readFileSync(inProject(`${folder}/${name}`), "utf8"));
}

/** Together they have every part of a cell. */
const texts = [...textsIn("scenarios"), ...textsIn("tests/bench"), ...validTexts.map(([, text]) => text)];
const trees = texts.map((text) => JSON.stringify(parse(text)));
export const schema = new Schema(scenarioSchema());

/** The same for the same seed and number. */
export function fuzzCase(seed: string, number: number): FuzzCase {
  const chance = chanceOf(seed, number);
  const text = chance.is(0.95) ? treeText(chance) : chance.of(texts);
  return {
    text: chance.is(0.06) ? scratched(text, chance) : text,
    set: chance.is(0.1) ? [setting(chance)] : [],
    column: chance.is(0.2) ? columnText(chance) : "shot,cool_s\n1,7.5\n2,7.25 s\n3,8\n",
  };
}

function treeText(chance: Chance): string {
  const tree = JSON.parse(chance.of(trees)) as Container;
  mutate(tree, schema, chance);
  // JSON is YAML, and faster to write and to read.
  return chance.is(0.8) ? JSON.stringify(tree) : stringify(tree, { aliasDuplicateObjects: false });
}

const signs = ["\n", "  ", ": ", "- ", "[", "}", "&a ", "*a", "!!str ", "0", ",", "\t", '"', "#", "|", "\r", "---\n"];

/** A text with a piece removed, doubled or put in. */
function scratched(text: string, chance: Chance): string {
  const at = chance.below(text.length + 1);
  const cut = text.slice(at, at + chance.below(40));
  const put = chance.of([chance.of(signs), cut + cut, chance.of(hostileTexts), ""]);
  return text.slice(0, at) + put + text.slice(at + cut.length);
}

function setting(chance: Chance): string {
  const paths = [
    "stations.*.steps.cool",
    "stations.count",
    "run.length",
    "delivery.plasticatingRate",
    "crew",
    "stops[0]",
  ];
  const moves = ["+10 %", "-1 s", "*0.9", "*0", "null", "", "8 s", "{ normal: [8 s, 0.3 s] }", "-1e9 s", "*1e300", "3"];
  const value = chance.is(0.7) ? chance.of(moves) : JSON.stringify(oddValue(chance));
  return `${chance.of(paths)}=${value}`;
}

function columnText(chance: Chance): string | undefined {
  const cells = ["7.5", "7.5 s", "", "-1", "0", "NaN", "1e309", '"a', "7,5", "８", "x".repeat(2000)];
  const rows = Array.from({ length: chance.below(6) }, (_, i) => `${i},${chance.of(cells)}`);
  return chance.of([undefined, "", "\r", "cool_s", ["shot,cool_s", ...rows].join(chance.of(["\n", "\r\n", "\r"]))]);
}

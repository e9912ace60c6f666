// The rooms whose sources are mutated, and which file imports which.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import seedrandom from "seedrandom";
import { importsOf, mutantsOf } from "./mutants.mjs";

export const projectFolder = fileURLToPath(new URL("../../", import.meta.url));
export const rooms = ["core", "engine", "cell", "analysis", "physics"];

export const readSource = (file) => readFileSync(path.join(projectFolder, file), "utf8");

function filesUnder(folder, ending) {
  const names = readdirSync(path.join(projectFolder, folder), { recursive: true });
  return names
    .filter((name) => name.endsWith(ending))
    .map((name) => `${folder}/${name.replaceAll("\\", "/")}`)
    .toSorted();
}

/** Another number in `core/border` only renames a thing, because both sides read it. */
const isMutated = (file) => !file.endsWith(".d.ts") && !file.startsWith("src/core/border/");

export function mutantsOfRoom(room, part = "") {
  const files = filesUnder(`src/${room}`, ".ts").filter((file) => isMutated(file) && file.includes(part));
  return files.flatMap((file) => mutantsOf(readSource(file)).map((mutant) => ({ ...mutant, file })));
}

/** So many of the mutants in random order; a larger count keeps those of a smaller one. */
export function sampled(mutants, count, seed) {
  const draw = seedrandom.alea(seed);
  const ranked = mutants.map((mutant) => [draw(), mutant]);
  return ranked
    .toSorted(([one], [other]) => one - other)
    .slice(0, count)
    .map(([, mutant]) => mutant);
}

/** Tests of these folders do not reach the mutated rooms, or reach them in programs that were built before. */
const apart = /^tests\/unit\/(?:cli|page|foundation|support)\//;

/** Folders whose tests know most about the mutated rooms come first. */
const order = [
  "unit/physics",
  "unit/engine",
  "unit/cell",
  "unit/analysis",
  "unit/fit",
  "unit/promise",
  "theory",
  "unit",
];

export function testFiles() {
  const files = ["tests/unit", "tests/theory"].flatMap((folder) => filesUnder(folder, ".test.ts"));
  const rank = (file) => order.findIndex((folder) => file.startsWith(`tests/${folder}/`));
  const chosen = files.filter((file) => !apart.test(file) && !file.endsWith(".long.test.ts"));
  return chosen.toSorted((one, other) => rank(one) - rank(other));
}

const fileOf = (name, from) =>
  name.startsWith("#") ? `src/${name.slice(1)}` : path.posix.join(path.posix.dirname(from), name);

const direct = new Map();

function importsOfFile(file) {
  if (!direct.has(file)) {
    const isThere = file.endsWith(".ts") && existsSync(path.join(projectFolder, file));
    const names = isThere ? importsOf(readSource(file)).filter((name) => /^[#.]/.test(name)) : [];
    direct.set(
      file,
      names.map((name) => fileOf(name, file)),
    );
  }
  return direct.get(file);
}

const closures = new Map();

/** Every file that a file imports, itself or through others. */
export function importedBy(file) {
  const all = closures.get(file) ?? new Set();
  closures.set(file, all);
  const visit = (each) => {
    if (all.has(each)) return;
    all.add(each);
    importsOfFile(each).forEach(visit);
  };
  visit(file);
  return all;
}

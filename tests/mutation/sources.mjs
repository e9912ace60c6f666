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
  return names.filter((name) => name.endsWith(ending)).map((name) => `${folder}/${name.replaceAll("\\", "/")}`).toSorted();
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

export const testFiles = () =>
  ["tests/unit", "tests/theory"]
    .flatMap((folder) => filesUnder(folder, ".test.ts"))
    .filter((file) => !apart.test(file) && !file.endsWith(".long.test.ts"));

const fileOf = (name, from) =>
  name.startsWith("#") ? `src/${name.slice(1)}` : path.posix.join(path.posix.dirname(from), name);

const closures = new Map();

/** Every file that a file imports, itself or through others. */
export function importedBy(file) {
  const known = closures.get(file);
  if (known) return known;
  const all = new Set();
  const visit = (each) => {
    if (all.has(each) || !/\.ts$/.test(each) || !existsSync(path.join(projectFolder, each))) return;
    all.add(each);
    for (const name of importsOf(readSource(each))) if (/^[#.]/.test(name)) visit(fileOf(name, each));
  };
  visit(file);
  closures.set(file, all);
  return all;
}

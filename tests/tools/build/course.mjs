// Gathers the shipped lessons with the scenarios that they name, and the scenarios of the drills.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { root } from "./bundleSettings.mjs";

const folder = path.join(root, "scenarios/lessons");
const read = (...place) => readFileSync(path.join(folder, ...place), "utf8");
const yamlIn = (...place) =>
  readdirSync(path.join(folder, ...place))
    .filter((name) => name.endsWith(".yaml"))
    .toSorted();

/** As `Course` in src/page/file/given.ts. */
export function course() {
  const lessons = yamlIn().map((file) => {
    const text = read(file);
    const named = [...text.matchAll(/^\s+scenario: (\S+\.yaml)$/gmu)].map(([, other]) => other);
    return {
      name: file.replace(".yaml", ""),
      file,
      title: /^title: (.+)$/mu.exec(text)[1],
      text,
      beside: Object.fromEntries(named.map((other) => [other, read(other)])),
    };
  });
  return { lessons, cells: Object.fromEntries(yamlIn("drills").map((file) => [file, read("drills", file)])) };
}

// Writes the generated files of the repository: `npm run generate`.
import { spawnSync } from "node:child_process";
import { mkdir, readFile, readdir, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { bundleSettings, root } from "../build/bundleSettings.mjs";

const inRoot = (name) => path.join(root, name);

/** Bundles a few exports of the sources, because Node 20 does not read TypeScript. */
async function load(source) {
  const file = inRoot(`dist/generate-${process.pid}.mjs`);
  const stdin = { contents: source, resolveDir: root, loader: "ts" };
  await mkdir(path.dirname(file), { recursive: true });
  await build({ ...bundleSettings, stdin, outfile: file });
  try {
    return await import(pathToFileURL(file).href);
  } finally {
    await rm(file);
  }
}

async function rewrite(name, change) {
  await writeFile(inRoot(name), change(await readFile(inRoot(name), "utf8")));
}

const {
  dictionary,
  eventLog,
  stepLog,
  withCodeTable,
  withElementTable,
  withKeyList,
  withScenarioTable,
  withStopTable,
} = await load(`
  import { dataDictionary } from "#report/tables/dataDictionary.ts";
  import { tableSpecs } from "#report/tables/tableSpecs.ts";
  export { eventLog, stepLog } from "./tests/tools/generators/sampleLogs.ts";
  export { withCodeTable } from "./tests/tools/generators/codeTable.ts";
  export { withKeyList } from "./tests/tools/generators/keyList.ts";
  export { withElementTable } from "./tests/tools/generators/elementTable.ts";
  export { withScenarioTable } from "./tests/tools/generators/scenarioTable.ts";
  export { withStopTable } from "./tests/tools/generators/stopTable.ts";
  export const dictionary = dataDictionary(tableSpecs);
`);
await writeFile(inRoot("reports/README.md"), dictionary);
await rewrite("src/cell/README.md", (readme) => withElementTable(withStopTable(readme)));
const scenarios = (await readdir(inRoot("scenarios"))).filter((name) => name.endsWith(".yaml")).toSorted();
const texts = new Map();
for (const name of scenarios) texts.set(name, await readFile(inRoot(`scenarios/${name}`), "utf8"));
await rewrite("scenarios/README.md", (readme) => withScenarioTable(withKeyList(withCodeTable(readme)), texts));

await writeFile(inRoot("scenarios/logs/invented-two-molds.csv"), eventLog(texts.get("two-molds.yaml")));
await writeFile(inRoot("scenarios/logs/invented-two-station.csv"), stepLog(texts.get("two-station.yaml")));

const schema = spawnSync(process.execPath, [inRoot("dist/cli/blowcell.js"), "schema"], { encoding: "utf8" });
if (schema.status !== 0) throw new Error(schema.stderr);
await writeFile(inRoot("scenarios/scenario.schema.json"), schema.stdout);

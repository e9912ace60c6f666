// Bundles the command line into dist/cli as one script, and the library into dist.
import { spawnSync } from "node:child_process";
import { chmod, readdir, rm, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import { bundleSettings, root } from "./bundleSettings.mjs";
import { pageParts } from "./pageParts.mjs";
import { thirdParty } from "./thirdParty.mjs";

const inCli = (name) => path.join(root, `src/cli/${name}.ts`);
const dist = path.join(root, "dist");
const outputFolder = path.join(dist, "cli");
const output = path.join(outputFolder, "blowcell.js");
const types = path.join(dist, "types/blowcell.d.ts");
const flags = new Set(process.argv.slice(2));

/** Newest change under a file or folder; a folder's own time changes with deleted files. */
async function newestChange(place) {
  const own = await stat(place);
  if (!own.isDirectory()) return own.mtimeMs;
  const inside = await Promise.all((await readdir(place)).map((name) => newestChange(path.join(place, name))));
  return Math.max(own.mtimeMs, ...inside);
}

async function isWanted(file) {
  const built = await stat(file).catch(() => undefined);
  if (built === undefined || !flags.has("--if-stale")) return true;
  const sources = ["src", "package.json", "package-lock.json", "tests/tools"];
  const changes = await Promise.all(sources.map((name) => newestChange(path.join(root, name))));
  return Math.max(...changes) > built.mtimeMs;
}

/** Undefined when the package is installed without its development packages; then dist is part of it. */
async function loadEsbuild() {
  return import("esbuild").catch((error) => {
    if (flags.has("--quietly")) return undefined;
    throw error;
  });
}

const small = {
  ...bundleSettings,
  minify: true,
  // Names stay readable in a bug report.
  keepNames: true,
  metafile: true,
};

const commonJs = {
  ...small,
  format: "cjs",
  supported: { "dynamic-import": false },
  banner: {},
  // The sources import an ES module with its own Buffer, which browsers can run as well.
  alias: { "csv-stringify/browser/esm/sync": "csv-stringify/sync", "csv-parse/browser/esm/sync": "csv-parse/sync" },
  outdir: outputFolder,
};

/** One script in a wrapper, because V8 gives the compiled code only of a script. Its parts run only when needed. */
const asScript = {
  ...commonJs,
  define: { ...bundleSettings.define, "import.meta.url": "program.url" },
  banner: { js: "(function(module,require,program){" },
  footer: { js: "})" },
  entryPoints: { program: inCli("main") },
  entryNames: "[name]-[hash]",
};

/** The files that Node loads directly, at the start or in a thread. */
const entries = ["blowcell", "worker"];

async function bundle(esbuild) {
  const program = await esbuild.build(asScript);
  const name = path.basename(Object.keys(program.metafile.outputs)[0]);
  const start = await esbuild.build({
    ...commonJs,
    define: { ...bundleSettings.define, BLOWCELL_PROGRAM: JSON.stringify(name) },
    entryPoints: entries.map(inCli),
  });
  await writeFile(path.join(outputFolder, "package.json"), `{ "type": "commonjs" }\n`);
  const library = await esbuild.build({ ...small, entryPoints: [path.join(root, "src/blowcell.ts")], outdir: dist });
  const page = await pageParts(esbuild);
  await writeFile(path.join(outputFolder, "page.json"), page.text);
  const metafiles = [...[program, start, library].map(({ metafile }) => metafile), ...page.metafiles];
  await writeFile(path.join(dist, "THIRD-PARTY.txt"), thirdParty(metafiles));
  await removeLeftovers([name, ...entries.map((entry) => `${entry}.js`), "package.json", "page.json"]);
}

/** Types for programs that use the library; only a package needs them. */
async function declareTypes() {
  // The compiler does not remove the types of deleted sources.
  await rm(path.join(dist, "types"), { recursive: true, force: true });
  const compiler = path.join(root, "node_modules/typescript/bin/tsc");
  const { status } = spawnSync(
    process.execPath,
    [compiler, "-p", path.join(root, "tests/tools/configuration/types.json")],
    {
      stdio: "inherit",
    },
  );
  if (status !== 0) throw new Error("The types could not be written.");
}

/** File names contain a hash of the content, so files of earlier builds would accumulate. */
async function removeLeftovers(written) {
  const present = await readdir(outputFolder);
  const old = present.filter((name) => !written.includes(name));
  await Promise.all(old.map((name) => rm(path.join(outputFolder, name), { recursive: true })));
}

async function buildProgram() {
  const esbuild = await loadEsbuild();
  if (esbuild === undefined) return;
  await bundle(esbuild);
  await chmod(output, 0o755);
}

if (await isWanted(output)) await buildProgram();
if (flags.has("--types") && (await isWanted(types))) await declareTypes();

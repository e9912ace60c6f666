// Bundles the command line into dist/cli as one script with its compiled code beside it, and the library into dist.
import { spawnSync } from "node:child_process";
import { chmod, readdir, rm, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import { bundleSettings, root } from "./bundleSettings.mjs";
import { engineFlags } from "./engineFlags.mjs";
import { thirdParty } from "./thirdParty.mjs";

const inCli = (name) => path.join(root, `src/cli/${name}.ts`);
const dist = path.join(root, "dist");
const outputFolder = path.join(dist, "cli");
const output = path.join(outputFolder, "blowcell.js");
const types = path.join(dist, "types/blowcell.d.ts");
const flags = new Set(process.argv.slice(2));

/** Newest change under a file or folder; a folder's own time tells of deleted files. */
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

/** Absent where the package was installed without its development packages: there dist came with it. */
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
  // Loads its own files for the threads that it starts, which a bundle would hide from it.
  external: ["piscina"],
  // The reader of the command line could start programs for subcommands; we have none, and Node's part for it takes 2 ms to load.
  alias: { ...bundleSettings.alias, "node:child_process": path.join(root, "tests/tools/build/noChildren.cjs") },
};

/** One script in a wrapper of its own: only of a script does V8 hand out the compiled code. Its parts still run only when needed. */
const asScript = {
  ...small,
  format: "cjs",
  supported: { "dynamic-import": false },
  // To give 3,600 functions their names back takes milliseconds at every start; the map knows them, and where they stand.
  keepNames: false,
  sourcemap: "external",
  sourcesContent: false,
  define: { ...bundleSettings.define, "import.meta.url": "program.url" },
  banner: { js: "(function(module,require,program){" },
  footer: { js: "})" },
  entryPoints: { program: inCli("main") },
  entryNames: "[name]-[hash]",
  outdir: outputFolder,
};

/** A file of its own, so that the entry is small. */
const versionApart = {
  name: "version-apart",
  setup({ onResolve }) {
    onResolve({ filter: /^\.\/tellVersion\.ts$/ }, () => ({ path: "./tellVersion.js", external: true }));
  },
};

/** What Node itself loads, in a thread or to begin with. */
const entries = ["blowcell", "tellVersion", "worker"];

async function bundle(esbuild) {
  const program = await esbuild.build(asScript);
  const name = Object.keys(program.metafile.outputs)
    .map((file) => path.basename(file))
    .find((file) => file.endsWith(".js"));
  const code = keepCode(path.join(outputFolder, name));
  await esbuild.build({
    ...small,
    format: "cjs",
    supported: asScript.supported,
    plugins: [...small.plugins, versionApart],
    banner: {},
    define: {
      ...bundleSettings.define,
      BLOWCELL_PROGRAM: JSON.stringify(name),
      BLOWCELL_FLAGS: JSON.stringify(engineFlags),
    },
    entryPoints: entries.map(inCli),
    outdir: outputFolder,
  });
  await writeFile(path.join(outputFolder, "package.json"), `{ "type": "commonjs" }\n`);
  const library = await esbuild.build({ ...small, entryPoints: [path.join(root, "src/blowcell.ts")], outdir: dist });
  await writeFile(path.join(dist, "THIRD-PARTY.txt"), thirdParty([program.metafile, library.metafile]));
  await removeLeftovers([name, `${name}.map`, ...code, ...entries.map((entry) => `${entry}.js`), "package.json"]);
}

/** In a process without flags, since V8 refuses code made under other ones. Without kept code all works, only later. */
function keepCode(file) {
  const { NODE_OPTIONS: _flags, ...env } = process.env;
  const call = [path.join(root, "tests/tools/build/keepCode.mjs"), file, root];
  const { status, stderr } = spawnSync(process.execPath, call, { env, stdio: ["ignore", "ignore", "pipe"] });
  if (status !== 0) throw new Error(`The compiled code could not be kept: ${stderr.toString()}`);
  return [`${path.basename(file)}.${process.version}-${process.arch}`];
}

/** Types for programs that use the library; only a package needs them. */
async function declareTypes() {
  // The compiler leaves those of sources that are gone.
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

/** Names carry a hash of the content: those of earlier builds would pile up. */
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

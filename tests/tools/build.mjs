// Bundles the command line into dist/cli, one chunk a command, so that each loads only what it needs, and the library into dist.
import { spawnSync } from "node:child_process";
import { chmod, readdir, rm, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import { bundleSettings, root } from "./bundleSettings.mjs";
import { thirdParty } from "./thirdParty.mjs";

const entries = ["blowcell", "worker"].map((name) => path.join(root, `src/cli/${name}.ts`));
const dist = path.join(root, "dist");
const outputFolder = path.join(dist, "cli");
const output = path.join(outputFolder, "blowcell.js");
const flags = new Set(process.argv.slice(2));

/** Newest change under a file or folder; a folder's own time tells of deleted files. */
async function newestChange(place) {
  const own = await stat(place);
  if (!own.isDirectory()) return own.mtimeMs;
  const inside = await Promise.all((await readdir(place)).map((name) => newestChange(path.join(place, name))));
  return Math.max(own.mtimeMs, ...inside);
}

async function isStale() {
  const wanted = flags.has("--types") ? path.join(dist, "types/blowcell.d.ts") : output;
  const built = await stat(wanted).catch(() => undefined);
  if (built === undefined) return true;
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

async function bundle(esbuild) {
  const common = {
    ...bundleSettings,
    minify: true,
    // Names stay readable in a bug report.
    keepNames: true,
    metafile: true,
    // Loads its own files for the threads that it starts, which a bundle would hide from it.
    external: ["piscina"],
  };
  const program = await esbuild.build({ ...common, entryPoints: entries, outdir: outputFolder, splitting: true });
  const library = await esbuild.build({ ...common, entryPoints: [path.join(root, "src/blowcell.ts")], outdir: dist });
  await writeFile(path.join(dist, "THIRD-PARTY.txt"), thirdParty([program.metafile, library.metafile]));
  return program;
}

/** Types for programs that use the library; only a package needs them. */
async function declareTypes() {
  // The compiler leaves those of sources that are gone.
  await rm(path.join(dist, "types"), { recursive: true, force: true });
  const compiler = path.join(root, "node_modules/typescript/bin/tsc");
  const { status } = spawnSync(process.execPath, [compiler, "-p", path.join(root, "tests/tools/types.json")], {
    stdio: "inherit",
  });
  if (status !== 0) throw new Error("The types could not be written.");
}

/** Chunk names carry a hash of their content: those of earlier builds would pile up. */
async function removeLeftovers(metafile) {
  const written = new Set(Object.keys(metafile.outputs).map((name) => path.join(root, name)));
  const present = (await readdir(outputFolder)).map((name) => path.join(outputFolder, name));
  await Promise.all(present.filter((name) => !written.has(name)).map((name) => rm(name, { recursive: true })));
}

async function build() {
  if (flags.has("--if-stale") && !(await isStale())) return;
  const esbuild = await loadEsbuild();
  if (esbuild === undefined) return;
  const { metafile } = await bundle(esbuild);
  await removeLeftovers(metafile);
  await chmod(output, 0o755);
  if (flags.has("--types")) await declareTypes();
}

await build();

// Gives bundlers compiled bytes: `x.wasm` is the AssemblyScript of `x.ts`, and `x.f64` holds the `numbers` that `x.ts` exports.
import { createHash } from "node:crypto";
import { mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";

/** Sizes up to which functions are inlined; without inlining, calls take half of the time of the loop. */
const inlined = { anywhere: 150, light: 500 };

/** Functions that are not inlined: they are rarely called, and inlining them would slow every draw. */
const apart = { core: ["state/draws/drawTicks"] };

/** Throws when the compiler reports an error. */
async function compileCore(file) {
  // Loaded only when needed, because it is large.
  const { default: asc } = await import("assemblyscript/asc");
  const { dir, base, name } = path.parse(file);
  // Functions keep their names until those that stay apart have been found. The runtime `stub` never frees memory. A failure ends in a trap instead
  // of a call of the host.
  const choices = ["--optimizeLevel", "3", "--noAssert", "--runtime", "stub", "--debug", "--use", "abort="];
  let bytes;
  let faults = "";
  const { error } = await asc.main([base, "--baseDir", dir, "--outFile", `${name}.wasm`, ...choices], {
    stderr: { write: (text) => void (faults += text) },
    writeFile: (_, contents) => void (bytes = contents),
  });
  if (error) throw new Error(`${error.message}\n${faults}`);
  return inline(bytes, apart[name] ?? []);
}

async function inline(bytes, staysApart) {
  const { default: binaryen } = await import("binaryen");
  const core = binaryen.readBinary(bytes);
  const { MutableGlobals, NontrappingFPToInt, BulkMemory, BulkMemoryOpt, SignExt } = binaryen.Features;
  // Features of every browser and Node since 2020.
  core.setFeatures(MutableGlobals | NontrappingFPToInt | BulkMemory | BulkMemoryOpt | SignExt);
  binaryen.setOptimizeLevel(4);
  binaryen.setShrinkLevel(0);
  binaryen.setAlwaysInlineMaxSize(inlined.anywhere);
  binaryen.setFlexibleInlineMaxSize(inlined.light);
  binaryen.setOneCallerInlineMaxSize(inlined.anywhere);
  binaryen.setAllowInliningFunctionsWithLoops(true);
  for (const name of staysApart) {
    if (core.getFunction(name) === 0) throw new Error(`${name} is to stay a function, and is none`);
    binaryen.setPassArgument("no-inline", name);
    core.runPasses(["no-inline"]);
  }
  core.optimize();
  core.optimize();
  binaryen.setDebugInfo(false);
  return core.emitBinary();
}

/** Changes with the sources of the core, with this file and with the versions of both compilers. */
async function coreHash(folder) {
  const sources = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith(".ts")).toSorted();
  const compilers = ["assemblyscript", "binaryen"].map((name) => path.join(root, `node_modules/${name}/package.json`));
  const hash = createHash("sha256");
  for (const file of [...sources.map((name) => path.join(folder, name)), ...compilers, fileURLToPath(import.meta.url)])
    hash.update(`${path.relative(root, file)}\n`).update(await readFile(file));
  return hash.digest("hex");
}

/** Compiles only after a change: it takes seconds, and the build, the tests and the benchmark need the same bytes. */
async function compileOnce(file) {
  const { dir, name } = path.parse(file);
  const kept = `${name}-${await coreHash(dir)}.wasm`;
  const found = await readFile(path.join(cache, kept)).catch(() => undefined);
  if (found !== undefined) return found;
  const bytes = await compileCore(file);
  await mkdir(cache, { recursive: true });
  const old = (await readdir(cache)).filter((each) => each.startsWith(`${name}-`));
  await Promise.all(old.map((each) => rm(path.join(cache, each), { force: true })));
  // Renamed when it is complete, because another process may read at the same time.
  const unfinished = path.join(cache, `${process.pid}-${kept}`);
  await writeFile(unfinished, bytes);
  await rename(unfinished, path.join(cache, kept));
  return bytes;
}

/** The numbers that a module exports, as little-endian doubles. */
async function workOut(file) {
  const { build } = await import("esbuild");
  const { outputFiles } = await build({
    entryPoints: [file],
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    conditions: ["blowcell-source"],
    logLevel: "error",
  });
  const text = Buffer.from(outputFiles[0].contents).toString("base64");
  const { numbers } = await import(`data:text/javascript;base64,${text}`);
  const bytes = new DataView(new ArrayBuffer(8 * numbers.length));
  numbers.forEach((number, i) => bytes.setFloat64(8 * i, number, true));
  return new Uint8Array(bytes.buffer);
}

const root = fileURLToPath(new URL("../../..", import.meta.url));
const cache = path.join(root, "node_modules/.cache/blowcell");

/** No such file exists; both bundlers get the path that it would have. */
const made = /\.(?:wasm|f64)$/;
const wasm = /\.wasm$/;
const placeOf = (name, folder) =>
  name.startsWith("#") ? path.join(root, "src", name.slice(1)) : path.resolve(folder, name);

function make(file) {
  const source = file.replace(made, ".ts");
  return wasm.test(file) ? compileOnce(source) : workOut(source);
}

/** Files of AssemblyScript's runtime that are part of the compiled core, which the bundle's list of files lacks. */
export function withinCore(inputs) {
  return inputs.some((file) => wasm.test(file)) ? ["node_modules/assemblyscript/std/assembly/rt/stub.ts"] : [];
}

export const forEsbuild = {
  name: "made-bytes",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: made }, ({ path: name, resolveDir }) => ({ path: placeOf(name, resolveDir) }));
    onLoad({ filter: made }, async ({ path: file }) => ({ contents: await make(file), loader: "binary" }));
  },
};

export const forVite = {
  name: "made-bytes",
  enforce: "pre",
  resolveId: (name, importer) => (made.test(name) ? placeOf(name, path.dirname(importer ?? root)) : null),
  async load(file) {
    if (!made.test(file)) return null;
    const text = Buffer.from(await make(file)).toString("base64");
    return `export default Uint8Array.from(atob("${text}"), (letter) => letter.charCodeAt(0));`;
  },
};

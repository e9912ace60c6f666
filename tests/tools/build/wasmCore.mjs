// Compiles the core, which is written in AssemblyScript, to WebAssembly: an import of `#core/core.wasm` gives the bytes made of `core.ts`.
import { createHash } from "node:crypto";
import { mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";

/** Sizes up to which functions are inlined; without inlining, calls take half of the time of the loop. */
const inlined = { anywhere: 150, light: 500 };

/** Functions that are not inlined: they are rarely called, and inlining them slows every draw. */
const apart = ["state/draws/drawTicks"];

const folder = fileURLToPath(new URL("../../../src/core", import.meta.url));
const modules = fileURLToPath(new URL("../../../node_modules", import.meta.url));
const cache = path.join(modules, ".cache/blowcell");

/** Throws when the compiler reports an error. */
const compileCore = async () => inline(await compileSources());

/** The core without inlined calls. A text that `standIn` gives takes the place of the file on disk. */
export async function compileSources(standIn = () => undefined) {
  // Loaded only when needed, because it is large.
  const { default: asc } = await import("assemblyscript/asc");
  // Debug names remain until `inline` has found the functions of `apart`. The runtime `stub` never frees memory.
  // A failure ends in a trap instead of a call of the host.
  const choices = ["--optimizeLevel", "3", "--noAssert", "--runtime", "stub", "--debug", "--use", "abort="];
  let bytes;
  let faults = "";
  const { error } = await asc.main(["core.ts", "--baseDir", folder, "--outFile", "core.wasm", ...choices], {
    readFile: async (name, base) => {
      const place = path.resolve(base, name);
      return standIn(place) ?? readFile(place, "utf8").catch(() => null);
    },
    stderr: { write: (text) => void (faults += text) },
    writeFile: (_, contents) => void (bytes = contents),
  });
  if (error) throw new Error(`${error.message}\n${faults}`);
  return bytes;
}

async function inline(bytes) {
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
  for (const name of apart) {
    if (core.getFunction(name) === 0) throw new Error(`${name} should stay a function but is none`);
    binaryen.setPassArgument("no-inline", name);
    core.runPasses(["no-inline"]);
  }
  core.optimize();
  core.optimize();
  binaryen.setDebugInfo(false);
  return core.emitBinary();
}

/** Changes with the sources of the core, with this file and with the versions of both compilers. */
async function sourceHash() {
  const sources = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith(".ts")).toSorted();
  const compilers = ["assemblyscript", "binaryen"].map((name) => path.join(modules, name, "package.json"));
  const hash = createHash("sha256").update(sources.join());
  for (const file of [...sources.map((name) => path.join(folder, name)), ...compilers, fileURLToPath(import.meta.url)])
    hash.update(await readFile(file));
  return hash.digest("hex");
}

/** Compiles only after a change: it takes seconds, and the build, the tests and the benchmark need the same bytes. */
async function compiledCore() {
  const name = `core-${await sourceHash()}.wasm`;
  const kept = await readFile(path.join(cache, name)).catch(() => undefined);
  if (kept !== undefined) return kept;
  const bytes = await compileCore();
  await mkdir(cache, { recursive: true });
  const old = (await readdir(cache)).filter((each) => each.startsWith("core-"));
  await Promise.all(old.map((each) => rm(path.join(cache, each), { force: true })));
  // Renamed when it is complete, because another process may read at the same time.
  const unfinished = path.join(cache, `${process.pid}.wasm`);
  await writeFile(unfinished, bytes);
  await rename(unfinished, path.join(cache, name));
  return bytes;
}

/** Nothing lies there: both bundlers are given a place all the same. */
const place = path.join(folder, "core.wasm");
const wasm = /core\.wasm$/;

/** The runtime of AssemblyScript, which a bundle with the compiled core contains but does not list. */
export function withinCore(inputs) {
  return inputs.some((file) => wasm.test(file)) ? ["node_modules/assemblyscript/std/assembly/rt/stub.ts"] : [];
}

export const forEsbuild = {
  name: "wasm-core",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: wasm }, () => ({ path: place }));
    onLoad({ filter: wasm }, async () => ({ contents: await compiledCore(), loader: "binary" }));
  },
};

/** As letters of one byte, which a compressed page holds in less than base64. */
export const forPage = {
  name: "wasm-core",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: wasm }, () => ({ path: place }));
    onLoad({ filter: wasm }, async () => ({
      contents: `export default Uint8Array.from(${JSON.stringify((await compiledCore()).toString("latin1"))}, (letter) => letter.charCodeAt(0));`,
    }));
  },
};

export const forVite = {
  name: "wasm-core",
  enforce: "pre",
  resolveId: (name) => (wasm.test(name) ? place : null),
  async load(file) {
    if (!wasm.test(file)) return null;
    const text = Buffer.from(await compiledCore()).toString("base64");
    return `export default Uint8Array.from(atob("${text}"), (letter) => letter.charCodeAt(0));`;
  },
};

// Makes WebAssembly of a program in AssemblyScript: whoever imports `x.wasm` gets the bytes of the `x.ts` beside it.
import path from "node:path";
import { fileURLToPath } from "node:url";

/** Sizes up to which functions go into those that call them: half of the time of the loop goes into calls otherwise. */
const inlined = { anywhere: 150, light: 500 };

/** What stays a function all the same: it is called seldom, and where it is, every draw ahead would have to step around it. */
const apart = ["draws/drawTicks"];

/** Throws where the compiler finds a fault. */
export async function compileCore(file) {
  // Only when there is something to compile: it is large.
  const { default: asc } = await import("assemblyscript/asc");
  const { dir, base } = path.parse(file);
  // Functions keep their names until those that stay apart have been found.
  const choices = ["--optimizeLevel", "3", "--noAssert", "--runtime", "stub", "--debug"];
  let bytes;
  let faults = "";
  const { error } = await asc.main([base, "--baseDir", dir, "--outFile", "core.wasm", ...choices], {
    stderr: { write: (text) => void (faults += text) },
    writeFile: (_, contents) => void (bytes = contents),
  });
  if (error) throw new Error(`${error.message}\n${faults}`);
  return inline(bytes);
}

async function inline(bytes) {
  const { default: binaryen } = await import("binaryen");
  const core = binaryen.readBinary(bytes);
  const { MutableGlobals, NontrappingFPToInt, BulkMemory, BulkMemoryOpt, SignExt } = binaryen.Features;
  // What every browser and every Node can do since 2020.
  core.setFeatures(MutableGlobals | NontrappingFPToInt | BulkMemory | BulkMemoryOpt | SignExt);
  binaryen.setOptimizeLevel(4);
  binaryen.setShrinkLevel(0);
  binaryen.setAlwaysInlineMaxSize(inlined.anywhere);
  binaryen.setFlexibleInlineMaxSize(inlined.light);
  binaryen.setOneCallerInlineMaxSize(inlined.anywhere);
  binaryen.setAllowInliningFunctionsWithLoops(true);
  for (const name of apart) {
    if (core.getFunction(name) === 0) throw new Error(`${name} is to stay a function, and is none`);
    binaryen.setPassArgument("no-inline", name);
    core.runPasses(["no-inline"]);
  }
  core.optimize();
  core.optimize();
  binaryen.setDebugInfo(false);
  return core.emitBinary();
}

const root = fileURLToPath(new URL("../..", import.meta.url));

/** The bytes exist nowhere: both bundlers are told where they would lie. */
const wasm = /\.wasm$/;
const placeOf = (name) => path.join(root, "src", name.replace("#", ""));
const sourceOf = (file) => file.replace(wasm, ".ts");

/** Where the compiled core is part of a bundle, so is what its language brings along: no list of files tells of it. */
export function withinCore(inputs) {
  return inputs.some((file) => wasm.test(file)) ? ["node_modules/assemblyscript/std/assembly/rt/stub.ts"] : [];
}

export const forEsbuild = {
  name: "wasm-core",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: wasm }, ({ path: name }) => ({ path: placeOf(name) }));
    onLoad({ filter: wasm }, async ({ path: file }) => ({
      contents: await compileCore(sourceOf(file)),
      loader: "binary",
    }));
  },
};

export const forVite = {
  name: "wasm-core",
  enforce: "pre",
  resolveId: (name) => (wasm.test(name) ? placeOf(name) : null),
  async load(file) {
    if (!wasm.test(file)) return null;
    const text = Buffer.from(await compileCore(sourceOf(file))).toString("base64");
    return `export default Uint8Array.from(atob("${text}"), (letter) => letter.charCodeAt(0));`;
  },
};

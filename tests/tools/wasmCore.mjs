// Makes WebAssembly of a program in AssemblyScript: whoever imports `x.wasm` gets the bytes of the `x.ts` beside it.
import path from "node:path";
import asc from "assemblyscript/asc";

/** Throws where the compiler finds a fault. */
export async function compileCore(file) {
  const { dir, base } = path.parse(file);
  const choices = ["--optimizeLevel", "3", "--noAssert", "--runtime", "stub"];
  let bytes;
  const { error, stderr } = await asc.main([base, "--baseDir", dir, "--outFile", "core.wasm", ...choices], {
    writeFile: (_, contents) => void (bytes = contents),
  });
  if (error) throw new Error(`${error.message}\n${stderr.toString()}`);
  return bytes;
}

/** The bytes exist nowhere: both bundlers are told where they would lie. */
const wasm = /\.wasm$/;
const sourceOf = (file) => file.replace(wasm, ".ts");

export const forEsbuild = {
  name: "wasm-core",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: wasm }, ({ path: name, resolveDir }) => ({ path: path.join(resolveDir, name) }));
    onLoad({ filter: wasm }, async ({ path: file }) => ({
      contents: await compileCore(sourceOf(file)),
      loader: "binary",
    }));
  },
};

export const forVite = {
  name: "wasm-core",
  enforce: "pre",
  resolveId(name, importer) {
    return wasm.test(name) && importer ? path.join(path.dirname(importer), name) : null;
  },
  async load(file) {
    if (!wasm.test(file)) return null;
    const text = Buffer.from(await compileCore(sourceOf(file))).toString("base64");
    return `export default Uint8Array.from(atob("${text}"), (letter) => letter.charCodeAt(0));`;
  },
};

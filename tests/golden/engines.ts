// The golden hashes as a program for other JavaScript engines, and the texts of the shipped scenarios.
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { shippedText } from "../support/reported.ts";
import { forEsbuild } from "../tools/build/wasmCore.mjs";

const project = fileURLToPath(new URL("../..", import.meta.url));

const names = readdirSync(new URL("../../scenarios", import.meta.url)).flatMap(
  (file) => /^(.+)\.yaml$/u.exec(file)?.[1] ?? [],
);

export const shippedTexts: Readonly<Record<string, string>> = Object.fromEntries(
  names.map((name) => [name, shippedText(name)]),
);

/** A script that defines `cell.goldenHashes`. */
export async function hashScript(): Promise<string> {
  const { outputFiles } = await build({
    stdin: {
      contents: `export { goldenHashes } from "./tests/golden/hashes.ts";`,
      resolveDir: project,
      loader: "ts",
    },
    bundle: true,
    write: false,
    platform: "browser",
    format: "iife",
    target: "es2022",
    globalName: "cell",
    conditions: ["blowcell-source"],
    plugins: [forEsbuild],
    logLevel: "error",
  });
  return outputFiles[0]!.text;
}

/** The call that answers with the hashes of the given texts. */
export const hashCall = (texts: Readonly<Record<string, string>>): string =>
  `cell.goldenHashes(${JSON.stringify(texts)})`;

// Bundles the opener of the test browser for scripts that Node runs without the test runner.
import { rm } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { bundleSettings, root } from "./bundleSettings.mjs";

/** In a folder of two levels, from which the module finds the root. */
export async function browserOpener() {
  const outfile = path.join(root, `dist/cli/browser-${process.pid}.mjs`);
  await build({ ...bundleSettings, entryPoints: ["tests/support/browser.ts"], external: ["playwright-core"], outfile });
  try {
    return (await import(pathToFileURL(outfile).href)).openBrowser;
  } finally {
    await rm(outfile);
  }
}

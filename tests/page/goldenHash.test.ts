// A scenario with every distribution gives the same numbers, bit for bit, in Node and in a browser.
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { expect, test } from "vitest";
import { openBrowser } from "../support/browser.ts";
import { goldenHash } from "../support/goldenCell.ts";
import { forEsbuild } from "../tools/build/wasmCore.mjs";

const golden = "5783 numbers, a2177f4f";

async function bundledForBrowsers(): Promise<string> {
  const { outputFiles } = await build({
    stdin: {
      contents: `export { goldenHash } from "./tests/support/goldenCell.ts";`,
      resolveDir: fileURLToPath(new URL("../..", import.meta.url)),
      loader: "ts",
    },
    bundle: true,
    write: false,
    platform: "browser",
    format: "iife",
    globalName: "cell",
    conditions: ["blowcell-source"],
    plugins: [forEsbuild],
    logLevel: "error",
  });
  return outputFiles[0]!.text;
}

test("the numbers are the recorded ones in Node", () => {
  expect(goldenHash()).toBe(golden);
});

test("the numbers are the recorded ones in Chromium", { timeout: 60_000 }, async () => {
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: await bundledForBrowsers() });
    expect(await page.evaluate("cell.goldenHash()")).toBe(golden);
  } finally {
    await browser.close();
  }
});

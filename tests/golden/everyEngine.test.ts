// Each shipped scenario, and a cell with every distribution, gives the recorded bytes in Node and in Chromium.
import { expect, test } from "vitest";
import { openBrowser } from "../support/browser.ts";
import { isLong } from "../support/caseCount.ts";
import { hashCall, hashScript, shippedTexts } from "./engines.ts";
import { goldenHashes } from "./hashes.ts";

const recorded = "scenarioHashes.txt";

test("the bytes are the recorded ones in Node", { timeout: 120_000 }, async () => {
  await expect(goldenHashes(shippedTexts)).toMatchFileSnapshot(recorded);
});

test.runIf(isLong)("the bytes are those of Node in Chromium", { timeout: 240_000 }, async () => {
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: await hashScript() });
    expect(await page.evaluate(hashCall(shippedTexts))).toBe(goldenHashes(shippedTexts));
  } finally {
    await browser.close();
  }
});

// Each shipped scenario gives the same bytes in Node 20, 22 and 24, and in the Firefox of this machine.
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { newFolder } from "../cli/callBlowcell.ts";
import { installedFirefox, openFirefox } from "../otherEngine/firefox.ts";
import { otherNodes } from "../otherEngine/nodes.ts";
import { hashCall, hashScript, shippedTexts } from "./engines.ts";
import { goldenHashes } from "./hashes.ts";

const here = goldenHashes(shippedTexts);
const script = await hashScript();
const firefox = installedFirefox(process.env);

test.each(otherNodes())("the bytes are those of this Node in Node %s", { timeout: 240_000 }, (_, program) => {
  const file = path.join(newFolder(), "hashes.cjs");
  writeFileSync(file, `${script}; process.stdout.write(${hashCall(shippedTexts)});`);
  expect(execFileSync(program, [file], { encoding: "utf8" })).toBe(here);
});

/** No package of the registry contains a Firefox, so a machine with npm alone has none. */
test.runIf(firefox !== undefined)("the bytes are those of Node in Firefox", { timeout: 240_000 }, async () => {
  const browser = await openFirefox(firefox!);
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: script });
    expect(await page.evaluate(hashCall(shippedTexts))).toBe(here);
  } finally {
    await browser.close();
  }
});

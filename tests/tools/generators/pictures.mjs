// Takes a small picture of each place of the built page: `node tests/tools/generators/pictures.mjs`; it needs a browser.
import { execFileSync } from "node:child_process";
import { mkdir, mkdtemp, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { browserOpener } from "../build/browserOpener.mjs";
import { root } from "../build/bundleSettings.mjs";

/**
 * What the address holds, the element that is there when the place is complete, keys that are pressed on it, and where the picture
 * begins; `final` is a text that only the final answer has.
 */
const places = [
  {
    name: "watch",
    address: "scenario=two-station.yaml&place=watch",
    ready: ".stage",
    keys: ["Shift+ArrowRight", "Shift+ArrowRight", "w"],
    from: "#watch",
  },
  {
    name: "try",
    address: "scenario=two-station.yaml&place=try&set=stations.*.steps.cool%3D-0.5 s",
    ready: ".try .made",
    final: /^Final, as/u,
    from: "#try",
  },
  {
    name: "learn",
    address: "scenario=two-station.yaml&place=learn",
    ready: ".lessons button",
    keys: ["Enter"],
    from: "#learn",
  },
  {
    name: "order",
    address: "scenario=order-by-friday.yaml&place=order&order=6000 of natural bottle&due=Monday 08:10&chance=80 %25",
    ready: "#order-uses",
    final: /^Final after/u,
    from: "#order",
  },
];
const size = { width: 1160, height: 780 };
/** Pixels of the picture a pixel of the page. */
const scale = 0.66;
const mostBytes = 75_000;
/** Milliseconds until nothing is run any more, and until the browser has drawn it. */
const longest = 60_000;
const rest = 1000;

async function takePicture(page, file, { name, address, ready, keys = [], from, final = /./u }) {
  await page.goto("about:blank");
  await page.goto(`${pathToFileURL(file).href}#${address}`);
  await page.locator(ready).first().waitFor({ timeout: longest });
  await page.getByText(final).first().waitFor({ timeout: longest });
  for (const key of keys) await page.locator(ready).first().press(key);
  await page.waitForTimeout(rest);
  await page.evaluate(`document.activeElement.blur(); document.querySelector("${from}").scrollIntoView()`);
  const picture = path.join(root, `reports/pictures/${name}.png`);
  await page.screenshot({ path: picture });
  const { size: bytes } = await stat(picture);
  if (bytes > mostBytes) throw new Error(`${picture} has ${bytes} bytes; at most ${mostBytes} are wanted.`);
}

const folder = await mkdtemp(path.join(tmpdir(), "blowcell-pictures-"));
const file = path.join(folder, "page.html");
const scenarios = ["two-station", "order-by-friday"].map((name) => `scenarios/${name}.yaml`);
execFileSync(process.execPath, ["dist/cli/blowcell.js", "page", ...scenarios, "--out", file, "--quiet"], { cwd: root });
await mkdir(path.join(root, "reports/pictures"), { recursive: true });
const openBrowser = await browserOpener();
const browser = await openBrowser();
try {
  const page = await browser.newPage({ viewport: size, deviceScaleFactor: scale });
  for (const place of places) await takePicture(page, file, place);
} finally {
  await browser.close();
  await rm(folder, { recursive: true });
}

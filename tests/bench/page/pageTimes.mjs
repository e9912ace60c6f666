// Opens the page in a browser, moves a lever, and prints the milliseconds that each answer took: `node pageTimes.mjs PAGE ROUNDS`.
import { pathToFileURL } from "node:url";
import { browserOpener } from "../../tools/build/browserOpener.mjs";

/** In the page, so that the way to this script does not count: times since the page was asked for, and since a key. */
const watching = `(() => {
  const seen = (globalThis.seen = {});
  const textOf = (selector) => document.querySelector(selector)?.textContent ?? "";
  addEventListener("keydown", () => (seen.pressed = performance.now()), true);
  new MutationObserver(() => {
    if (/\\d/.test(textOf(".made"))) seen.first ??= performance.now();
    if (seen.pressed === undefined) return;
    const sure = textOf(".sure");
    if (sure.startsWith("Rough")) seen.rough ??= performance.now() - seen.pressed;
    if (seen.rough !== undefined && sure.startsWith("Final")) seen.final ??= performance.now() - seen.pressed;
  }).observe(document, { subtree: true, childList: true, characterData: true });
})()`;

/** Milliseconds. */
const longest = 120_000;

async function timesOf(browser, address) {
  const page = await browser.newPage();
  await page.addInitScript(watching);
  await page.goto(address);
  const final = page.locator(".sure", { hasText: /^Final, as/u });
  await final.waitFor({ timeout: longest });
  await page.locator(".lever input").first().press("ArrowLeft");
  await page
    .locator(".sure", { hasText: /^Rough/u })
    .or(final)
    .waitFor({ timeout: longest });
  await final.waitFor({ timeout: longest });
  const seen = await page.evaluate("seen");
  await page.close();
  return seen;
}

const [file, rounds] = process.argv.slice(2);
const openBrowser = await browserOpener();
const browser = await openBrowser();
try {
  const taken = [];
  for (let round = 0; round < Number(rounds); round++)
    taken.push(await timesOf(browser, `${pathToFileURL(file).href}#place=try`));
  console.log(JSON.stringify(taken));
} finally {
  await browser.close();
}

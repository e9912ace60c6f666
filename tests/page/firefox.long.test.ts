// Opens the page from disk in a Firefox of this machine, where it has one or FIREFOX names one.
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { recordScene } from "#report/scene/recordScene.ts";
import { callBlowcell, newFolder } from "../cli/callBlowcell.ts";
import { scenarioOf, shippedText } from "../support/reported.ts";

const { installedFirefox, openFirefox } = await import("../otherEngine/firefox.ts").catch((cause: unknown) => {
  throw new Error(
    "puppeteer-core, which only this test needs, is not installed: run npm ci --prefix tests/otherEngine",
    {
      cause,
    },
  );
});

const firefox = installedFirefox(process.env);

/** No package of the registry contains a Firefox, so a machine with npm alone has none. */
describe.runIf(firefox !== undefined)("the page in Firefox", { timeout: 120_000 }, () => {
  const file = join(newFolder(), "cell.html");
  const record = recordScene(scenarioOf(shippedText("two-station"), "two-station"), { until: 600 });
  let browser: Browser;
  let page: Page;
  const seen: string[] = [];

  beforeAll(async () => {
    callBlowcell(["page", "scenarios/two-station.yaml", "--out", file]);
    browser = await openFirefox(firefox!);
    page = await browser.newPage();
    page.on("console", (message) => seen.push(message.text()));
    page.on("pageerror", (error) => seen.push(String(error)));
    // Firefox draws the triangle of a folded section with a font of its own.
    page.on("request", (request) => {
      if (!request.url().startsWith("data:font/")) seen.push(new URL(request.url()).protocol);
    });
    await page.goto(pathToFileURL(file).href);
  }, 120_000);

  afterAll(() => browser?.close());

  const shown = (): Promise<unknown> =>
    page.evaluate("parseFloat(document.querySelector('.timeline output').textContent)");

  it("opens from disk with the answer of `check`, without a request or a message", async () => {
    const picture = (): Promise<unknown> => page.evaluate("document.querySelector('.stage svg') !== null");
    await expect.poll(picture, { timeout: 30_000 }).toBe(true);
    const { output } = callBlowcell(["check", "scenarios/two-station.yaml"]);
    const finding = String(await page.evaluate("document.querySelector('.finding').textContent"));
    expect(output.replaceAll(/\s+/gu, " ")).toContain(finding);
    expect(seen.filter((each) => !["file:", "blob:"].includes(each))).toEqual([]);
  });

  it("goes from moment to moment by keys, and plays", async () => {
    await page.evaluate("document.querySelector('.stage').focus()");
    for (const index of [1, 2, 3]) {
      await page.keyboard.press("ArrowRight");
      expect(await shown()).toBe(Number(record.moments[index]!.toFixed(2)));
    }
    await page.keyboard.press("Home");
    expect(await shown()).toBe(0);
    await page.keyboard.press(" ");
    await expect.poll(shown, { timeout: 10_000 }).toBeGreaterThan(0.5);
    await page.keyboard.press(" ");
  });

  it("reads a file that is dropped, and refuses a wrong one", async () => {
    await page.evaluate(`(() => {
      const data = new DataTransfer();
      data.items.add(new File(["format: 1\\n"], "wrong.yaml"));
      document.dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true, bubbles: true }));
    })()`);
    const words = (): Promise<unknown> => page.evaluate("document.querySelector('[role=alert]')?.textContent ?? ''");
    await expect.poll(words, { timeout: 10_000 }).toContain("wrong.yaml");
  });
});

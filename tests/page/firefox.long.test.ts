// Opens the page from disk in a Firefox of this machine, where it has one or FIREFOX names one.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { recordScene } from "#report/scene/recordScene.ts";
import { callBlowcell, newFolder } from "../cli/callBlowcell.ts";
import { answered, expectSameAsCommand, openOrder, orderCases, orderedScenarios } from "../support/page/orderPage.ts";
import { scenarioOf, shippedText } from "../support/reported.ts";
import {
  callOf,
  expectAsRun,
  moveLever,
  movedLevers,
  movedScenarios,
  openTry,
  shownTryCall,
} from "../support/page/tryPage.ts";

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
const name =
  firefox === undefined
    ? "the page in Firefox: not tested, because none is installed; install firefox-esr, or let FIREFOX name its program"
    : "the page in Firefox";
if (firefox === undefined) console.warn(name);

describe.runIf(firefox !== undefined)(name, { timeout: 600_000 }, () => {
  const folder = newFolder();
  const file = join(folder, "cell.html");
  const record = recordScene(scenarioOf(shippedText("two-station"), "two-station"), { until: 600 });
  let browser: Browser;
  let page: Page;
  const seen: string[] = [];

  beforeAll(async () => {
    const names = [...new Set(["two-station", ...movedScenarios, ...orderedScenarios])];
    for (const each of names) writeFileSync(join(folder, `${each}.yaml`), shippedText(each));
    const made = callBlowcell(["page", ...names.map((each) => `${each}.yaml`), "--out", file], { folder });
    expect(made).toMatchObject({ code: 0 });
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
    await expect.poll(picture).toBe(true);
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
    await expect.poll(shown).toBeGreaterThan(0.5);
    await page.keyboard.press(" ");
  });

  it("reads a file that is dropped, and refuses a wrong one", async () => {
    await page.evaluate(`(() => {
      const data = new DataTransfer();
      data.items.add(new File(["format: 1\\n"], "wrong.yaml"));
      document.dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true, bubbles: true }));
    })()`);
    const words = (): Promise<unknown> => page.evaluate("document.querySelector('[role=alert]')?.textContent ?? ''");
    await expect.poll(words).toContain("wrong.yaml");
  });

  it.each(movedLevers)(
    "gives in Try the answer of the call for $lever of $scenario",
    async ({ scenario, lever, by, set }) => {
      await openTry(page, file, scenario);
      await moveLever(page, lever, by);
      await expect.poll(() => shownTryCall(page)).toBe(callOf(scenario, set));
      await expectAsRun(page, folder, scenario, set);
    },
  );

  it.each(orderCases)("equals promise in Order for $scenario, $form", async (each) => {
    await openOrder(page, file, each);
    await answered(page, each.verdict);
    await expectSameAsCommand(page, folder);
  });

  it("made no request and no message in all of these", () => {
    expect(seen.filter((each) => !["file:", "blob:", "about:"].includes(each))).toEqual([]);
  });
});

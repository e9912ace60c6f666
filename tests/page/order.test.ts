// The place Order in a browser: with the keyboard alone, with the digits of `promise`, and judged by axe.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { callBlowcell, newFolder } from "../cli/callBlowcell.ts";
import { isLong } from "../support/caseCount.ts";
import { cellText } from "../support/cellScenario.ts";
import { expectAccessible, faultsOf, openPage, violations } from "../support/page/browserPage.ts";
import { inOneLine } from "../support/page/drivenPage.ts";
import { answered, expectSameAsCommand, shownCall } from "../support/page/orderPage.ts";
import { shippedText } from "../support/reported.ts";

const folder = newFolder();
const file = join(folder, "page.html");
let page: Page;
let faults: readonly string[];

beforeAll(async () => {
  writeFileSync(join(folder, "one.yaml"), cellText(1).replace("cool: 8 s", "cool: { gamma: [8 s, 1 s] }"));
  writeFileSync(join(folder, "friday.yaml"), shippedText("order-by-friday"));
  expect(callBlowcell(["page", "one.yaml", "friday.yaml", "--out", file], { folder })).toMatchObject({ code: 0 });
  page = await openPage();
  faults = faultsOf(page);
  await page.goto(pathToFileURL(file).href);
}, 120_000);

afterAll(() => page?.close());

/** Presses Tab until the focused element has this name; fails where it is not within reach. */
async function reach(name: string): Promise<void> {
  const focused = async (): Promise<string> =>
    String(
      await page.evaluate(
        "(({ ariaLabel, labels, textContent }) => ariaLabel ?? labels?.[0]?.textContent ?? textContent)(document.activeElement)",
      ),
    );
  for (let i = 0; i < 80; i++) {
    if ((await focused()) === name) return;
    await page.keyboard.press("Tab");
  }
  expect(await focused()).toBe(name);
}

async function type(name: string, text: string): Promise<void> {
  await reach(name);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.press("Delete");
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

async function press(name: string): Promise<void> {
  await reach(name);
  await page.keyboard.press("Enter");
}

describe("the place Order", { timeout: 600_000 }, () => {
  it("asks for an order where the scenario has none", async () => {
    await page.locator(".stage svg").waitFor();
    await press("Order");
    await answered(page, /^Type how many good parts/u);
    expect(await page.locator(".order .call").count()).toBe(0);
    expect(await page.locator(".order .wrong").count()).toBe(0);
  });

  it("says what `promise` says, digit for digit, with the keyboard alone", async () => {
    await type("Quantity", "1000");
    await type("Due", "1.5 h");
    await answered(page, /^No: /u);
    expect(await shownCall(page)).toBe('blowcell promise one.yaml --order "1000 parts" --due "1.5 h"');
    expect(await page.locator(".order .count").textContent()).toBe(
      "None of 20 runs is on time: at most 26 of 100 such orders with 95 % confidence.",
    );
    await expectSameAsCommand(page, folder);
    await expectAccessible(page, ["light"]);
  });

  it.runIf(isLong)("applies a change with a key, repeats it as a call, and takes it back", async () => {
    const before = await page.locator(".order .answer").textContent();
    expect((await page.locator(".order .remedy li").allTextContents()).join(" ")).toContain(
      "one station more: chance ",
    );
    await press("Apply one station more");
    await answered(page, /^Yes: /u);
    expect(await shownCall(page)).toContain("--set stations.count=2");
    if (isLong) await expectSameAsCommand(page, folder);
    await press("Remove one station more");
    expect(await answered(page, /^No: /u)).toBe(before);
    expect(await page.locator(".order .applied").count()).toBe(0);
  });

  it.each([
    ["Quantity", "many", ["--order", "many", "--due", "1.5 h"]],
    ["Due", "soon", ["--order", "1000 parts", "--due", "soon"]],
    ["Due", "Friday 14:00", ["--order", "1000 parts", "--due", "Friday 14:00"]],
    ["Wanted chance", "100 %", ["--order", "1000 parts", "--due", "1.5 h", "--chance", "100 %"]],
    [
      "Another pattern",
      "2 x 8 h, mon-fri",
      ["--order", "1000 parts", "--due", "1.5 h", "--shifts", "2 x 8 h, mon-fri"],
    ],
  ] as const)("says beside the field %s what the command says to %s", async (name, text, args) => {
    const field = page.getByLabel(name, { exact: true });
    const good = await field.inputValue();
    await field.fill(text);
    await field.press("Enter");
    const wrong = page.locator(`[id="${await field.getAttribute("id")}-issues"]`);
    await wrong.waitFor();
    const { code, errors } = callBlowcell(["promise", "one.yaml", ...args], { folder });
    expect(code).toBe(2);
    for (const words of ((await wrong.textContent()) ?? "").replace("error: ", "").split(/ (?:expected|remedy): /u))
      expect(inOneLine(errors)).toContain(words);
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    const described = (await field.getAttribute("aria-describedby")) ?? "";
    expect(described.split(" ")).toContain(await wrong.getAttribute("id"));
    if (name === "Quantity") expect(await violations(page, { within: ".order-form" })).toEqual([]);
    if (name === "Quantity" && isLong) await expectAccessible(page);
    await field.fill(good);
    await field.press("Enter");
    await wrong.waitFor({ state: "detached" });
  });

  it.runIf(isLong)("shows US units as `promise --units us` does", async () => {
    const units = page.getByRole("combobox", { name: /^Units/u });
    await units.selectOption({ index: 1 });
    await expect.poll(() => shownCall(page)).toContain(" --units us");
    await answered(page, /^No: /u);
    await expectSameAsCommand(page, folder);
    expect(await page.getByRole("region", { name: /^What it uses/u }).textContent()).toMatch(/lb/u);
    await units.selectOption({ index: 0 });
    await expect.poll(() => shownCall(page)).not.toContain("--units");
  });

  it.runIf(isLong)("begins with the order of the scenario, stops, and takes other work shifts", async () => {
    await page.getByRole("combobox", { name: /^Scenario/u }).selectOption("friday");
    await page.getByRole("button", { name: "Stop" }).click();
    const work = page.locator(".order .work");
    expect(await work.textContent()).toContain("Stopped.");
    const values = async (): Promise<readonly string[]> =>
      Promise.all((await page.locator(".order-form input[type=text]").all()).map((input) => input.inputValue()));
    const lines = ["150000", "natural bottle", "50000", "blue bottle"];
    expect(await values()).toEqual([...lines, "2026-12-04 14:00", "2026-11-30 06:00", "95 %", ""]);
    expect(await shownCall(page)).toBe("blowcell promise friday.yaml");
    await page.getByRole("button", { name: "24 h every day" }).click();
    await page.getByRole("button", { name: "Stop" }).click();
    expect(await shownCall(page)).toBe(
      'blowcell promise friday.yaml --shifts "24 h, every day" --start "2026-11-30 06:00" --due "2026-12-04 14:00"',
    );
    await page.getByRole("button", { name: "As in the scenario" }).click();
    await page.getByRole("button", { name: "Stop" }).click();
    expect(await shownCall(page)).toBe("blowcell promise friday.yaml");
  });

  it("makes no request and leaves no message in the console", () => {
    expect(faults).toEqual([]);
  });
});

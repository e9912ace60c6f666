// Moves levers of the page as a user does, and compares with the command line, digit for digit.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { callBlowcell, newFolder } from "../cli/callBlowcell.ts";
import { firstCases, isLong } from "../support/caseCount.ts";
import { expectAccessible, expectNoSidewaysScrolling, faultsOf, openPage, wide } from "../support/page/browserPage.ts";
import { inOneLine, textsOf } from "../support/page/drivenPage.ts";
import {
  callOf,
  expectAsRun,
  goToTry,
  madeSentence,
  moveLever,
  movedLevers,
  movedScenarios,
  runOf,
  shownTryCall,
  waitForFinal,
} from "../support/page/tryPage.ts";
import { shippedText } from "../support/reported.ts";

const folder = newFolder();
const file = join(folder, "page.html");
let page: Page;
let faults: readonly string[];

/** The long run tries the shipped scenarios, `npm test` short runs of the first. */
const tried = isLong ? movedScenarios : movedScenarios.slice(0, 1);
const textOf = (name: string): string =>
  isLong ? shippedText(name) : shippedText(name).replace(/^run: .*/mu, "run: { length: 1 h, replications: 6 }");

/** The settings with which the page is opened. */
const inAddress = ["stations.*.steps.cool=-0.8 s"];

beforeAll(async () => {
  for (const name of tried) writeFileSync(join(folder, `${name}.yaml`), textOf(name));
  const made = callBlowcell(["page", ...tried.map((name) => `${name}.yaml`), "--out", file], { folder });
  expect(made).toMatchObject({ code: 0 });
  page = await openPage();
  faults = faultsOf(page);
  const parts = new URLSearchParams([["place", "try"], ["units", "us"], ...inAddress.map((each) => ["set", each])]);
  await page.goto(`${pathToFileURL(file).href}#${parts.toString()}`);
}, 120_000);

afterAll(() => page?.close());

const open = (scenario: string, set: readonly string[] = []): Promise<void> => goToTry(page, scenario, set);
const press = (lever: string, by: number): Promise<void> => moveLever(page, lever, by);
const final = (): Promise<void> => waitForFinal(page);
const call = (): Promise<string> => shownTryCall(page);
const unfold = (): Promise<unknown> =>
  page.evaluate("document.querySelectorAll('.try details').forEach((each) => { each.open = true; })");

/** Rows and columns of the map, with the settings that they stand for. */
const mapPlaces: readonly (readonly [row: number, column: number, set: readonly string[]])[] = [
  [0, 5, ["stations.*.steps.cool=-2.5 s", "stations.left.count=5"]],
  [0, 0, ["stations.*.steps.cool=-2.5 s", "stations.right=null"]],
  [4, 1, ["stations.*.steps.cool=+2.5 s"]],
];

describe("the place Try", { timeout: 600_000 }, () => {
  it.runIf(isLong)(
    "shows US units as `run --units us` does, kept in the address and chosen by the keyboard",
    async () => {
      const us = ["--units", "us"];
      await expect.poll(call).toBe(`${callOf("two-station", inAddress)} --units us`);
      const output = await expectAsRun(page, folder, "two-station", inAddress, us);
      const said = await textsOf(page, ".caution li, .rows dd");
      for (const words of said) expect(output).toContain(words);
      expect(said.join(" ")).toMatch(/ lb\/h.* °F/u);
      expect((await textsOf(page, ".lever output")).join(" ")).toMatch(/ lb\/h/u);
      const units = page.getByRole("combobox", { name: /^Units/u });
      await units.focus();
      await page.keyboard.press("ArrowUp");
      await expect.poll(call).toBe(callOf("two-station", inAddress));
      await expect.poll(() => page.evaluate("location.hash")).not.toContain("units");
      await page.keyboard.press("ArrowDown");
      await expect.poll(() => page.evaluate("location.hash")).toContain("units=us");
      await open("two-station");
      expect(await units.inputValue()).toMatch(/^SI/u);
    },
  );

  it.each(firstCases(movedLevers, 1))(
    "gives the answer of the call for $lever of $scenario",
    async ({ scenario, lever, by, set }) => {
      await open(scenario);
      await press(lever, by);
      await expect.poll(call).toBe(callOf(scenario, set));
      await expectAsRun(page, folder, scenario, set);
    },
  );

  it("shows no answer of other settings, and opens no further worker, however often a lever moves", async () => {
    await open("two-station");
    const shots = isLong ? 100 : 8;
    for (let i = 0; i < shots; i++) await press("cooling", i % 2 === 0 ? -3 : 2);
    const set = await call();
    const [, shift = ""] = /cool=(-[\d.]+) s/u.exec(set) ?? [];
    const { output } = runOf(folder, "two-station", [`stations.*.steps.cool=${shift} s`]);
    await final();
    expect(output).toContain(await madeSentence(page));
    expect(page.workers().length).toBeLessThanOrEqual(2);
  });

  it("undoes and redoes by keys, keeps variants, and saves the scenario", async () => {
    await open("two-station", ["stations.*.steps.cool=-0.6 s"]);
    await press("cooling", 1);
    await expect.poll(call).toContain("=-0.5 s");
    await final();
    await page.getByRole("button", { name: "Keep as a variant" }).press("Enter");
    await press("cooling", 1);
    const later = await call();
    await page.getByRole("button", { name: "Undo" }).press("Enter");
    await expect.poll(call).toContain("=-0.5 s");
    await page.getByRole("button", { name: "Redo" }).press("Enter");
    await expect.poll(call).toBe(later);
    await final();
    await page.getByRole("button", { name: "Keep as a variant" }).press("Enter");
    const heads = await page.locator(".variants thead th").allTextContents();
    expect(heads).toEqual(["two-station as it is", "stations.*.steps.cool=-0.5 s", "stations.*.steps.cool=-0.4 s"]);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save as a scenario file" }).click(),
    ]);
    const saved = readFileSync(await download.path(), "utf8");
    expect(saved).toContain("# Cooling runs on a timer");
    expect(saved).toContain("cool: 7.1 s");
  });

  it.runIf(isLong)("draws the map of the ideal cycles that `check` gives, with the present cell marked", async () => {
    await open("two-station");
    await unfold();
    const table = page.getByRole("region", { name: "Map, table" });
    await expect.poll(() => table.textContent()).not.toContain("…");
    const cells = await table.locator("tbody td").allTextContents();
    expect(cells.filter((each) => each.includes("(present cell)"))).toHaveLength(1);
    const across = await table.locator("thead th").allTextContents();
    const columns = across.length - 1;
    const down = await table.locator("tbody th").allTextContents();
    for (const [row, column, set] of firstCases(mapPlaces, 1)) {
      const settings = set.flatMap((each) => ["--set", each]);
      const output = inOneLine(callBlowcell(["check", "two-station.yaml", ...settings], { folder }).output);
      const [seconds = "", pace = ""] = cells[row * columns + column]!.replace(/;.*/u, "").split(/ s, /u);
      expect(output, `${down[row]} ${across[column + 1]}`).toContain(`The ideal cycle is ${seconds} s a shot`);
      expect(output).toMatch(new RegExp(`; (?:the )?${pace.split(" and ")[0]}\\b.* set`, "u"));
    }
    expect(await page.locator(".map .present").count()).toBe(1);
    await final();
    const { output: run } = runOf(folder, "two-station", []);
    const [, parts = ""] = /The cell makes ([\d,.]+) /u.exec(run) ?? [];
    const present = (await textsOf(page, ".map td")).filter((each) => each.includes("(present cell)"));
    expect(Number(/simulated ([\d,]+)/u.exec(present[0]!)?.[1]?.replace(",", ""))).toBe(
      Math.round(Number(parts.replace(",", ""))),
    );
  });

  it("refuses in words what the cell cannot be, and an address that is damaged", async () => {
    await open("two-station", ["stations.*.steps.cool=-99 s"]);
    const alert = page.getByRole("alert");
    await alert.waitFor();
    expect(await alert.textContent()).toContain("The cell cannot have these settings.");
    await page.getByRole("button", { name: "Back to the scenario as it is" }).first().click();
    await expect.poll(call).toBe("blowcell run two-station.yaml");
    for (const [hash, words] of [
      ["#place=trie", 'it names the place "trie"'],
      ["#place=try&units=metric", 'it names the units "metric"'],
      ["#sett=x", 'it has the part "sett"'],
      ["#scenario=gone.yaml", "names the scenario gone.yaml"],
    ] as const) {
      await page.evaluate(`location.hash = ${JSON.stringify(hash)}`);
      await page.getByRole("alert").getByText(words).waitFor();
    }
  });

  it("takes an address that the user sets at the moment at which the page writes its own", async () => {
    await open("two-station");
    // The address changes, the timer of the page ends, and only then comes the event of the change.
    const setJustBefore = (hash: string): Promise<unknown> =>
      page.evaluate(`(() => {
        const { setTimeout } = window;
        const ended = [];
        window.setTimeout = (act) => ended.push(act) && undefined;
        [...document.querySelectorAll(".try button")].find((each) => each.textContent.startsWith("Back")).click();
        Object.assign(window, { setTimeout });
        location.hash = ${JSON.stringify(hash)};
        for (const act of ended) act();
        return ended.length;
      })()`);
    const hash = (): Promise<unknown> => page.evaluate("location.hash");
    await press("cooling", -5);
    await expect.poll(hash).toContain("cool%3D-0.5+s");
    expect(await setJustBefore("#sett=x")).toBeGreaterThan(0);
    await page.getByRole("alert").getByText('it has the part "sett"').waitFor();
    expect(await hash()).toBe("#sett=x");
    await press("cooling", -1);
    await page.getByRole("alert").waitFor({ state: "detached" });
    await expect.poll(hash).toContain("cool%3D-0.1+s");
    expect(await setJustBefore("#scenario=two-station.yaml&place=try&set=valve.shift%3D0.2+s")).toBeGreaterThan(0);
    await expect.poll(call).toBe(callOf("two-station", ["valve.shift=0.2 s"]));
    expect(await hash()).toContain("valve.shift");
    // The address is a step like any other: the one before it is the way back.
    await page.getByRole("button", { name: "Undo" }).press("Enter");
    await expect.poll(call).toBe(callOf("two-station", []));
    await page.getByRole("button", { name: "Undo" }).press("Enter");
    await expect.poll(call).toBe(callOf("two-station", ["stations.*.steps.cool=-0.1 s"]));
  });

  it("has no accessibility violations in light and dark, and fits a phone", async () => {
    await open("two-station", ["stations.*.steps.cool=-0.5 s"]);
    await final();
    await page.getByRole("button", { name: "Keep as a variant" }).click();
    await unfold();
    await expectAccessible(page);
    await page.setViewportSize({ width: 390, height: 900 });
    await expectNoSidewaysScrolling(page);
    if (isLong) await expectAccessible(page);
    await page.setViewportSize(wide.viewport!);
    const slider = page.getByRole("slider", { name: "cooling", exact: true });
    expect(await slider.getAttribute("aria-valuetext")).toBe("7 s, −0.5 s; before 7.5 s");
  });

  it("makes no request and prints no message", () => {
    expect(faults).toEqual([]);
  });
});

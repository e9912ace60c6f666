// Moves levers of the page as a user does, and compares with the command line, digit for digit.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { callBlowcell } from "../cli/callBlowcell.ts";
import { openBrowser } from "../support/browser.ts";
import { firstCases, isLong } from "../support/caseCount.ts";

interface MovedLever {
  readonly scenario: string;
  readonly lever: string;
  /** Presses of the right arrow; left where negative. */
  readonly by: number;
  /** The settings that it stands for. */
  readonly set: readonly string[];
}

const moved: readonly MovedLever[] = [
  { scenario: "two-station", lever: "cooling", by: -5, set: ["stations.*.steps.cool=-0.5 s"] },
  { scenario: "one-operator-four-molds", lever: "number of operators", by: 1, set: ["crew.operators=2"] },
  { scenario: "two-station", lever: "number of molds", by: 1, set: ["stations.left.count=2"] },
  { scenario: "two-station", lever: "screw rate", by: -20, set: ["delivery.plasticatingRate=-20 %"] },
  { scenario: "two-station", lever: "removal", by: 3, set: ["stations.*.steps.remove.time=+0.03 s"] },
  { scenario: "one-operator-four-molds", lever: "cooling, side", by: 2, set: ["stations.side.steps.cool=+0.2 s"] },
  { scenario: "cost-of-a-thousand", lever: "product, part mass", by: -3, set: ["product.partMass=-3 %"] },
  { scenario: "slow-trimmer", lever: "takeaway, trim, buffer", by: 1, set: ["takeaway.trim.buffer=5"] },
  { scenario: "two-shifts-one-color", lever: "cooling", by: -4, set: ["stations.*.steps.cool=-0.4 s"] },
  {
    scenario: "two-shifts-one-color",
    lever: "stops, stuck flash, between",
    by: 50,
    set: ["stops.stuck flash.between=+50 %"],
  },
];
const scenarios = [...new Set(moved.map(({ scenario }) => scenario))];

const folder = mkdtempSync(join(tmpdir(), "blowcell-try-"));
const file = join(folder, "page.html");
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  const files = scenarios.map((name) => `scenarios/${name}.yaml`);
  expect(callBlowcell(["page", ...files, "--out", file])).toMatchObject({ code: 0 });
  browser = await openBrowser();
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(60_000);
  page.on("console", (message) => faults.push(message.text()));
  page.on("pageerror", ({ message }) => faults.push(message));
  page.on("request", (request) => {
    if (!/^(?:file|blob):/u.test(request.url())) faults.push(request.url());
  });
}, 60_000);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(scenario: string, set: readonly string[] = []): Promise<void> {
  const parts = new URLSearchParams({ scenario: `${scenario}.yaml`, place: "try" });
  for (const each of set) parts.append("set", each);
  await page.goto("about:blank");
  await page.goto(`${pathToFileURL(file).href}#${parts.toString()}`);
  await page.locator(".levers").first().waitFor();
}

/** Moves by the keyboard alone. */
async function press(lever: string, by: number): Promise<void> {
  const slider = page.getByRole("slider", { name: lever, exact: true });
  if ((await slider.count()) === 0) {
    await page.getByText(/^More: /u).focus();
    await page.keyboard.press("Enter");
  }
  await slider.focus();
  for (let i = 0; i < Math.abs(by); i++) await page.keyboard.press(by > 0 ? "ArrowRight" : "ArrowLeft");
}

const final = (): Promise<void> => page.getByText(/^Final, as/u).waitFor();
const call = async (): Promise<string> => (await page.locator(".settings pre").textContent()) ?? "";
const made = async (): Promise<string> => (await page.locator(".made").textContent()) ?? "";
const inOneLine = (text: string): string => text.replaceAll(/\s+/gu, " ");

function run(scenario: string, set: readonly string[]): { readonly output: string; readonly out: string } {
  const out = join(folder, `${scenario}-${set.join("-").replaceAll(/[^\w]+/gu, "_")}`);
  const settings = set.flatMap((each) => ["--set", each]);
  const { output, code } = callBlowcell(["run", `scenarios/${scenario}.yaml`, ...settings, "--out", out, "--replace"]);
  expect(code).toBe(0);
  return { output: inOneLine(output), out };
}

/** All that the page shows of the final answer, and each of its CSV files, are those of the call. */
async function expectAsRun(scenario: string, set: readonly string[]): Promise<void> {
  await final();
  const { output, out } = run(scenario, set);
  expect(output).toContain((await made()).replace(/ Before: .*/u, ""));
  const rows = await page.locator(".rows dd").allTextContents();
  expect(rows.length).toBeGreaterThan(5);
  for (const row of rows) expect(output).toContain(row);
  const makeFiles = page.getByRole("button", { name: "Make the CSV files" });
  await makeFiles.click();
  const saves = page.getByRole("button", { name: /^Save .*\.csv$/u });
  await saves.first().waitFor();
  expect(await saves.count()).toBeGreaterThan(7);
  // A browser without a user stops after ten downloads.
  for (const save of (await saves.all()).slice(0, 9)) {
    const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
    const name = download.suggestedFilename();
    expect(readFileSync(await download.path(), "utf8"), name).toBe(readFileSync(join(out, name), "utf8"));
  }
}

async function findings(): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: typeof axe }).axe.run());
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}

describe("the place Try", { timeout: 120_000 }, () => {
  it.each(firstCases(moved, 1))("gives the answer of the call for $lever of $scenario", async (one) => {
    await open(one.scenario);
    await press(one.lever, one.by);
    const settings = one.set.map((each) => ` --set "${each}"`).join("");
    await expect.poll(call).toBe(`blowcell run ${one.scenario}.yaml${settings.replaceAll(/"([\w./=-]+)"/gu, "$1")}`);
    await expectAsRun(one.scenario, one.set);
  });

  it("shows no answer of other settings, and opens no further worker, however often a lever moves", async () => {
    await open("two-station");
    const shots = isLong ? 100 : 8;
    for (let i = 0; i < shots; i++) await press("cooling", i % 2 === 0 ? -3 : 2);
    const set = await call();
    const [, shift = ""] = /cool=(-[\d.]+) s/u.exec(set) ?? [];
    const { output } = run("two-station", [`stations.*.steps.cool=${shift} s`]);
    await expect.poll(made, { timeout: 60_000 }).toContain("The cell makes");
    expect(output).toContain((await made()).replace(/ Before: .*/u, ""));
    expect(page.workers().length).toBeLessThanOrEqual(2);
  });

  it("undoes and redoes by keys, keeps variants, and saves the scenario", async () => {
    await open("two-station", ["stations.*.steps.cool=-0.5 s"]);
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

  it("draws the map of the ideal cycles that `check` gives, with the present cell marked", async () => {
    await open("two-station");
    await page.getByText("The ideal cycle over two levers").click();
    const table = page.getByRole("region", { name: "Map, table" });
    await expect.poll(() => table.textContent()).not.toContain("…");
    const cells = await table.locator("tbody td").allTextContents();
    expect(cells.filter((each) => each.includes("(present cell)"))).toHaveLength(1);
    const across = await table.locator("thead th").allTextContents();
    const columns = across.length - 1;
    const down = await table.locator("tbody th").allTextContents();
    for (const [row, column, set] of [
      [0, 0, ["stations.*.steps.cool=-2.5 s", "stations.right=null"]],
      [4, 1, ["stations.*.steps.cool=+2.5 s"]],
      [0, 5, ["stations.*.steps.cool=-2.5 s", "stations.left.count=5"]],
    ] as const) {
      const settings = set.flatMap((each) => ["--set", each]);
      const output = inOneLine(callBlowcell(["check", "scenarios/two-station.yaml", ...settings]).output);
      const [seconds = "", pace = ""] = cells[row * columns + column]!.split(/ s, /u);
      expect(output, `${down[row]} ${across[column + 1]}`).toContain(`The ideal cycle is ${seconds} s a shot`);
      expect(output).toContain(`; ${pace.split(" and ")[0]} set`);
    }
    expect(await page.locator(".map .present").count()).toBe(1);
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
      ["#sett=x", 'it has the part "sett"'],
      ["#scenario=gone.yaml", "names the scenario gone.yaml"],
    ] as const) {
      await page.evaluate(`location.hash = ${JSON.stringify(hash)}`);
      await page.getByRole("alert").getByText(words).waitFor();
    }
  });

  it("has no accessibility violations in light and dark, and fits a phone", async () => {
    await open("two-station", ["stations.*.steps.cool=-0.5 s"]);
    await final();
    await page.getByRole("button", { name: "Keep as a variant" }).click();
    await page.getByText("The ideal cycle over two levers").click();
    await page.getByText(/^More: /u).click();
    for (const width of [1280, 390]) {
      await page.setViewportSize({ width, height: 900 });
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await findings()).toEqual([]);
      }
      expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBeLessThanOrEqual(0);
    }
    const slider = page.getByRole("slider", { name: "cooling", exact: true });
    expect(await slider.getAttribute("aria-valuetext")).toBe("7 s, −0.5 s; before 7.5 s");
  });

  it("makes no request and prints no message", () => {
    expect(faults).toEqual([]);
  });
});

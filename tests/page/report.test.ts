// Opens reports from disk in a browser: accessibility, screen sizes, dark mode, print, and no network requests.
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { choicePage } from "#report/choice/choicePage.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { runLevers } from "#analysis/promise/orderLeverRuns.ts";
import { orderLevers } from "#analysis/promise/orderLevers.ts";
import { promiseFinding } from "#report/answers/promiseAnswer.ts";
import { promisePage } from "#report/page/promisePage.ts";
import { promiseLeversTables } from "#report/tables/asked/promiseLeversTable.ts";
import { promiseTables } from "#report/tables/asked/promiseTables.ts";
import { openBrowser } from "../support/browser.ts";
import { firstCases, isLong } from "../support/caseCount.ts";
import { morning, orderStudyOf } from "../support/orderOf.ts";
import { chosen } from "../support/chosen.ts";
import { compareReport, reportedOf, runReport, scenarioOf, shippedText } from "../support/reported.ts";

const evil = `Two <script>document.title = "caught"</script><b>stations</b>`;

/** Equal stations with a screw of the required size. */
function manyStations(count: number): string {
  const text = shippedText("one-station")
    .replace("- name: left", `- name: station\n    count: ${count}`)
    .replace("110 kg/h", `${55 * count} kg/h`)
    .replace("420 kg/h", `${210 * count} kg/h`)
    .replace("0.30 s", "0.1 s");
  return reportPage({ version: "0", scenarios: [reportedOf(scenarioOf(text, "many"), text)], comparison: [] });
}

function poisoned(): string {
  const scenario = { ...scenarioOf(shippedText("two-station"), "two"), title: evil };
  return reportPage({ version: "0", scenarios: [reportedOf(scenario, evil)], comparison: [] });
}

/** Some runs are late, so that there are levers. */
function promised(): string {
  const study = orderStudyOf(morning);
  const levers = runLevers(study, orderLevers(morning, study.order));
  const tables = [...promiseTables(study), ...promiseLeversTables(study, levers)];
  return promisePage({
    version: "0",
    study,
    levers,
    finding: promiseFinding(study),
    tables,
    warnings: [],
    units: "si",
  });
}

const tenLayouts = [
  "one-station",
  "two-station",
  "three-station",
  "two-molds",
  "one-operator",
  "one-operator-four-molds",
  "slow-trimmer",
  "small-screw",
  "stops-and-repairs",
  "cost-of-a-thousand",
];

function choiceOfStations(): string {
  const costs = ["costs.currency=EUR", "costs.machine=30 per h", "run.length=1 h", "run.warmup=0 s"];
  const text = shippedText("one-operator-four-molds");
  const layouts = [2, 3, 4].map((count) =>
    scenarioOf(text, `${count} molds`, [
      `stations.count=${count}`,
      `costs.station=${count} per h`,
      `costs.investment=${count}e5`,
      ...costs,
    ]),
  );
  return choicePage({
    version: "0",
    choice: chosen(layouts),
    leftOut: [],
    usesDefault: true,
    warnings: [],
    units: "si",
  });
}

const reports: Readonly<Record<string, () => string>> = {
  "one station": () => reportPage(runReport("one-station")),
  "two stations": poisoned,
  "three stations with one operator": () => reportPage(runReport("one-operator")),
  "8 stations": () => manyStations(8),
  "16 stations": () => manyStations(16),
  "two shifts": () => reportPage(runReport("two-shifts-one-color", ["run.length=7 d", "run.replications=2"])),
  "three weeks": () => reportPage(runReport("two-shifts-one-color", ["run.length=18 d", "run.replications=1"])),
  "one against two": () => reportPage(compareReport(["one-station", "two-station"])),
  "an order": promised,
  "a choice": choiceOfStations,
  "ten layouts": () => reportPage(compareReport(tenLayouts)),
};

/** The long run looks at the charts of all, `npm test` at these. */
const charted = isLong ? Object.keys(reports) : ["three stations with one operator"];

const folder = mkdtempSync(join(tmpdir(), "blowcell-report-"));
let browser: Promise<Browser>;

beforeAll(async () => {
  browser = openBrowser();
  // Without a browser each test fails with the remedy; a failure here would skip them all.
  await Promise.allSettled([browser]);
}, 60_000);

afterAll(async () => {
  await (await browser.catch(() => undefined))?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** The address of a report, which is made when a test first asks for it. */
function addressOf(name: keyof typeof reports): string {
  const file = join(folder, `${name}.html`);
  if (!existsSync(file)) writeFileSync(file, reports[name]!());
  return pathToFileURL(file).href;
}

async function opened(name: string, options: BrowserContextOptions): Promise<Page> {
  const page = await (await browser).newPage(options);
  await page.goto(addressOf(name));
  return page;
}

const looks = {
  light: { viewport: { width: 1100, height: 800 }, colorScheme: "light" },
  dark: { viewport: { width: 1100, height: 800 }, colorScheme: "dark" },
  phone: { viewport: { width: 390, height: 844 }, colorScheme: "light" },
} as const;

/** Violated accessibility rules, each with its places. */
async function findings(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate<{ violations: { id: string; nodes: { html: string }[] }[] }>("axe.run(document)");
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 90)).join(" | ")}`);
}

const openAll = "document.querySelectorAll('details').forEach((each) => { each.open = true; })";
/** The long run opens every report in every look, `npm test` this one and one look of another. */
const inEveryLook = ["three stations with one operator"];
const inOneLook = ["a choice"];
const cases = Object.keys(reports).flatMap((name) => {
  if (isLong || inEveryLook.includes(name)) return Object.keys(looks).map((look) => [name, look] as const);
  return inOneLook.includes(name) ? [[name, "light"] as const] : [];
});

// A long report takes 4 s on an idle machine.
describe("a report in a browser", { timeout: 600_000 }, () => {
  it.each(cases)("of %s has no accessibility violations, %s", async (name, look) => {
    const page = await opened(name, { ...looks[look as keyof typeof looks], bypassCSP: true });
    // Long tables are checked in one report only, which saves a minute.
    if (name === "one against two") await page.evaluate(openAll);
    expect(await findings(page)).toEqual([]);
    expect(await page.evaluate("document.documentElement.scrollWidth <= innerWidth")).toBe(true);
    await page.close();
  });

  it("is reported with violations when it has some", async () => {
    const page = await opened("one station", { bypassCSP: true });
    await page.evaluate(
      "document.body.insertAdjacentHTML('beforeend', '<img src=\"data:,\"><p style=\"color:#ccc\">pale</p>')",
    );
    expect((await findings(page)).map((each) => each.split(":")[0])).toEqual(
      expect.arrayContaining(["color-contrast", "image-alt"]),
    );
    await page.close();
  });

  it("makes no network requests, logs nothing and needs no script", async () => {
    const page = await (await browser).newPage({ javaScriptEnabled: false });
    const requests: string[] = [];
    page.on("request", (request) => requests.push(new URL(request.url()).protocol));
    page.on("console", (message) => requests.push(message.text()));
    await page.goto(addressOf("one against two"));
    expect(await page.locator("svg").first().isVisible()).toBe(true);
    expect(requests).toEqual(["file:"]);
    await page.close();
  });

  it("shows a title with a script as text, and does not run it", async () => {
    const page = await opened("two stations", {});
    expect(await page.title()).toBe(evil);
    expect(await page.locator("h1").textContent()).toBe(evil);
    expect(await page.locator("pre").textContent()).toBe(evil);
    expect(await page.locator("script, h1 b").count()).toBe(0);
    await page.close();
  });

  it.each(charted)("of %s has all words of its charts inside the chart", async (name) => {
    const page = await opened(name, looks.light);
    const outside = await page.evaluate<string[]>(`[...document.querySelectorAll("svg text")].filter((text) => {
      const [box, frame] = [text.getBoundingClientRect(), text.ownerSVGElement.getBoundingClientRect()];
      return box.left < frame.left - 1 || box.right > frame.right + 1 || box.bottom > frame.bottom + 1;
    }).map((text) => text.textContent)`);
    expect(outside).toEqual([]);
    await page.close();
  });

  it.each(charted)("of %s has no line through the words of its charts, and no shortened name", async (name) => {
    const page = await opened(name, looks.light);
    // A single letter may be all that fits beside the critical path.
    const crossed = await page.evaluate<string[]>(`[...document.querySelectorAll("svg")].flatMap((svg) => {
      const lines = [...svg.querySelectorAll("line.change, line.mark")].map((each) => each.getBoundingClientRect());
      return [...svg.querySelectorAll("text:not(.wait-name)")].filter((text) => {
        const box = text.getBoundingClientRect();
        const crosses = (each) =>
          each.left < box.right && each.right > box.left && each.top < box.bottom - 1 && each.bottom > box.top + 1;
        return text.textContent.endsWith("…") || (text.textContent.length > 1 && lines.some(crosses));
      }).map((text) => text.textContent);
    })`);
    expect(crossed).toEqual([]);
    await page.close();
  });

  it.each(firstCases(["three stations with one operator", "two shifts", "one station"], 1))(
    "of %s has words of at least 12 px on a phone, and row names that stay in view when a chart scrolls",
    async (name) => {
      const page = await opened(name, looks.phone);
      await page.evaluate(openAll);
      const small = await page.evaluate<string[]>(`[...document.querySelectorAll("main *")].filter((each) => {
        const own = [...each.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== "");
        const frame = each.ownerSVGElement;
        const box = frame?.viewBox.baseVal;
        const scale = box?.width ? frame.getBoundingClientRect().width / box.width : 1;
        const isDrawn = !["title", "desc"].includes(each.localName);
        return own && isDrawn && parseFloat(getComputedStyle(each).fontSize) * scale < 11.99;
      }).map((each) => each.localName + ": " + each.textContent)`);
      expect(small).toEqual([]);
      const moved = await page.evaluate<number[][]>(`[...document.querySelectorAll(".sheet")].map((sheet) => {
        const [box, names] = [sheet.parentElement, sheet.querySelector(".names")];
        box.scrollLeft = 300;
        return [box.scrollLeft, Math.abs(names.getBoundingClientRect().left - box.getBoundingClientRect().left)];
      })`);
      expect(moved.length).toBeGreaterThan(1);
      for (const [scrolled, away] of moved) expect([scrolled, away! < 1]).toEqual([300, true]);
      await page.close();
    },
  );

  it.each(firstCases(["A4", "Letter"], 1))("prints on %s with charts inside the page", async (format) => {
    // 14 mm of margin on both sides, 96 pixels per inch.
    const width = Math.floor(((format === "A4" ? 210 : 215.9) - 28) * (96 / 25.4));
    const page = await opened("16 stations", { viewport: { width, height: 1000 }, colorScheme: "dark" });
    await page.emulateMedia({ media: "print" });
    expect(
      await page.evaluate(
        "Math.max(...[...document.querySelectorAll('svg')].map((svg) => svg.getBoundingClientRect().right)) <= innerWidth",
      ),
    ).toBe(true);
    expect(await page.evaluate("getComputedStyle(document.body).backgroundColor")).toBe("rgb(255, 255, 255)");
    const printed = await page.pdf({ format, preferCSSPageSize: false });
    expect(printed.subarray(0, 5).toString("latin1")).toBe("%PDF-");
    await page.close();
  });

  it("prints a comparison of ten layouts on two pages of A4", async () => {
    const page = await opened("ten layouts", looks.light);
    const printed = (await page.pdf({ format: "A4", preferCSSPageSize: false })).toString("latin1");
    expect(printed.match(/\/Type\s*\/Page\b/gu)).toHaveLength(2);
    await page.close();
  });
});

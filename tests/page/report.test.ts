// Opens reports from disk in a browser: accessibility, screen sizes, dark mode, print, and no network requests.
import { existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { choicePage } from "#report/choice/choicePage.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { runLevers } from "#analysis/promise/orderLeverRuns.ts";
import { orderLevers } from "#analysis/promise/orderLevers.ts";
import { promiseFinding } from "#report/answers/promiseAnswer.ts";
import { promisePage } from "#report/page/promisePage.ts";
import { promiseLeversTables } from "#report/tables/asked/promiseLeversTable.ts";
import { promiseTables } from "#report/tables/asked/promiseTables.ts";
import { firstCases, isLong } from "../support/caseCount.ts";
import { expectAccessible, expectNoSidewaysScrolling, openPage, violations } from "../support/page/browserPage.ts";
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
  "ten layouts": () => reportPage(compareReport(tenLayouts, ["run.length=20 min"])),
};

/** The long run looks at the charts of all, `npm test` at these. */
const charted = isLong ? Object.keys(reports) : ["three stations with one operator"];

const folder = mkdtempSync(join(tmpdir(), "blowcell-report-"));
let page: Page;

beforeAll(async () => {
  page = await openPage({ bypassCSP: true });
}, 60_000);

afterAll(() => page?.close());

/** The address of a report, which is made when a test first asks for it. */
function addressOf(name: keyof typeof reports): string {
  const file = join(folder, `${name}.html`);
  if (!existsSync(file)) writeFileSync(file, reports[name]!());
  return pathToFileURL(file).href;
}

const screen = { width: 1100, height: 800 };
const phone = { width: 390, height: 844 };

/** All tests but one share a page, which opens this report anew in light. */
async function open(name: keyof typeof reports, viewport = screen): Promise<void> {
  await page.setViewportSize(viewport);
  await page.emulateMedia({ media: null, colorScheme: "light" });
  await page.goto(addressOf(name));
}

const openAll = "document.querySelectorAll('details').forEach((each) => { each.open = true; })";
/** The long run judges every report in light and dark, `npm test` these. */
const usual: Readonly<Record<string, "light" | "dark">> = { "three stations with one operator": "light" };
const judged = Object.keys(isLong ? reports : usual);
/** What a narrow screen can violate where a wide one violates nothing. */
const rulesOfSize = ["scrollable-region-focusable", "target-size"];

// A long report takes 4 s on an idle machine.
describe("a report in a browser", { timeout: 600_000 }, () => {
  it.each(judged)("of %s has no accessibility violations, also on a phone", async (name) => {
    await open(name);
    // Long tables are checked in one report only, which saves a minute.
    if (name === "one against two") await page.evaluate(openAll);
    await expectAccessible(page, [usual[name] ?? "light"]);
    await expectNoSidewaysScrolling(page);
    await page.setViewportSize(phone);
    await page.emulateMedia({ colorScheme: "light" });
    await expectNoSidewaysScrolling(page);
    expect(await violations(page, isLong ? {} : { rules: rulesOfSize })).toEqual([]);
  });

  it.runIf(isLong)("is reported with violations when it has some", async () => {
    await open("one station");
    const faulty = '<footer id="faulty"><img src="data:,"><p style="color:#ccc">pale</p></footer>';
    await page.evaluate(`document.body.insertAdjacentHTML('beforeend', ${JSON.stringify(faulty)})`);
    expect((await violations(page, { within: "#faulty" })).map((each) => each.split(":")[0])).toEqual(
      expect.arrayContaining(["color-contrast", "image-alt"]),
    );
  });

  it("makes no network requests, logs nothing and needs no script", async () => {
    const plain = await openPage({ javaScriptEnabled: false });
    const requests: string[] = [];
    plain.on("request", (request) => requests.push(new URL(request.url()).protocol));
    plain.on("console", (message) => requests.push(message.text()));
    await plain.goto(addressOf("one against two"));
    expect(await plain.locator("svg").first().isVisible()).toBe(true);
    expect(requests).toEqual(["file:"]);
    await plain.close();
  });

  it("shows a title with a script as text, and does not run it", async () => {
    await open("two stations");
    expect(await page.title()).toBe(evil);
    expect(await page.locator("h1").textContent()).toBe(evil);
    expect(await page.locator("pre").textContent()).toBe(evil);
    expect(await page.locator("script, h1 b").count()).toBe(0);
  });

  it.each(charted)("of %s has all words of its charts inside the chart", async (name) => {
    await open(name);
    const outside = await page.evaluate<string[]>(`[...document.querySelectorAll("svg text")].filter((text) => {
      const [box, frame] = [text.getBoundingClientRect(), text.ownerSVGElement.getBoundingClientRect()];
      return box.left < frame.left - 1 || box.right > frame.right + 1 || box.bottom > frame.bottom + 1;
    }).map((text) => text.textContent)`);
    expect(outside).toEqual([]);
  });

  it.each(charted)("of %s has no line through the words of its charts, and no shortened name", async (name) => {
    await open(name);
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
  });

  it.each(firstCases(["three stations with one operator", "two shifts", "one station"], 1))(
    "of %s has words of at least 12 px on a phone, and row names that stay in view when a chart scrolls",
    async (name) => {
      await open(name, phone);
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
    },
  );

  it.each(firstCases(["A4", "Letter"], 1))("prints on %s with charts inside the page", async (format) => {
    // 14 mm of margin on both sides, 96 pixels per inch.
    const width = Math.floor(((format === "A4" ? 210 : 215.9) - 28) * (96 / 25.4));
    await open("16 stations", { width, height: 1000 });
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    expect(
      await page.evaluate(
        "Math.max(...[...document.querySelectorAll('svg')].map((svg) => svg.getBoundingClientRect().right)) <= innerWidth",
      ),
    ).toBe(true);
    expect(await page.evaluate("getComputedStyle(document.body).backgroundColor")).toBe("rgb(255, 255, 255)");
    // The pages of so long a report take 10 s on an idle machine; another test prints a shorter one.
    if (!isLong) return;
    const printed = await page.pdf({ format, preferCSSPageSize: false });
    expect(printed.subarray(0, 5).toString("latin1")).toBe("%PDF-");
  });

  it.runIf(isLong)("prints a comparison of ten layouts on two pages of A4", async () => {
    await open("ten layouts");
    const printed = (await page.pdf({ format: "A4", preferCSSPageSize: false })).toString("latin1");
    expect(printed.match(/\/Type\s*\/Page\b/gu)).toHaveLength(2);
  });
});

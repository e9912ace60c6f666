// Opens the page of `blowcell page` from disk in a browser: technics, keyboard, words of errors, hostile texts.
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { recordScene } from "#report/scene/recordScene.ts";
import { callBlowcell, newFolder } from "../cli/callBlowcell.ts";
import { firstCases, isLong } from "../support/caseCount.ts";
import { drawn, expectAccessible, expectNoSidewaysScrolling, openPage, wide } from "../support/page/browserPage.ts";
import { scenarioOf, shippedText } from "../support/reported.ts";

const folder = newFolder();
const hostile = `"><img src=x onerror="document.title='caught'"></script><script>document.title='caught'</script>`;
const hostileName = "left</script><img>";
const yamlOf = (name: string, change: (text: string) => string): string => {
  const file = join(folder, `${name}.yaml`);
  writeFileSync(file, change(shippedText("two-station")));
  return file;
};

const measured = (text: string): string =>
  text.replaceAll(/cool: .*/gu, "cool: { empirical: { file: log.csv, column: cool_s } }");
const measuredTimes = "cool_s\n7.0\n7.5\n8.0\n";
writeFileSync(join(folder, "log.csv"), measuredTimes);

const pages: Readonly<Record<string, readonly string[]>> = {
  cell: ["scenarios/two-station.yaml", "scenarios/one-operator.yaml"],
  hostile: [
    yamlOf("hostile", (text) =>
      measured(text)
        .replace(/^title: .*/mu, `title: ${JSON.stringify(hostile)}`)
        .replace("- name: left", `- name: ${JSON.stringify(hostileName)}`),
    ),
  ],
};
const addressOf = (name: string): string => pathToFileURL(join(folder, `${name}.html`)).href;

/** Of the page cell, which most tests share. */
let page: Page;
/** Protocols of requests, messages and errors. */
const seen: string[] = [];

beforeAll(async () => {
  for (const [name, files] of Object.entries(pages))
    expect(callBlowcell(["page", ...files, "--out", join(folder, `${name}.html`)])).toMatchObject({
      code: 0,
      output: "",
    });
  page = await openPage();
  page.on("request", (request) => seen.push(new URL(request.url()).protocol));
  page.on("console", (message) => seen.push(message.text()));
  page.on("pageerror", (error) => seen.push(String(error)));
  await page.goto(addressOf("cell"));
}, 120_000);

afterAll(() => page?.close());

/** Seconds of the run that the page shows. */
async function shownSeconds(): Promise<number> {
  const text = (await page.locator(".timeline output").textContent()) ?? "";
  return Number(text.split(" s")[0]!.replaceAll(",", ""));
}

const record = recordScene(scenarioOf(shippedText("two-station"), "two-station"), { until: 600 });
/** As the page rounds it. */
const momentAt = (index: number): number => Number(record.moments[index]!.toFixed(2));

/** Focuses the picture and shows the begin of the run. */
async function begin(): Promise<void> {
  await page.locator(".stage").focus();
  await page.keyboard.press("Home");
  expect(await shownSeconds()).toBe(0);
}

describe("the page in a browser", { timeout: 600_000 }, () => {
  it("opens from disk without a request, a message of the console, or a movement of its own", async () => {
    await page.locator(".stage svg").waitFor();
    await drawn(page);
    expect(await shownSeconds()).toBe(0);
    // The worker is made of the page itself.
    expect(seen).toEqual(["file:", "blob:"]);
  });

  it("is at most 500 kB", () => {
    expect(statSync(join(folder, "cell.html")).size).toBeLessThanOrEqual(500_000);
  });

  it("begins with the answer of `check`", async () => {
    const { output } = callBlowcell(["check", "scenarios/two-station.yaml"]);
    const words = output.replaceAll(/\s+/gu, " ");
    for (const place of ["h1", ".finding"]) expect(words).toContain(await page.locator(place).first().textContent());
  });

  it("goes from moment to moment by keys, as the record has them, and says one sentence a step", async () => {
    await page.keyboard.press("Tab");
    expect(await page.evaluate("document.activeElement.textContent")).toBe("Skip to the cell");
    await page.keyboard.press("Enter");
    const focused = (): Promise<string> => page.evaluate("document.activeElement.className");
    for (let tabs = 0; tabs < 5 && (await focused()) !== "stage"; tabs++) await page.keyboard.press("Tab");
    expect(await focused()).toBe("stage");
    const said = page.locator("[role=status].spoken");
    for (const index of [1, 2, 3]) {
      await page.keyboard.press("ArrowRight");
      expect(await shownSeconds()).toBe(momentAt(index));
      expect(await said.textContent()).toMatch(new RegExp(`^${momentAt(index).toFixed(2)} s: .+\\.$`, "u"));
    }
    await page.keyboard.press("ArrowLeft");
    expect(await shownSeconds()).toBe(momentAt(2));
    await page.keyboard.press("End");
    expect(await shownSeconds()).toBe(600);
    await page.keyboard.press("Home");
    expect(await shownSeconds()).toBe(0);
  });

  it("goes to shots and waits by keys, and chooses stations and the screw", async () => {
    await begin();
    const chosen = page.locator(".words select");
    await page.keyboard.press("Shift+ArrowRight");
    const shot = await shownSeconds();
    await page.keyboard.press("Shift+ArrowRight");
    expect(await shownSeconds()).toBeGreaterThan(shot);
    await page.keyboard.press("Shift+ArrowLeft");
    expect(await shownSeconds()).toBe(shot);
    await page.keyboard.press("2");
    expect(await chosen.inputValue()).toBe("right");
    await page.keyboard.press("0");
    expect(await chosen.inputValue()).toBe("plasticator");
    await page.keyboard.press("w");
    const [waits, words] = [await chosen.inputValue(), await page.locator(".words").textContent()];
    expect(waits).not.toBe("plasticator");
    expect(words).toMatch(/Freed at \d+\.\d\d s by /u);
    const freed = await shownSeconds();
    await page.keyboard.press("n");
    expect(await shownSeconds()).toBeGreaterThan(freed);
  });

  it("plays and pauses by the space bar, and is silent while it plays", async () => {
    await begin();
    const said = page.locator("[role=status].spoken");
    const before = await said.textContent();
    await page.keyboard.press(" ");
    await expect.poll(shownSeconds).toBeGreaterThan(0.1);
    expect(await said.textContent()).toBe(before);
    await page.keyboard.press(" ");
    const paused = await shownSeconds();
    expect(await said.textContent()).toContain(paused.toFixed(2));
    await drawn(page);
    expect(await shownSeconds()).toBe(paused);
  });

  it("steps every 1.5 s where the user wants no motion", async () => {
    await page.emulateMedia({ reducedMotion: "reduce" });
    await begin();
    const begun = performance.now();
    const first = page.evaluate<string>(`new Promise((resolve) => {
      const output = document.querySelector(".timeline output");
      const told = { childList: true, characterData: true, subtree: true };
      new MutationObserver(() => resolve(output.textContent)).observe(output, told);
    })`);
    await page.keyboard.press(" ");
    expect(Number.parseFloat(await first)).toBe(momentAt(1));
    // A frame may carry the time at which the one before it ended.
    expect(performance.now() - begun).toBeGreaterThan(1400);
    await page.keyboard.press(" ");
    await page.emulateMedia({ reducedMotion: null });
  });

  it("follows a click on the chart and a click on the picture", async () => {
    await begin();
    const { width } = (await page.locator(".reel").boundingBox())!;
    await page.locator(".reel").click({ position: { x: width * 0.6, y: 12 } });
    expect(await shownSeconds()).toBeGreaterThan(10);
    await page.locator(".stage [data-resource=right] text").first().click();
    expect(await page.locator(".words select").inputValue()).toBe("right");
  });

  it("gives the slider a value in words", async () => {
    await begin();
    const slider = page.getByRole("slider", { name: "Moment" });
    await slider.focus();
    await page.keyboard.press("ArrowRight");
    expect(await slider.getAttribute("aria-valuetext")).toMatch(
      new RegExp(`^${momentAt(1).toFixed(2)} s: .+\\. Moment 2 of ${record.moments.length}\\.$`, "u"),
    );
  });

  it("says masses and temperatures of the picture in US units", async () => {
    const facts = page.locator(".scene .unseen");
    const grams = Number(/(\d+) g a shot/u.exec((await facts.textContent()) ?? "")?.[1]);
    await page.getByRole("combobox", { name: /^Units/u }).selectOption({ index: 1 });
    await expect.poll(() => facts.textContent()).toContain(" a shot");
    const ounces = Number(/([\d.]+) oz a shot/u.exec((await facts.textContent()) ?? "")?.[1]);
    // An ounce is 28.349523125 g: NIST SP 811 (2008), appendix B.8 [M]. Both are rounded.
    expect(Math.abs(ounces * 28.349523125 - grams)).toBeLessThan(0.5 + 0.005 * 28.35);
    expect(await facts.textContent()).not.toMatch(/\d g\b|°C/u);
    await page.getByRole("combobox", { name: /^Units/u }).selectOption({ index: 0 });
  });

  const widths = [390, 640, 1280];
  it.each(firstCases(widths, 1))("has no accessibility violations, %i px wide", async (width) => {
    await page.setViewportSize({ width, height: 900 });
    await page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })");
    await begin();
    for (const key of ["w", "w"]) await page.keyboard.press(key);
    await expectAccessible(page, ["dark"]);
  });

  it("has no sideways scrolling", async () => {
    for (const width of widths) {
      await page.setViewportSize({ width, height: 900 });
      await expectNoSidewaysScrolling(page);
    }
  });

  it("prints the picture and the chart without its controls", async () => {
    await page.setViewportSize({ width: 688, height: 1000 });
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    expect(await page.locator(".controls").isVisible()).toBe(false);
    expect(await page.locator(".stage svg").isVisible()).toBe(true);
    expect(
      await page.evaluate(
        "Math.max(...[...document.querySelectorAll('svg')].map((svg) => svg.getBoundingClientRect().right)) <= innerWidth",
      ),
    ).toBe(true);
    await page.emulateMedia({ media: null, colorScheme: "light" });
    await page.setViewportSize(wide.viewport!);
  });

  it("shows another stretch of the run", async () => {
    await page.locator(".stretch input").fill("60");
    await page.keyboard.press("Tab");
    await expect.poll(() => shownSeconds()).toBe(3600);
  });

  it("reads a file that is opened, and refuses a wrong one in the words of the command line", async () => {
    const wrong = yamlOf("wrong", (text) =>
      text.replace("cool: 7.5 s", "cool: 7.5 kg").replace("blow: 0.5 s", "blow: 0.5"),
    );
    await page.locator("input[type=file]").setInputFiles(wrong);
    await page.getByRole("alert").waitFor();
    const { errors, code } = callBlowcell(["check", "wrong.yaml"], { folder });
    expect(code).toBe(2);
    const shown = ((await page.getByRole("alert").textContent()) ?? "").replaceAll(/\s+/gu, "");
    const lines = errors.split("\n").filter((line) => /^wrong\.yaml:|^ {4}/u.test(line));
    expect(lines.length).toBeGreaterThan(5);
    for (const line of lines) expect(shown).toContain(line.replaceAll(/\s+/gu, ""));
    await page.locator("input[type=file]").setInputFiles("scenarios/three-station.yaml");
    await page.locator(".stage svg").waitFor();
    expect(await page.locator(".finding").textContent()).toContain("ideal cycle");
  });

  it("takes a scenario that is dropped together with its measured times", async () => {
    const dropped = JSON.stringify({ "dropped.yaml": measured(shippedText("two-station")), "log.csv": measuredTimes });
    await page.evaluate(`(() => {
      const data = new DataTransfer();
      for (const [name, text] of Object.entries(${dropped})) data.items.add(new File([text], name));
      document.dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true, bubbles: true }));
    })()`);
    await page.locator("select option", { hasText: "dropped" }).waitFor({ state: "attached" });
    await page.locator(".stage svg").waitFor();
    expect(await page.getByRole("alert").count()).toBe(0);
  });

  it("shows hostile names as text, and contains the measured times that a scenario names", async () => {
    const other = await openPage();
    await other.goto(addressOf("hostile"));
    await other.locator(".stage svg").waitFor();
    expect(await other.title()).toBe(hostile);
    expect(await other.locator("h1").textContent()).toBe(hostile);
    expect(await other.locator(".words select").inputValue()).toBe(hostileName);
    expect(await other.locator("img").count()).toBe(0);
    await other.keyboard.press("Tab");
    expect(await other.title()).toBe(hostile);
    const cooling = other.locator(".reel title", { hasText: "right: cooling" });
    expect(await cooling.first().textContent()).toMatch(/^right: cooling (?:7\.00|7\.50|8\.00) s/u);
    await other.close();
  });

  it("makes no further request and prints no message", () => {
    expect(seen.filter((each) => !["file:", "blob:"].includes(each))).toEqual([]);
  });
});

describe("the command page", () => {
  const call = (...args: string[]) =>
    callBlowcell(["page", join(process.cwd(), "scenarios/two-station.yaml"), ...args], { folder });

  const usual = "reports/two-station/page.html";

  it.runIf(isLong)("writes beside the reports, or where --out says", () => {
    expect(call().errors).toBe(`${usual} is written; open it in a browser\n`);
    expect(call("--out", "other").errors).toContain("other/page.html is written");
    expect(call("--out", "line 2.html").errors).toContain("./line 2.html is written");
    expect(call("--set", "stations.*.steps.cool=8 s").errors).toMatch(
      /^reports\/two-station-.*8-s\/page\.html is written/u,
    );
  });

  it.runIf(isLong)("replaces a page of the same call only, unless --replace is given", () => {
    expect(call().code).toBe(0);
    const other = call("--set", "run.seed=other", "--out", usual);
    expect([other.code, other.errors]).toEqual([2, expect.stringContaining("[page-other]")]);
    expect(call("--set", "run.seed=other", "--out", usual, "--replace").code).toBe(0);
    writeFileSync(join(folder, "mine.html"), "<p>mine</p>");
    const foreign = call("--out", "mine.html");
    expect([foreign.code, foreign.errors]).toEqual([2, expect.stringContaining("[page-other-file]")]);
    expect(readFileSync(join(folder, "mine.html"), "utf8")).toBe("<p>mine</p>");
  });

  it("refuses a scenario that cannot be used, and a name that is none", () => {
    expect(callBlowcell(["page", "none.yaml"], { folder }).code).toBe(2);
    const named = call("--out", "a:b.html");
    expect([named.code, named.errors]).toEqual([2, expect.stringContaining("[page-name]")]);
  });
});

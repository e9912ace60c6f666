// Walks lessons and drills of the page with the keyboard alone, as a trainee does, and judges each view with axe.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { drillKinds } from "#report/drills/drillKinds.ts";
import type { Exercise } from "#report/lessons/exercise.ts";
import { callBlowcell, newFolder } from "../cli/callBlowcell.ts";
import { firstCases, isLong } from "../support/caseCount.ts";
import { expectAccessible, expectNoSidewaysScrolling, faultsOf, openPage } from "../support/page/browserPage.ts";
import { lessonFiles, readDrillCell, solveShipped } from "../unit/report/lessons/shipped.ts";

const folder = newFolder();
const file = join(folder, "page.html");
let page: Page;
let faults: readonly string[];

const own = `title: 10 A lesson of our own
goal: You have walked it.
cells: { mine: { scenario: cell.yaml, length: 2 min } }
moments:
  drop: { resource: left, state: parison drop, occurrence: 2 }
  close: { resource: left, state: closing, after: drop }
values:
  next: { next: drop }
  drop time: { duration: drop }
stages:
  - at: close
    until: close
    look: A parison <b>hangs</b>.
    predict:
      ask: What comes next?
      by: next
      choices:
        - { text: It closes., is: closing, because: So it is. }
        - { text: It blows., is: blowing, because: It is open. }
    reveal: It closes.
    explain: Air comes later.
question:
  ask: How long is the drop?
  by: drop time
  choices:
    - { value: drop time, because: It is. }
    - { text: No time., below: 0, because: A drop takes time. }
`;

beforeAll(async () => {
  writeFileSync(join(folder, "own.yaml"), own);
  writeFileSync(join(folder, "cell.yaml"), readFileSync("scenarios/one-station.yaml"));
  const made = callBlowcell([
    "page",
    "scenarios/two-station.yaml",
    "--lesson",
    join(folder, "own.yaml"),
    "--out",
    file,
  ]);
  expect(made).toMatchObject({ code: 0 });
  page = await openPage();
  faults = faultsOf(page);
  await page.goto(pathToFileURL(file).href);
  await reach("Learn");
  await page.keyboard.press("Enter");
}, 120_000);

afterAll(() => page?.close());

/** Presses Tab until the focused element has these words; fails where it is not within reach. */
async function reach(words: string): Promise<void> {
  const focused = async (): Promise<string> =>
    String(await page.evaluate('document.activeElement.matches("button") ? document.activeElement.textContent : ""'));
  await page.getByRole("button", { name: words, exact: true }).waitFor();
  for (let i = 0; i < 60; i++) {
    if ((await focused()) === words) return;
    await page.keyboard.press("Tab");
  }
  expect(await focused()).toBe(words);
}

async function press(words: string): Promise<void> {
  await reach(words);
  await page.keyboard.press("Enter");
}

/** Chooses with Tab, arrows and space, checks, and returns what stands behind the choice. */
async function answer({ ask, choices }: Exercise, number: number): Promise<void> {
  const form = page.locator("form.exercise");
  await form.getByRole("group", { name: ask, exact: true }).waitFor();
  expect(await form.locator("label").allTextContents()).toEqual(choices.map(({ text }) => ` ${text}`));
  expect(await form.locator(".reason").count()).toBe(0);
  for (let i = 0; i < 60 && (await page.evaluate("document.activeElement.type")) !== "radio"; i++)
    await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  for (let i = 0; i < number; i++) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  const verdict = form.locator(".verdict");
  await verdict.waitFor();
  expect(await verdict.textContent()).toContain(choices[number]!.isRight ? "is right" : "is wrong");
  expect(await page.evaluate("document.activeElement.className")).toBe("verdict");
  expect(await form.locator(".reason").allTextContents()).toEqual(
    choices.map(({ isRight, because }) => `${isRight ? "Right. " : "Wrong. "}${because}`),
  );
}

const rightOf = ({ choices }: Exercise): number => choices.findIndex(({ isRight }) => isRight);

/** `npm test` judges one view of each kind; the long run judges all views. */
async function judge(isFirst = true): Promise<void> {
  if (isFirst || isLong) await expectAccessible(page, ["dark"]);
}

describe("the place Learn", { timeout: 600_000 }, () => {
  it("lists all lessons, also that of the call, and all drills", async () => {
    await page.getByRole("heading", { name: "Lessons" }).waitFor();
    const titles = lessonFiles.map((each) => solveShipped(each).solved.title);
    expect(await page.locator(".lessons button").allTextContents()).toEqual([
      ...titles,
      "10 A lesson of our own",
      ...drillKinds.map(({ title }) => title),
      "Sheet to print: a chart without words, with its key",
    ]);
    await judge();
  });

  // The long run walks all of them.
  it.each(firstCases(lessonFiles, 1))("is walked through %s with the keyboard alone", async (name) => {
    const { title, stages, question } = solveShipped(name).solved;
    await press(title);
    for (const [i, stage] of stages.entries()) {
      await page
        .getByRole("heading", { name: `${title}: prediction ${i + 1} of ${stages.length}`, exact: true })
        .waitFor();
      expect(await page.locator(".lesson > p").allTextContents()).toContain(stage.look);
      expect(await page.locator(".curtain").count()).toBe(1);
      expect(await page.locator(".timeline output").textContent()).toBe(
        `${stage.at.toFixed(2)} s of ${stage.at.toFixed(2)} s`,
      );
      expect(await page.locator(".reveal").count()).toBe(0);
      if (i === 0) await judge(false);
      await answer(stage.predict, i === 0 ? rightOf(stage.predict) : 0);
      expect(await page.locator(".curtain").count()).toBe(0);
      expect(await page.locator(".reveal p").allTextContents()).toEqual([stage.reveal, stage.explain]);
      if (i === 0) await judge();
      await press(i + 1 < stages.length ? "Next prediction" : "To the question");
    }
    await answer(question, rightOf(question));
    await press("All lessons and drills");
  });

  it("shows a lesson of the call as text", async () => {
    await press("10 A lesson of our own");
    await expect.poll(() => page.locator(".lesson > p").allTextContents()).toContain("A parison <b>hangs</b>.");
    await press("All lessons and drills");
  });

  it.each(firstCases(drillKinds, 1))(
    "is walked through the drills $name with the keyboard alone",
    async ({ title, make }) => {
      const drills = make(readDrillCell);
      await press(title);
      let right = 0;
      for (const [i, { look, exercise, charts }] of drills.entries()) {
        await page.getByRole("heading", { name: `${title} Drill ${i + 1} of ${drills.length}`, exact: true }).waitFor();
        expect(await page.locator(".lesson > p").first().textContent()).toBe(look);
        expect(await page.locator(".lesson figure").count()).toBe(charts.length);
        expect(await page.locator(".curtain").count()).toBe(charts.filter(({ at, until }) => at < until).length);
        if (i === 0) await judge();
        await answer(exercise, 0);
        if (exercise.choices[0]!.isRight) right += 1;
        expect(await page.locator(".curtain").count()).toBe(0);
        expect(await page.getByText(/^Score: /u).textContent()).toBe(`Score: ${right} of ${i + 1} right.`);
        if (i + 1 < drills.length) await press("Next drill");
      }
      await press("All lessons and drills");
    },
  );

  it("has a sheet whose key is on a page of its own", async () => {
    await press("Sheet to print: a chart without words, with its key");
    const numbers = await page.locator(".blanks li").count();
    expect(numbers).toBeGreaterThan(8);
    const key = page.getByRole("region", { name: "Key" });
    expect(await key.isVisible()).toBe(false);
    const words = await page.locator(".key td:nth-child(3)").allTextContents();
    expect(words).toHaveLength(numbers);
    // The chart gives none of the words away.
    const chart = (await page.locator(".sheet .picture").textContent()) ?? "";
    expect(words.filter((each) => chart.includes(each))).toEqual([]);
    await judge();
    await page.emulateMedia({ media: "print" });
    expect(await key.isVisible()).toBe(true);
    expect(await page.evaluate("getComputedStyle(document.querySelector('.key')).breakBefore")).toBe("page");
    expect(await page.getByRole("button").filter({ visible: true }).count()).toBe(0);
    await page.emulateMedia({ media: "screen" });
    await press("Key");
    expect(await key.isVisible()).toBe(true);
    await judge(false);
  });

  it("fits a phone", async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await press("All lessons and drills");
    await press("2 The screw recharges while the mold cools");
    await page.getByRole("heading", { name: /prediction 1/u }).waitFor();
    await expectNoSidewaysScrolling(page);
    await judge(false);
  });

  it("makes no request, prints no message and stores nothing", async () => {
    expect(faults).toEqual([]);
    expect(await page.evaluate("document.cookie")).toBe("");
  });
});

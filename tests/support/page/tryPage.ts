// The place Try of a page in any browser: moves levers by the keyboard, and compares all it shows with the call of `run`.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "vitest";
import { callBlowcell } from "../../cli/callBlowcell.ts";
import { enter, inOneLine, openAt, textOf, textsOf, waitForText, type DrivenPage } from "./drivenPage.ts";

interface MovedLever {
  readonly scenario: string;
  readonly lever: string;
  /** Presses of the right arrow; left where negative. */
  readonly by: number;
  /** The settings that it stands for. */
  readonly set: readonly string[];
}

export const movedLevers: readonly MovedLever[] = [
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

export const movedScenarios = [...new Set(movedLevers.map(({ scenario }) => scenario))];

/** What a shell needs no quotes for. */
const bare = /"([\w./=-]+)"/gu;

export function callOf(scenario: string, set: readonly string[]): string {
  const settings = set.map((each) => ` --set "${each}"`).join("");
  return `blowcell run ${scenario}.yaml${settings.replaceAll(bare, "$1")}`;
}

function partsOf(scenario: string, set: readonly string[]): URLSearchParams {
  const parts = new URLSearchParams({ scenario: `${scenario}.yaml`, place: "try" });
  for (const each of set) parts.append("set", each);
  return parts;
}

export async function openTry(page: DrivenPage, file: string, scenario: string): Promise<void> {
  await openAt(page, file, partsOf(scenario, []));
  await waitForText(page, ".levers", /./u);
}

/** Changes the address of the page that is open, as a link does. */
export async function goToTry(page: DrivenPage, scenario: string, set: readonly string[] = []): Promise<void> {
  await page.evaluate(`location.hash = ${JSON.stringify(partsOf(scenario, set).toString())}`);
  await expect.poll(() => shownTryCall(page)).toBe(callOf(scenario, set));
  await waitForText(page, ".levers", /./u);
}

/** Moves by the keyboard alone. */
export async function moveLever(page: DrivenPage, lever: string, by: number): Promise<void> {
  const focus = (): Promise<unknown> =>
    page.evaluate(`(() => {
      const found = [...document.querySelectorAll(".lever")]
        .find((each) => each.querySelector(".name").textContent === ${JSON.stringify(lever)});
      found?.querySelector("input").focus();
      return found !== undefined;
    })()`);
  if (!(await focus())) {
    await enter(page, "section[aria-label=Levers] summary");
    await expect.poll(focus, { message: `a lever ${lever}` }).toBe(true);
  }
  for (let i = 0; i < Math.abs(by); i++) await page.keyboard.press(by > 0 ? "ArrowRight" : "ArrowLeft");
}

export const shownTryCall = (page: DrivenPage): Promise<string> => textOf(page, ".settings pre");

/** The sentence of the answer without the comparison. */
export const madeSentence = async (page: DrivenPage): Promise<string> =>
  (await textOf(page, ".made")).replace(/ Before: .*/u, "");

export const waitForFinal = (page: DrivenPage): Promise<void> => waitForText(page, ".sure", /^Final, as/u);

/** Calls `run` in the folder of the scenario's file. */
export function runOf(
  folder: string,
  scenario: string,
  set: readonly string[],
  more: readonly string[] = [],
): { readonly output: string; readonly out: string } {
  const out = join(folder, `${scenario}-${[...set, ...more].join("-").replaceAll(/[^\w]+/gu, "_")}`);
  const settings = set.flatMap((each) => ["--set", each]);
  const args = ["run", `${scenario}.yaml`, ...settings, ...more, "--out", out, "--replace"];
  const { output, code } = callBlowcell(args, { folder });
  expect(code).toBe(0);
  return { output: inOneLine(output), out };
}

/** All that the page shows of the final answer, and each of its CSV files, are those of the call, whose output it returns. */
export async function expectAsRun(
  page: DrivenPage,
  folder: string,
  scenario: string,
  set: readonly string[],
  more: readonly string[] = [],
): Promise<string> {
  await waitForFinal(page);
  const { output, out } = runOf(folder, scenario, set, more);
  expect(output).toContain(await madeSentence(page));
  const rows = await textsOf(page, ".rows dd");
  expect(rows.length).toBeGreaterThan(5);
  for (const row of rows) expect(output).toContain(row);
  const files = await savedFiles(page);
  expect(files.length).toBeGreaterThan(7);
  for (const { name, text } of files) expect(text, name).toBe(readFileSync(join(out, name), "utf8"));
  return output;
}

interface SavedFile {
  readonly name: string;
  readonly text: string;
}

/** What the buttons would save: a browser without a user stops after ten downloads. */
async function savedFiles(page: DrivenPage): Promise<readonly SavedFile[]> {
  await enter(page, "section[aria-label=Files] .controls button + button");
  await expect.poll(() => textsOf(page, ".files button")).not.toEqual([]);
  return (await page.evaluate(`(async () => {
    const { createObjectURL } = URL;
    const { click } = HTMLAnchorElement.prototype;
    const saved = [];
    let blob;
    URL.createObjectURL = (given) => createObjectURL((blob = given));
    HTMLAnchorElement.prototype.click = function () { saved.push({ name: this.download, blob }); };
    for (const button of document.querySelectorAll(".files button")) button.click();
    Object.assign(URL, { createObjectURL });
    HTMLAnchorElement.prototype.click = click;
    return Promise.all(saved.map(async ({ name, blob }) => ({ name, text: await blob.text() })));
  })()`)) as readonly SavedFile[];
}

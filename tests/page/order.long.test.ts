// The place Order gives the digits of `promise` for more cells, orders and work shifts, from the address of the page.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { callBlowcell, newFolder } from "../cli/callBlowcell.ts";
import { openPage } from "../support/page/browserPage.ts";
import { answered, expectSameAsCommand, openOrder, orderCases, orderedScenarios } from "../support/page/orderPage.ts";
import { shippedText } from "../support/reported.ts";

const folder = newFolder();
const file = join(folder, "page.html");

beforeAll(async () => {
  for (const name of orderedScenarios) writeFileSync(join(folder, `${name}.yaml`), shippedText(name));
  const made = callBlowcell(["page", ...orderedScenarios.map((name) => `${name}.yaml`), "--out", file], { folder });
  expect(made).toMatchObject({ code: 0 });
}, 60_000);

describe("the place Order", { timeout: 600_000 }, () => {
  it.each(orderCases)("equals promise for $scenario, $form", async (each) => {
    const page = await openPage();
    await openOrder(page, file, each);
    await answered(page, each.verdict);
    await expectSameAsCommand(page, folder);
    await page.close();
  });

  it("applies changes one after another, each with the digits of the command", async () => {
    const page = await openPage();
    const form = "order=6000+of+natural+bottle&order=4000+of+blue+bottle&due=2026-11-30+09:50";
    await page.goto(`${pathToFileURL(file).href}#scenario=order-by-friday.yaml&place=order&${form}`);
    await answered(page, /^No: /u);
    for (const name of ["one station more", "cooling −5 %", "half the time of stuck flash"]) {
      await page
        .getByRole("button", { name: `Apply ${name}` })
        .first()
        .click();
      await page.getByRole("button", { name: `Remove ${name}` }).waitFor();
      await answered(page, /^(?:Yes|No|Undecided): /u);
      await expectSameAsCommand(page, folder);
      if (((await page.locator(".order .answer").textContent()) ?? "").startsWith("Yes")) break;
    }
    await page.close();
  });

  it("names the setting of a link that the scenario refuses, and the call that says the same", async () => {
    const page = await openPage();
    const change = encodeURIComponent("odd\nvalve.shift=-1 s");
    await page.goto(`${pathToFileURL(file).href}#scenario=two-station.yaml&place=order&order=2000&change=${change}`);
    await answered(page, /^The order cannot be run/u);
    const words = (await page.locator(".order .issues p").allTextContents()).join(" ");
    expect(words).toMatch(/^--set valve\.shift: error: /u);
    const { errors } = callBlowcell(
      ["promise", "two-station.yaml", "--order", "2000 parts", "--set", "valve.shift=-1 s"],
      { folder },
    );
    expect(errors.replaceAll(/\s+/gu, " ")).toContain(words);
    await page.close();
  });

  it("gives the last answer after 100 changes that cancel each other", async () => {
    const page = await openPage();
    await page.goto(`${pathToFileURL(file).href}#scenario=two-station.yaml&place=order&order=2000&due=3+h`);
    const quantity = page.getByLabel("Quantity", { exact: true });
    await quantity.waitFor();
    for (let i = 0; i < 100; i++) {
      await quantity.fill(String(1000 + i));
      await quantity.press("Enter");
    }
    const answer = await answered(page, /^(?:Yes|No): /u);
    await expectSameAsCommand(page, folder);
    expect(await page.locator(".order .call pre").textContent()).toContain("1099 parts");
    expect(page.workers().length).toBeLessThanOrEqual(2);
    expect(await page.locator(".order .answer").textContent()).toBe(answer);
    await page.close();
  });
});

// The place Order of a page in a browser: waits for the answer, and reads what it shows.
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { callBlowcell } from "../cli/callBlowcell.ts";

export const inOneLine = (text: string): string => text.replaceAll(/\s+/gu, " ").trim();

/** Until nothing is run any more. */
export async function answered(page: Page, verdict: RegExp): Promise<string> {
  const answer = page.locator(".order .answer");
  await expect.poll(() => answer.textContent(), { timeout: 60_000 }).toMatch(verdict);
  await page.locator(".order progress").waitFor({ state: "detached", timeout: 60_000 });
  return (await answer.textContent()) ?? "";
}

export async function shownCall(page: Page): Promise<string> {
  return (await page.locator(".order .call pre").textContent()) ?? "";
}

/** The arguments of a call that is quoted for a shell. */
function argumentsOf(call: string): readonly string[] {
  const words = call.match(/(?:"[^"]*"|'[^']*'|[^\s"'])+/gu) ?? [];
  return words.map((word) => word.replaceAll(/^(["'])(.*)\1$/gu, "$2"));
}

async function rowsOf(page: Page, caption: RegExp): Promise<readonly (readonly string[])[]> {
  const rows = page.getByRole("region", { name: caption }).locator("tbody tr");
  return Promise.all((await rows.all()).map((row) => row.locator("th, td").allTextContents()));
}

/** Runs the call that the page shows, and compares all that both say. */
export async function expectSameAsCommand(page: Page, folder: string): Promise<void> {
  const [program, ...rest] = argumentsOf(await shownCall(page));
  expect(program).toBe("blowcell");
  const { output } = callBlowcell([...rest, "--out", `out-${Date.now()}`], { folder });
  const words = inOneLine(output);
  const shown = page.locator(".order");
  expect(words.startsWith(`${await shown.locator(".answer").textContent()} `)).toBe(true);
  for (const text of await shown
    .locator(".answer ~ p:not(.count), section[aria-labelledby=order-uses] > p")
    .allTextContents())
    expect(words).toContain(text);
  const [dates, uses, changes] = await Promise.all(
    [/^Dates by which/u, /^What it uses/u, /^The same random numbers/u].map((caption) => rowsOf(page, caption)),
  );
  expect(dates!.length).toBeGreaterThanOrEqual(3);
  // A change has a button behind its name; interval and number of runs are in the file only.
  const plain = changes!.map(([name = "", , ...cells]) => [name, ...cells.slice(0, -2)]);
  for (const row of [...dates!, ...uses!, ...plain]) expect(words).toContain(inOneLine(row.join(" ")));
}

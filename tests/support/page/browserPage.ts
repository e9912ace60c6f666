// Pages of a browser that all files of one process share, what they must not do, and the judgment of axe.
import axe from "axe-core";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { expect } from "vitest";
import { openBrowser } from "../browser.ts";
import { isLong } from "../caseCount.ts";

let browser: Promise<Browser> | undefined;

/** It ends with the process: to start one takes as long as some files of tests. */
function sharedBrowser(): Promise<Browser> {
  browser ??= openBrowser();
  return browser;
}

export const wide: BrowserContextOptions = { viewport: { width: 1280, height: 900 } };

/** A busy machine makes nothing wrong. */
const patience = 120_000;

export async function openPage(options = wide): Promise<Page> {
  const page = await (await sharedBrowser()).newPage(options);
  page.setDefaultTimeout(patience);
  return page;
}

/** Grows with every message, error and request of a page; only its file and its workers may be loaded. */
export function faultsOf(page: Page): readonly string[] {
  const faults: string[] = [];
  page.on("console", (message) => faults.push(message.text()));
  page.on("pageerror", ({ message }) => faults.push(message));
  page.on("request", (request) => {
    if (!/^(?:file|blob):/u.test(request.url())) faults.push(request.url());
  });
  return faults;
}

interface Judged {
  /** All where absent. */
  readonly rules?: readonly string[];
  /** A selector; the whole page where absent. */
  readonly within?: string;
}

/** Violated accessibility rules, each with its places. */
export async function violations(page: Page, { rules, within = "html" }: Judged = {}): Promise<readonly string[]> {
  if ((await page.evaluate("typeof axe")) === "undefined") await page.evaluate(axe.source);
  const options = { resultTypes: ["violations"], ...(rules && { runOnly: rules }) };
  return page.evaluate<
    readonly string[]
  >(`axe.run(${JSON.stringify(within)}, ${JSON.stringify(options)}).then((found) =>
    found.violations.map(({ id, nodes }) => id + ": " + nodes.map(({ html }) => html.slice(0, 120)).join(" | ")))`);
}

/** What a dark page can violate where the light one violates nothing. */
const rulesOfColor = ["color-contrast", "link-in-text-block"];

type Scheme = "light" | "dark";
const schemes: readonly Scheme[] = ["light", "dark"];

/** The long run applies all rules to light and dark, `npm test` all to the first of these, and those of color to the others. */
export async function expectAccessible(page: Page, usual: readonly Scheme[] = schemes): Promise<void> {
  for (const [i, colorScheme] of (isLong ? schemes : usual).entries()) {
    await page.emulateMedia({ colorScheme });
    const judged = i === 0 || isLong ? {} : { rules: rulesOfColor };
    expect(await violations(page, judged), colorScheme).toEqual([]);
  }
}

export async function expectNoSidewaysScrolling(page: Page): Promise<void> {
  expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBeLessThanOrEqual(0);
}

/** Until what was begun is drawn. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate("new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)))");
}

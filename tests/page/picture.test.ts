// Opens pictures of the cell in a browser: words that neither overlap nor leave the picture, contrast, and a strict policy.
import { createHash } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { pageStyle } from "#report/page/pageStyle.ts";
import { pictureStyle } from "#report/picture/pictureStyle.ts";
import { scenePicture, type PictureOptions } from "#report/picture/scenePicture.ts";
import { openBrowser } from "../support/browser.ts";
import { firstCases } from "../support/caseCount.ts";
import { sceneGallery } from "../support/sceneGallery.ts";

const sheet = `${pageStyle}\n${pictureStyle}`;
const policy = `default-src 'none'; style-src 'sha256-${createHash("sha256").update(sheet).digest("base64")}'`;

/** All pictures of the gallery on one page, which allows no style but its own sheet. */
function gallery(width: PictureOptions["width"]): string {
  const pictures = Object.entries(sceneGallery).map(([name, scene], i) => {
    const chosen = scene.stations.at(-1)!.name;
    return `<section aria-label="${name}">${scenePicture(scene, { id: `p${i}`, width, chosen, units: "si" }).code}</section>`;
  });
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Pictures</title>
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1"><style>${sheet}</style></head>
<body><div class="page"><main><h1>Pictures</h1>${pictures.join("")}</main></div></body></html>`;
}

const looks: Readonly<Record<string, BrowserContextOptions & { readonly width: PictureOptions["width"] }>> = {
  light: { width: "wide", viewport: { width: 1100, height: 800 }, colorScheme: "light" },
  dark: { width: "wide", viewport: { width: 1100, height: 800 }, colorScheme: "dark" },
  phone: { width: "phone", viewport: { width: 390, height: 844 }, colorScheme: "light" },
};

const folder = mkdtempSync(join(tmpdir(), "blowcell-picture-"));
let browser: Promise<Browser>;

beforeAll(async () => {
  browser = openBrowser();
  for (const width of ["wide", "phone"] as const) writeFileSync(join(folder, `${width}.html`), gallery(width));
  await Promise.allSettled([browser]);
}, 60_000);

afterAll(async () => {
  await (await browser.catch(() => undefined))?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function opened(look: string, options: BrowserContextOptions = {}, logged: string[] = []): Promise<Page> {
  const { width, ...context } = looks[look]!;
  const page = await (await browser).newPage({ ...context, ...options });
  page.on("console", (message) => logged.push(message.text()));
  await page.goto(pathToFileURL(join(folder, `${width}.html`)).href);
  return page;
}

/** Pairs of words that cover each other by more than a pixel, and marks outside their picture. */
const faults = `[...document.querySelectorAll("svg[role=img]")].flatMap((svg) => {
  const name = svg.closest("section").getAttribute("aria-label");
  const frame = svg.getBoundingClientRect();
  const boxes = [...svg.querySelectorAll("text")].map((text) => [text.textContent, text.getBoundingClientRect()]);
  const meet = (one, other) =>
    one.left + 1 < other.right && other.left + 1 < one.right && one.top + 3 < other.bottom && other.top + 3 < one.bottom;
  const pairs = boxes.flatMap(([text, box], i) =>
    boxes.slice(i + 1).filter(([, other]) => meet(box, other)).map(([other]) => name + ": " + text + " / " + other));
  const outside = [...svg.querySelectorAll("text, rect, path, line, circle")].filter((each) => {
    if (each.closest("defs") !== null) return false;
    const box = each.getBoundingClientRect();
    return box.left < frame.left - 1 || box.right > frame.right + 1 || box.top < frame.top - 1 || box.bottom > frame.bottom + 1;
  }).map((each) => name + ": " + each.outerHTML.slice(0, 120));
  return [...pairs, ...outside];
})`;

describe("a picture in a browser", { timeout: 600_000 }, () => {
  it.each(Object.keys(looks))("has words that do not overlap, and nothing outside of it, %s", async (look) => {
    const page = await opened(look);
    expect(await page.evaluate<string[]>(faults)).toEqual([]);
    await page.close();
  });

  it("is reported with a fault when it has one", async () => {
    const page = await opened("light", { bypassCSP: true });
    await page.evaluate(`document.querySelector("svg[role=img] text").setAttribute("x", "-900")`);
    await page.evaluate(`document.querySelectorAll("svg[role=img] text.name")[1].setAttribute("y", "28")`);
    const found = await page.evaluate<string[]>(faults);
    expect(found.some((fault) => fault.includes("<text"))).toBe(true);
    expect(found.some((fault) => fault.includes(" / "))).toBe(true);
    await page.close();
  });

  it.each(firstCases(Object.keys(looks), 1))("has no accessibility violations, %s", async (look) => {
    const page = await opened(look, { bypassCSP: true });
    await page.evaluate(axe.source);
    const found = await page.evaluate<{ violations: { id: string; nodes: { html: string }[] }[] }>("axe.run(document)");
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`)).toEqual([]);
    expect(await page.evaluate("document.documentElement.scrollWidth <= innerWidth")).toBe(true);
    await page.close();
  });

  it("has words of at least 12 px on a phone", async () => {
    const page = await opened("phone");
    const sizes = await page.evaluate<number[]>(`[...document.querySelectorAll("svg[role=img]")].map((svg) =>
      (parseFloat(getComputedStyle(svg.querySelector("text")).fontSize) * svg.getBoundingClientRect().width) / 360)`);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(12);
    await page.close();
  });

  it("keeps a policy that allows no style attributes", async () => {
    const logged: string[] = [];
    const page = await opened("light", {}, logged);
    const steel = await page.evaluate(`getComputedStyle(document.querySelector(".scene .half")).strokeWidth`);
    expect([steel, logged]).toEqual(["1.25px", []]);
    await page.close();
  });
});

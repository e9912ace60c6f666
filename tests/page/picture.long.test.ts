// Opens pictures of the cell in a browser: words that neither overlap nor leave the picture, contrast, and a strict policy.
import { createHash } from "node:crypto";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { pageStyle } from "#report/page/pageStyle.ts";
import { pictureStyle } from "#report/picture/pictureStyle.ts";
import { scenePicture, type PictureOptions } from "#report/picture/scenePicture.ts";
import { firstCases, isLong } from "../support/caseCount.ts";
import { expectNoSidewaysScrolling, openPage, violations } from "../support/page/browserPage.ts";
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

interface Look {
  readonly width: PictureOptions["width"];
  readonly viewport: { readonly width: number; readonly height: number };
  readonly colorScheme: "light" | "dark";
}

const looks: Readonly<Record<string, Look>> = {
  light: { width: "wide", viewport: { width: 1100, height: 800 }, colorScheme: "light" },
  phone: { width: "phone", viewport: { width: 390, height: 844 }, colorScheme: "light" },
  dark: { width: "wide", viewport: { width: 1100, height: 800 }, colorScheme: "dark" },
};

const folder = mkdtempSync(join(tmpdir(), "blowcell-picture-"));
let page: Page;
const logged: string[] = [];

beforeAll(async () => {
  for (const width of ["wide", "phone"] as const) writeFileSync(join(folder, `${width}.html`), gallery(width));
  page = await openPage();
  page.on("console", (message) => logged.push(message.text()));
}, 120_000);

afterAll(() => page?.close());

async function open(look: string): Promise<void> {
  const { width, viewport, colorScheme } = looks[look]!;
  await page.setViewportSize(viewport);
  await page.emulateMedia({ colorScheme });
  await page.goto(pathToFileURL(join(folder, `${width}.html`)).href);
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
  it("keeps a policy that allows no style attributes", async () => {
    logged.length = 0;
    await open("light");
    const steel = await page.evaluate(`getComputedStyle(document.querySelector(".scene .half")).strokeWidth`);
    expect([steel, logged]).toEqual(["1.25px", []]);
  });

  it.each(firstCases(Object.keys(looks), 2))(
    "has words that do not overlap, and nothing outside of it, %s",
    async (look) => {
      await open(look);
      expect(await page.evaluate<string[]>(faults)).toEqual([]);
    },
  );

  it("is reported with a fault when it has one", async () => {
    await open("light");
    await page.evaluate(`document.querySelector("svg[role=img] text").setAttribute("x", "-900")`);
    await page.evaluate(`document.querySelectorAll("svg[role=img] text.name")[1].setAttribute("y", "28")`);
    const found = await page.evaluate<string[]>(faults);
    expect(found.some((fault) => fault.includes("<text"))).toBe(true);
    expect(found.some((fault) => fault.includes(" / "))).toBe(true);
  });

  it.each(firstCases(Object.keys(looks), 1))("has no accessibility violations, %s", async (look) => {
    await open(look);
    expect(await violations(page, isLong ? {} : { within: "section:nth-of-type(3n)" })).toEqual([]);
    await expectNoSidewaysScrolling(page);
  });

  it("has words of at least 12 px on a phone", async () => {
    await open("phone");
    const sizes = await page.evaluate<number[]>(`[...document.querySelectorAll("svg[role=img]")].map((svg) =>
      (parseFloat(getComputedStyle(svg.querySelector("text")).fontSize) * svg.getBoundingClientRect().width) / 360)`);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(12);
  });
});

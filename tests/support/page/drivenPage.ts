// A page in a browser under test, whatever drives it: what playwright and puppeteer have in common.
import { pathToFileURL } from "node:url";
import { expect } from "vitest";

export interface DrivenPage {
  goto(address: string): Promise<unknown>;
  evaluate(code: string): Promise<unknown>;
  readonly keyboard: { press(key: string): Promise<void> };
}

/** Opens the file anew at a part of the address; a hash alone would not load it again. */
export async function openAt(page: DrivenPage, file: string, parts: URLSearchParams): Promise<void> {
  await page.goto("about:blank");
  await page.goto(`${pathToFileURL(file).href}#${parts.toString()}`);
}

/** Of all elements that a selector finds. */
export async function textsOf(page: DrivenPage, selector: string): Promise<readonly string[]> {
  const found = `[...document.querySelectorAll(${JSON.stringify(selector)})]`;
  return (await page.evaluate(`${found}.map((each) => each.textContent)`)) as readonly string[];
}

export async function textOf(page: DrivenPage, selector: string): Promise<string> {
  return (await textsOf(page, selector))[0] ?? "";
}

/** Until an element has a text like this. */
export async function waitForText(page: DrivenPage, selector: string, text: RegExp): Promise<void> {
  await expect.poll(() => textOf(page, selector)).toMatch(text);
}

export async function waitForNone(page: DrivenPage, selector: string): Promise<void> {
  await expect.poll(() => textsOf(page, selector)).toEqual([]);
}

/** Gives the focus to the first element that a selector finds and presses Enter. */
export async function enter(page: DrivenPage, selector: string): Promise<void> {
  await page.evaluate(`document.querySelector(${JSON.stringify(selector)}).focus()`);
  await page.keyboard.press("Enter");
}

export const inOneLine = (text: string): string => text.replaceAll(/\s+/gu, " ").trim();

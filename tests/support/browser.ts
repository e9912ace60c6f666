// Opens the browser for page tests: $CHROMIUM, or else Debian's chromium.
import { existsSync } from "node:fs";
import { chromium, type Browser } from "playwright-core";

const remedy = "No browser for the tests of pages: apt-get install chromium, or let CHROMIUM name one.";

const flags = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Throws with the remedy when there is no browser; a skipped test would prove nothing. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = [process.env["CHROMIUM"], "/usr/bin/chromium"].find(
    (path) => path !== undefined && path !== "",
  );
  if (executablePath === undefined || !existsSync(executablePath)) throw new Error(remedy);
  return chromium.launch({ executablePath, args: flags });
}

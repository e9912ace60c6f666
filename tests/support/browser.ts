// A real browser for tests of pages: $CHROMIUM, else the one that Debian installs; without one the tests fail and say what to do.
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

/** Throws where there is no browser: a test that is skipped proves nothing. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = [process.env["CHROMIUM"], "/usr/bin/chromium"].find(
    (path) => path !== undefined && path !== "",
  );
  if (executablePath === undefined || !existsSync(executablePath)) throw new Error(remedy);
  return chromium.launch({ executablePath, args: flags });
}

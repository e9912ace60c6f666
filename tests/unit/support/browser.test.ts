// The browser for page tests: its choice, and the error when none starts.
import { chmodSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, test } from "vitest";
import { installedBrowser, openBrowser } from "../../support/browser.ts";

const folder = mkdtempSync(path.join(tmpdir(), "blowcell-test-"));
const installed = path.join(folder, "chromium");
writeFileSync(installed, "#!/bin/sh\n");
chmodSync(installed, 0o755);

test("CHROMIUM is preferred to an installed browser, and an empty CHROMIUM is ignored", () => {
  expect(installedBrowser({ CHROMIUM: process.execPath, PATH: folder })).toBe(process.execPath);
  expect(installedBrowser({ CHROMIUM: "", PATH: `/nowhere:${folder}` })).toBe(installed);
});

test.each(["/nowhere/chromium", folder])("CHROMIUM=%s gives an error with its remedy", async (named) => {
  await expect(openBrowser({ CHROMIUM: named, PATH: folder })).rejects.toThrow(
    `CHROMIUM names no program: ${named}. Let it name one, or unset it`,
  );
});

test("a program that is not a browser gives an error with its remedy", async () => {
  await expect(openBrowser({ CHROMIUM: process.execPath })).rejects.toThrow("does not start. Install Chromium");
});

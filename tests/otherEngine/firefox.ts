// Starts a Firefox of this machine: playwright needs a changed one, which no package contains.
import { accessSync, constants } from "node:fs";
import path from "node:path";
import puppeteer, { type Browser } from "puppeteer-core";

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The program that FIREFOX names, else an installed one; undefined where there is none. Throws where FIREFOX names none. */
export function installedFirefox({ FIREFOX: named = "", PATH: folders = "" }: NodeJS.ProcessEnv): string | undefined {
  if (named !== "" && !isProgram(named)) throw new Error(`FIREFOX names no program: ${named}.`);
  if (named !== "") return named;
  const names = ["firefox-esr", "firefox"];
  const files = folders.split(path.delimiter).flatMap((folder) => names.map((name) => path.join(folder, name)));
  return files.find(isProgram);
}

export async function openFirefox(executablePath: string): Promise<Browser> {
  return puppeteer.launch({ browser: "firefox", executablePath, headless: true });
}

// Opens the browser for page tests: the one that CHROMIUM names, else an installed Chromium, else that of @sparticuz/chromium.
import { execFile } from "node:child_process";
import { accessSync, constants, mkdtempSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { chromium, type Browser, type LaunchOptions } from "playwright-core";

const remedy = "Install Chromium (Debian: apt-get install chromium), or let CHROMIUM name its program.";

const flags = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/** The Chromium of this machine, or undefined when it has none; throws when CHROMIUM names no program. */
export function installedBrowser({ CHROMIUM: named = "", PATH: folders = "" }: NodeJS.ProcessEnv): string | undefined {
  if (named === "")
    return [...folders.split(path.delimiter), "/usr/bin"]
      .map((folder) => path.join(folder, "chromium"))
      .find((file) => isProgram(file));
  if (isProgram(named)) return named;
  throw new Error(
    `CHROMIUM names no program: ${named}. Let it name one, or unset it to use the browser that npm ci brings.`,
  );
}

/** The browser of the package in a new folder, with the libraries and fonts that a minimal machine lacks. */
async function unpackedBrowser(): Promise<LaunchOptions> {
  const folder = mkdtempSync(path.join(tmpdir(), "blowcell-browser-"));
  const unpack = `import chromium from "@sparticuz/chromium"; console.log(await chromium.executablePath());`;
  const { stdout } = await promisify(execFile)(process.execPath, ["--input-type=module", "--eval", unpack], {
    cwd: fileURLToPath(new URL("../..", import.meta.url)),
    // The package unpacks into the temporary folder, and unpacks its libraries only in AWS Lambda.
    env: { ...process.env, TMPDIR: folder, AWS_EXECUTION_ENV: "AWS_Lambda_nodejs22.x" },
  });
  const fonts = path.join(folder, "fonts.conf");
  writeFileSync(fonts, `<fontconfig><dir>${folder}/fonts</dir><cachedir>${folder}/fonts-cache</cachedir></fontconfig>`);
  return {
    executablePath: stdout.trim(),
    env: { ...process.env, LD_LIBRARY_PATH: path.join(folder, "al2023/lib"), FONTCONFIG_FILE: fonts, HOME: folder },
  };
}

/** Throws with the remedy when no browser starts; a skipped test would prove nothing. */
export async function openBrowser(environment = process.env): Promise<Browser> {
  const executablePath = installedBrowser(environment);
  try {
    const options = executablePath === undefined ? await unpackedBrowser() : { executablePath };
    return await chromium.launch({ ...options, args: flags });
  } catch (cause) {
    throw new Error(`${executablePath ?? "The browser of @sparticuz/chromium"} does not start. ${remedy}`, { cause });
  }
}

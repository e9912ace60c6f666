// Calls the built command line in a separate process, as a user does.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

export const projectFolder = fileURLToPath(new URL("../..", import.meta.url));
export const builtCommand = path.join(projectFolder, "dist/cli/blowcell.js");

export interface Outcome {
  readonly code: number | null;
  readonly output: string;
  readonly errors: string;
}

// Needed when one test file is run alone; `npm test` builds before.
execFileSync(process.execPath, [path.join(projectFolder, "tests/tools/build/build.mjs"), "--if-stale"]);

/** A new empty folder outside the project. */
export function newFolder(): string {
  return mkdtempSync(path.join(tmpdir(), "blowcell-test-"));
}

/** No call ever prints a stack. */
export function expectNoStack({ output, errors }: Outcome): void {
  for (const text of [output, errors])
    expect(text).not.toMatch(/^ +at .+[:(]|node:internal|\.js:\d+|UnhandledPromise/m);
}

export interface Surroundings {
  readonly folder?: string;
  readonly environment?: Readonly<Record<string, string>>;
}

export function callBlowcell(args: readonly string[], { folder, environment = {} }: Surroundings = {}): Outcome {
  const { status, stdout, stderr } = spawnSync(process.execPath, [builtCommand, ...args], {
    cwd: folder ?? projectFolder,
    env: { ...process.env, ...environment },
    encoding: "utf8",
  });
  const outcome = { code: status, output: stdout, errors: stderr };
  expectNoStack(outcome);
  return outcome;
}

// Calls the command line in the process of the test: many times as fast as a process of its own, with the same answers and files.
import { setImmediate } from "node:timers/promises";
import { readTextFile } from "#cli/machine/readTextFile.ts";
import { prepareFolder, whatIs, writeFiles } from "#cli/machine/writer.ts";
import { runProgram } from "#cli/program.ts";
import { openFakeHost } from "../unit/cli/fakeHost.ts";
import { expectNoStack, type Outcome, projectFolder } from "./callBlowcell.ts";

/** In one thread: the scripts of worker threads and the parts of the page are beside the built program only. */
const machine = {
  cores: 1,
  readText: readTextFile,
  whatIs,
  prepareFolder,
  writeFiles,
  breathe: (): Promise<void> => setImmediate(),
};

let isCalled = false;

/** One call at a time, since a process has one working folder. */
export async function callHere(
  args: readonly string[],
  { folder = projectFolder }: { readonly folder?: string } = {},
): Promise<Outcome> {
  if (isCalled) throw new Error("Another call has not ended.");
  isCalled = true;
  const host = { ...openFakeHost(), ...machine };
  const before = process.cwd();
  process.chdir(folder);
  try {
    const code = await runProgram(args, host);
    const outcome = { code, ...host.written };
    expectNoStack(outcome);
    return outcome;
  } finally {
    process.chdir(before);
    isCalled = false;
  }
}

// Calls the command line in the process of the test: some 20 times as fast as a process of its own, with the same answers and files.
import { setImmediate } from "node:timers/promises";
import { readTextFile } from "#cli/machine/readTextFile.ts";
import { prepareFolder, whatIs, writeFiles } from "#cli/machine/writer.ts";
import { runProgram } from "#cli/program.ts";
import { openFakeHost } from "../unit/cli/fakeHost.ts";
import { expectNoStack, type Outcome, projectFolder } from "./callBlowcell.ts";

/** One call at a time, in one thread: worker threads and the parts of the page belong to the built program. */
export async function callHere(
  args: readonly string[],
  { folder = projectFolder }: { readonly folder?: string } = {},
): Promise<Outcome> {
  const machine = {
    cores: 1,
    readText: readTextFile,
    whatIs,
    prepareFolder,
    writeFiles,
    breathe: () => setImmediate(),
  };
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
  }
}

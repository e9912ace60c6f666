#!/usr/bin/env node
// The entry of the command line: hands the call over to the program.
import { loadProgram } from "./loadProgram.ts";

/** What scripts ask most often needs nothing of the program. */
async function tellVersion(): Promise<void> {
  const [{ openHost }, { version }] = await Promise.all([import("./host.ts"), import("./version.ts")]);
  const host = openHost();
  host.print(`${version}\n`);
  host.end();
}

async function start(call: readonly string[]): Promise<void> {
  (await loadProgram().start(call)).end();
}

const call = process.argv.slice(2);
void (call.join() === "--version" ? tellVersion() : start(call));

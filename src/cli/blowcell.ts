#!/usr/bin/env node
// The entry of the command line: loads the program and starts it.
import { loadProgram } from "./loadProgram.ts";
import { printVersion } from "./printVersion.ts";

const helpOptions = ["-h", "--help"];

async function start(call: readonly string[]): Promise<void> {
  if (call.join() === "--version") return printVersion();
  const loaded = loadProgram(call[0] ?? "");
  const host = await loaded.program.start(call);
  // A call that fails or asks for help compiles only a part.
  if (process.exitCode === 0 && !call.some((word) => helpOptions.includes(word))) loaded.keepCode();
  host.end();
}

void start(process.argv.slice(2));

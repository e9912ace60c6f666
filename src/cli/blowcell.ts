#!/usr/bin/env node
// The entry of the command line, which hands the call over to the program and, since Node compiles it at every call, holds nothing else.
import { loadProgram } from "./loadProgram.ts";
import { tellVersion } from "./tellVersion.ts";

const helpOptions = ["-h", "--help"];

async function start(call: readonly string[]): Promise<void> {
  if (call.join() === "--version") return tellVersion();
  const loaded = loadProgram(call[0] ?? "");
  const host = await loaded.program.start(call);
  // A call that fails or asks for help compiles only a part.
  if (process.exitCode === 0 && !call.some((word) => helpOptions.includes(word))) loaded.keepCode();
  host.end();
}

void start(process.argv.slice(2));

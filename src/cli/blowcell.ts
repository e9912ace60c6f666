#!/usr/bin/env node
// The entry of the command line, which hands the call over to the program and, since Node compiles it at every call, holds nothing else.

async function start(call: readonly string[]): Promise<void> {
  if (call.join() === "--version") {
    const { tellVersion } = await import("./tellVersion.ts");
    return tellVersion();
  }
  const { loadProgram } = await import("./loadProgram.ts");
  (await loadProgram().start(call)).end();
}

void start(process.argv.slice(2));

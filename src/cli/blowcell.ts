#!/usr/bin/env node
// The entry of the command line: hands the call over to the program. Node compiles it at every call, so it holds nothing else.

async function start(call: readonly string[]): Promise<void> {
  if (call.join() === "--version") {
    const { tellVersion } = await import("./tellVersion.ts");
    return tellVersion();
  }
  const { loadProgram } = await import("./loadProgram.ts");
  (await loadProgram().start(call)).end();
}

void start(process.argv.slice(2));

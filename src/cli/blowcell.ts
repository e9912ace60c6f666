#!/usr/bin/env node
// The entry of the command line: hands the call over to the program.
import { openHost } from "./host.ts";
import { loadProgram } from "./loadProgram.ts";
import { version } from "./version.ts";

const call = process.argv.slice(2);

if (call.join() === "--version") {
  // What scripts ask most often, and what needs nothing of the program.
  const host = openHost();
  host.print(`${version}\n`);
  host.end();
} else
  void loadProgram()
    .start(call)
    .then((host) => host.end());

#!/usr/bin/env node
// The entry of the command line: hands the call over to the program.
import { loadProgram } from "./loadProgram.ts";

void loadProgram()
  .start(process.argv.slice(2))
  .then((host) => host.end());

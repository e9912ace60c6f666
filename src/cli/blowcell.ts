#!/usr/bin/env node
// The entry of the command line: opens the host, runs the program, leaves its exit code behind.
import { openHost } from "./host.ts";
import { runProgram } from "./program.ts";
import { tellFailure } from "./tellFailure.ts";

const host = openHost();
const argv = process.argv.slice(2);
process.on("uncaughtException", (error) => host.leave(tellFailure(error, host, argv)));
host.leave(await runProgram(argv, host));

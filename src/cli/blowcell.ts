#!/usr/bin/env node
// The entry of the command line.
process.exitCode = 2;

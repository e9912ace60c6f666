// Loads the program with the code that V8 compiled in an earlier call of the same command.
import { readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { setFlagsFromString } from "node:v8";
import { Script } from "node:vm";
import { keepCode, readCode } from "#cli/machine/keptCode.ts";
import type * as Program from "./main.ts";

/** V8 optimizes code later, because most calls are short. Node 22 and 24 gain less than 20 ms, and have other flags. */
const flagsOfNode20 = [
  // JavaScript after 44 times the default time: 42 of 193 ms of processor time of a `run` of one shift.
  "--interrupt-budget=3000000",
  // WebAssembly after some ten simulated hours: 28 ms of the same.
  "--wasm-tiering-budget=2000000000",
].join(" ");

/** The file's name, set by the build. */
declare const BLOWCELL_PROGRAM: string;

/** Seconds of processor time. In longer calls V8 drops code that only the beginning needs. */
const longest = 1;

/** The function around the program, added by the build. */
type Wrapper = (module: { exports: unknown }, require: NodeJS.Require, program: { readonly url: string }) => void;

export interface LoadedProgram {
  readonly program: typeof Program;
  /** Keeps what a short call has compiled for the next call of its command, unless there was kept code already. */
  keepCode(): void;
}

/** In an entry bundled as CommonJS, since Node starts that sooner than an ES module. */
export function loadProgram(command: string): LoadedProgram {
  if (process.version.startsWith("v20.")) setFlagsFromString(flagsOfNode20);
  const file = path.join(__dirname, BLOWCELL_PROGRAM);
  const owner = { program: BLOWCELL_PROGRAM, command };
  const cachedData = readCode(owner);
  // The text is plain ASCII, so no decoding is needed.
  const text = readFileSync(file, "latin1");
  const script = new Script(text, { filename: file, ...(cachedData ? { cachedData } : {}) });
  const module = { exports: {} };
  (script.runInThisContext() as Wrapper)(module, require, { url: pathToFileURL(file).href });
  return {
    program: module.exports as typeof Program,
    keepCode() {
      const isServed = script.cachedDataRejected === false;
      if (isServed || process.cpuUsage().user > longest * 1e6) return;
      keepCode(owner, () => script.createCachedData());
    },
  };
}

// Loads the program with the code that V8 made of it when it was built, so that no call has to compile it again.
import { readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { setFlagsFromString } from "node:v8";
import { Script } from "node:vm";
import type * as Program from "./main.ts";

/** The file's name, set by the build; it holds a hash, so that program and kept code always belong together. */
declare const BLOWCELL_PROGRAM: string;
/** V8's flags under which the code was kept. */
declare const BLOWCELL_FLAGS: string;

/** What the build wraps around the program. */
type Wrapper = (module: { exports: unknown }, require: NodeJS.Require, program: { readonly url: string }) => void;

/** Made for one V8 only; V8 itself refuses code that does not fit, and compiles as if there were none. */
function keptCode(file: string): Buffer | undefined {
  try {
    return readFileSync(`${file}.${process.version}-${process.arch}`);
  } catch {
    return undefined;
  }
}

/** In an entry bundled as CommonJS, since Node starts that sooner than an ES module. */
export function loadProgram(): typeof Program {
  const file = path.join(__dirname, BLOWCELL_PROGRAM);
  const cachedData = keptCode(file);
  // Another Node than the one of the build may not know them.
  if (cachedData) setFlagsFromString(BLOWCELL_FLAGS);
  // Without accents, so that no decoding is needed.
  const text = readFileSync(file, "latin1");
  const script = new Script(text, { filename: file, ...(cachedData ? { cachedData } : {}) });
  const module = { exports: {} };
  (script.runInThisContext() as Wrapper)(module, require, {
    get url() {
      return pathToFileURL(file).href;
    },
  });
  return module.exports as typeof Program;
}

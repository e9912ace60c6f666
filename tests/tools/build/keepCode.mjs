// Runs the main commands of the built program once, and keeps V8's compiled code for src/cli/loadProgram.ts.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { setFlagsFromString } from "node:v8";
import { Script } from "node:vm";
import { engineFlags } from "./engineFlags.mjs";

const [file, root] = process.argv.slice(2);
const out = mkdtempSync(path.join(os.tmpdir(), "blowcell-code-"));
const scenario = (name) => path.join(root, `scenarios/${name}.yaml`);
const short = ["--length", "1 h", "--replications", "1", "--out", out];
// V8 compiles code that these calls do not reach when it is needed.
const calls = [
  ["--version"],
  ["--help"],
  ["check", scenario("two-station")],
  ["compare", scenario("one-station"), scenario("two-station"), ...short],
  ["run", scenario("two-station"), ...short],
  ["run", path.join(root, "tests/bench/two-station.yaml"), ...short],
];

setFlagsFromString(engineFlags);
const script = new Script(readFileSync(file, "latin1"), { filename: file });
const program = { exports: {} };
script.runInThisContext()(program, createRequire(file), { url: pathToFileURL(file).href });
try {
  for (const call of calls) {
    await program.exports.start(call);
    if (process.exitCode !== 0) throw new Error(`${call.join(" ")} left ${process.exitCode}`);
  }
  writeFileSync(`${file}.${process.version}-${process.arch}`, script.createCachedData());
} finally {
  rmSync(out, { recursive: true });
}

// Keeps one test runner open in this process and runs chosen tests on one mutant after another; no file on disk ever holds a mutant.
import { readFileSync, statSync } from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";
import threads from "node:worker_threads";
import { createVitest } from "vitest/node";
import { compileSources } from "../tools/build/wasmCore.mjs";
import { marked } from "./reach.mjs";
import { switched } from "./switched.mjs";

/** The thread that runs the tests: only its end stops a mutant that goes on without end. */
let thread;
threads.Worker = class extends threads.Worker {
  constructor(...given) {
    super(...given);
    thread = this;
  }
};
syncBuiltinESMExports();

const projectFolder = fileURLToPath(new URL("../../", import.meta.url));
const inProject = (place) => path.join(projectFolder, place);
const wasm = inProject("src/core/core.wasm");
const isOfCore = ({ file }) => file.startsWith("src/core/");
const marks = process.env.REACHED_FUNCTIONS !== undefined;
/** Mutants that the sources hold all at once, each behind a switch. */
const switches = process.env.SWITCHED_MUTANTS && JSON.parse(readFileSync(process.env.SWITCHED_MUTANTS, "utf8"));
const caseCount = Number(process.env.CASE_COUNT);

/** The file and the text that stands in for it while a mutant is tested. */
let mutant;
/** Why a mutant is no program. */
let fault;

/** The core made of the sources with the mutant. */
async function mutatedCore() {
  const place = inProject(mutant.file);
  const bytes = await compileSources((name) => (name === place ? mutant.text : undefined)).catch(({ message }) => {
    fault = message;
    return new Uint8Array();
  });
  const text = Buffer.from(bytes).toString("base64");
  return `export default Uint8Array.from(atob("${text}"), (letter) => letter.charCodeAt(0));`;
}

async function load(file) {
  if (mutant && file === wasm && isOfCore(mutant)) return mutatedCore();
  if (mutant && file === inProject(mutant.file)) return mutant.text;
  if (switches) return switched(path.relative(projectFolder, file), switches);
  return marks ? marked(projectFolder, file) : null;
}

/** Before the plugin of the project, which gives the core as it is. */
const forMutants = { name: "mutants", enforce: "pre", load: { order: "pre", handler: load } };

/** Runs the files in the order in which they are named. */
class AsNamed {
  static files = [];
  async shard(specifications) {
    return specifications;
  }
  async sort(specifications) {
    const rank = ({ moduleId }) => AsNamed.files.findIndex((file) => moduleId.endsWith(file));
    return specifications.toSorted((left, right) => rank(left) - rank(right));
  }
}

let outcome;
const listener = {
  onTestRunEnd(modules, errors) {
    const tests = modules.flatMap((module) => [...module.children.allTests("failed")]);
    const failed = tests.map((test) => ({
      file: test.module.relativeModuleId,
      test: test.fullName.replaceAll(" > ", " "),
    }));
    const broken = modules.filter((module) => module.errors().length > 0);
    const without = broken.map((module) => ({ file: module.relativeModuleId, test: "" }));
    outcome = { failed: [...failed, ...without], errors: errors.map(({ message }) => message) };
  },
};

const openRunner = () =>
  createVitest(
    "test",
    {
      config: inProject("tests/tools/configuration/vitest.config.ts"),
      pool: "threads",
      maxWorkers: 1,
      bail: marks || switches ? 0 : 1,
      ...(switches ? { runner: inProject("tests/mutation/eachMutant.ts") } : {}),
      watch: false,
      reporters: [listener],
      provide: { caseCount },
      sequence: { sequencer: AsNamed },
      setupFiles: [inProject("tests/support/caseCount.ts"), inProject("tests/mutation/keepReached.ts")],
    },
    { plugins: [forMutants] },
  );

function usedTime() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

const notes = process.env.MUTANT_NOTES;
const sizeOfNotes = () => (notes ? statSync(notes).size : 0);

/** Whether the last run was stopped. */
let isStopped = false;

/** Ends a run in which a mutant takes too much time of the processor, which no load of the machine changes. */
function guard(limit) {
  let begun = usedTime();
  let size = sizeOfNotes();
  return setInterval(() => {
    if (sizeOfNotes() !== size) begun = usedTime();
    size = sizeOfNotes();
    if (isStopped || usedTime() - begun <= limit) return;
    isStopped = true;
    void thread?.terminate();
  }, 250);
}

const runner = await openRunner();

async function run({ files, pattern, changed, limit }) {
  mutant = changed;
  fault = undefined;
  outcome = undefined;
  isStopped = false;
  AsNamed.files = files;
  const outdated = changed && inProject(isOfCore(changed) ? "src/core/core.wasm" : changed.file);
  if (outdated) runner.invalidateFile(outdated);
  if (pattern) runner.setGlobalTestNamePattern(new RegExp(pattern));
  else runner.resetGlobalTestNamePattern();
  const watch = guard(limit);
  const begun = usedTime();
  const project = runner.getRootProject();
  await runner.runTestSpecifications(
    files.map((file) => project.createSpecification(inProject(file))),
    false,
  );
  clearInterval(watch);
  mutant = undefined;
  if (outdated) runner.invalidateFile(outdated);
  process.exitCode = 0;
  process.send({ ...outcome, isStopped, fault, time: usedTime() - begun });
}

process.on("message", (wanted) => void run(wanted));
process.on("disconnect", () => process.exit(0));
process.send("ready");

// Tries many mutants in one run of the tests: each test runs once as it is and once with each mutant that it passes.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { Runner } from "./runner.mjs";
import { testFiles } from "./sources.mjs";

/** Processor seconds after which a test is left to the runs of single mutants. */
const long = 1;
/** Processor seconds without a word after which a run has come to no end. */
const silence = 20;

const readNotes = (file) =>
  readFileSync(file, "utf8")
    .split("\n")
    .flatMap((line) => (line === "" ? [] : [JSON.parse(line)]));

/** Where a run that ended by itself stood: the mutant that ended it is killed, and the rest of the tests remain. */
function afterEnd(notes, files, killed) {
  const last = notes.findLast(({ what }) => what !== "file");
  if (last?.what === "tried") killed.set(last.id, "time or memory");
  const at = files.indexOf(notes.findLast(({ what }) => what === "file")?.by);
  return last?.what === "tried" ? files.slice(Math.max(at, 0)) : files.slice(Math.max(at, 0) + 1);
}

/** The files whose tests are short come first, because they spare the long ones most mutants; those without a time come last. */
function shortFirst(files, tests) {
  const mean = (file) => {
    const times = tests.filter((test) => test.file === file && test.time <= long).map(({ time }) => time);
    return times.length === 0 ? Infinity : times.reduce((sum, time) => sum + time, 0) / times.length;
  };
  const means = new Map(files.map((file) => [file, mean(file)]));
  return files.toSorted((one, other) => (means.get(one) < means.get(other) ? -1 : 1));
}

/** The tests that killed mutants, by the number of the mutant. */
export async function tryTogether(mutants, { files, tests, cases, seconds, said }) {
  const folder = mkdtempSync(path.join(tmpdir(), "blowcell-mutants-"));
  const place = (name) => path.join(folder, name);
  writeFileSync(place("mutants.json"), JSON.stringify(mutants));
  writeFileSync(
    place("long.json"),
    JSON.stringify(tests.filter(({ time }) => time > long).map(({ file, test }) => `${file}\n${test}`)),
  );
  const killed = new Map();
  let round = 0;
  for (let rest = files ?? shortFirst(testFiles(), tests); rest.length > 0;) {
    const notesFile = place(`notes${(round += 1)}.jsonl`);
    writeFileSync(notesFile, "");
    const runner = new Runner({
      SWITCHED_MUTANTS: place("mutants.json"),
      LONG_TESTS: place("long.json"),
      MUTANT_NOTES: notesFile,
      MUTANT_SECONDS: String(seconds),
      KILLED_MUTANTS: [...killed.keys()].join(),
      CASE_COUNT: String(cases),
    });
    const outcome = await runner.ask({ files: rest, limit: silence });
    runner.close();
    const notes = readNotes(notesFile);
    for (const { what, id, by } of notes) if (what === "killed") killed.set(id, by);
    for (const { what, id, by } of notes) if (what === "stained") said(`stained by ${id}: ${by}`);
    for (const { file, test } of outcome?.failed ?? []) said(`fails without a mutant: ${file} ${test}`);
    rest = outcome === undefined || outcome.isStopped ? afterEnd(notes, rest, killed) : [];
  }
  rmSync(folder, { recursive: true });
  return killed;
}

// Chooses the tests for a mutant: those that reach its function, those that killed a mutant of its file first, then the short ones.
import { readFileSync } from "node:fs";
import { importedBy } from "./sources.mjs";

function groupedBy(items, keysOf) {
  const groups = new Map();
  for (const item of items)
    for (const key of keysOf(item)) groups.has(key) ? groups.get(key).push(item) : groups.set(key, [item]);
  return groups;
}

/** What a run with marks has noted. A record without a test is about what a file calls outside its tests. */
export function readReach(place) {
  const records = readFileSync(place, "utf8").trim().split("\n").map((line) => JSON.parse(line));
  const tests = records.filter(({ test }) => test !== "");
  return {
    tests,
    files: [...new Set(records.map(({ file }) => file))],
    byFile: groupedBy(tests, ({ file }) => [file]),
    byFunction: groupedBy(records, ({ called }) => called),
  };
}

function testsImporting(reach, source) {
  const files = reach.files.filter((file) => importedBy(file).has(source));
  return files.flatMap((file) => reach.byFile.get(file) ?? []);
}

function reaching(reach, name) {
  const direct = (reach.byFunction.get(name) ?? []).flatMap((record) =>
    record.test === "" ? (reach.byFile.get(record.file) ?? []) : [record],
  );
  const loading = [...reach.byFunction.keys()].filter((key) => key.endsWith(`>${name}`));
  return [...direct, ...loading.flatMap((key) => testsImporting(reach, key.split(">")[0]))];
}

/** Every test that may notice a mutant. The core carries no marks: whatever simulates may notice. */
export function testsFor(reach, { file, inside }) {
  if (file.startsWith("src/core/")) return reaching(reach, "src/engine/run/openCore.ts#0");
  if (inside >= 0) return [...new Set(reaching(reach, `${file}#${inside}`))];
  return [...new Set(testsImporting(reach, file))];
}

/** Processor seconds for a file that is opened at all. */
const opening = 0.1;

/** Tests in the order in which they should run. */
export function inOrder(tests, kills) {
  const rank = ({ file, test, time }) => time / (1 + 20 * (kills.get(`${file}\n${test}`) ?? 0));
  return tests.toSorted((one, other) => rank(one) - rank(other));
}

/** Tests cut into parts that take about as many seconds as given, the last of which ends the choice. */
export function inParts(tests, seconds) {
  const parts = [];
  let rest = tests;
  for (const most of seconds) {
    let time = 0;
    const opened = new Set();
    const fits = ({ file, time: own }) => {
      time += own + (opened.has(file) ? 0 : opening);
      opened.add(file);
      return time <= most;
    };
    const cut = rest.findIndex((test) => !fits(test));
    const count = cut === -1 ? rest.length : Math.max(cut, parts.length === 0 ? 1 : cut);
    if (count > 0) parts.push(rest.slice(0, count));
    rest = rest.slice(count);
  }
  return { parts, left: rest.length };
}

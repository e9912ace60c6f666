// Chooses the tests for a mutant: those that reach its function, those that killed a mutant of its file first, then the short ones.
import { readFileSync } from "node:fs";
import { importedBy } from "./sources.mjs";

function groupedBy(items, keysOf) {
  const groups = new Map();
  for (const item of items) {
    for (const key of keysOf(item)) {
      if (groups.has(key)) groups.get(key).push(item);
      else groups.set(key, [item]);
    }
  }
  return groups;
}

/** What a run with marks has noted. A record without a test is about what a file calls outside its tests. */
export function readReach(place) {
  const records = readFileSync(place, "utf8")
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));
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

/** Processor seconds for a file that is opened at all, and for a test that may wait. */
const opening = 0.2;
const slow = 0.4;

const wordsOf = (path) => new Set(path.split(/[^A-Za-z]+|(?=[A-Z])/).map((word) => word.toLowerCase()));

/** How many words of their paths two files share: the tests of a subject know most about it. */
function kinship(source, file) {
  const words = wordsOf(source);
  return [...wordsOf(file)].filter((word) => words.has(word)).length;
}

/**
 * Tests in the order in which they should run: those of files that killed mutants of this source, then those of its subject. Tests of
 * one file stay together, because every file that is opened takes time.
 */
export function inOrder(tests, kills, source) {
  const killsOf = (file) =>
    [...kills].reduce((sum, [key, count]) => sum + (key.startsWith(`${file}\n`) ? count : 0), 0);
  const files = new Map();
  for (const { file } of tests) if (!files.has(file)) files.set(file, 10 * killsOf(file) + kinship(source, file));
  const rank = (test) => [
    Number(test.time > slow && !kills.has(`${test.file}\n${test.test}`)),
    -files.get(test.file),
    [...files.keys()].indexOf(test.file),
    test.time,
  ];
  const ranked = tests.map((test) => [rank(test), test]);
  const differs = ([one], [other]) => one.map((each, i) => each - other[i]).find((difference) => difference !== 0) ?? 0;
  return ranked.toSorted(differs).map(([, test]) => test);
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

// The printed answers of run, check and compare.
import { describe, expect, it } from "vitest";
import { compareStudies } from "#analysis/study/comparison.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { stepTimes } from "#analysis/ideal/stepTimes.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { checkAnswer } from "#report/answers/checkAnswer.ts";
import { cautions, shortCautions } from "#report/words/cautions.ts";
import { compareAnswer } from "#report/answers/compareAnswer.ts";
import { runAnswer } from "#report/answers/runAnswer.ts";
import { windowLines } from "#report/tables/windowWords.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { shippedText } from "../../support/reported.ts";

function studyOf(scenario: Scenario): Study {
  const outcome = runStudy(scenario);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

const one = scenarioOf(cellText(1));
const two = { ...scenarioOf(cellText(2)), name: "two" };

const oneLine = (text: string): string => text.replaceAll(/\s+/gu, " ").toLowerCase();

function expectCautions(answer: string): void {
  for (const words of ["never safe limits", "local codes", "licensed, qualified people", "blowcell explain safety"])
    expect(oneLine(answer)).toContain(words);
}

it("the full cautions name the standards", () => {
  // Titles of EN 422:2009, ANSI/PLASTICS B151.31-2014 (R2020) and 29 CFR 1910.147 [M].
  for (const words of ["EN 422:2009", "B151.31-2014", "1910.147", "Local codes", "licensed, qualified people"])
    expect(cautions).toContain(words);
  expect(shortCautions.filter((line) => line.length > 80)).toEqual([]);
});

describe("the answer to run", () => {
  const answer = runAnswer(studyOf(one));

  it("begins with one sentence on the output and what sets the pace", () => {
    const [title, sentence] = answer.split("\n");
    expect(title).toBe(one.title);
    expect(sentence).toMatch(
      /^The cell makes 55\d(?:\.\d)?(?: ± [\d.]+)? good parts an hour; station 1 \(100 % busy\) sets/u,
    );
  });

  it("gives output, ideal cycle, bottleneck, runner-up and waits of the closed form", () => {
    // Circuits derived by hand [C]: 13.05 s a shot for one station, 6.3 s for the screw; two parts a shot.
    expect(answer).toMatch(/^Good parts +55\d(?:\.\d)? an hour/m);
    expect(answer).toContain("Ideal cycle  13.05 s a shot");
    // Cooling 8 s, drop 1.8 s and removal 0.8 s of these 13.05 s.
    expect(oneLine(answer)).toContain(
      "bottleneck station 1 (100 % busy): cooling 61 %, parison drop 14 %, removal 6.1 % of the critical path",
    );
    expect(answer).toMatch(/^Next +the screw, slack 6\.75 s a shot$/m);
    expect(answer).toMatch(/^screw +48\.3 % +51\.7 % +holding a full shot 52 %$/m);
  });

  it("explains the confidence interval, and states what was not entered", () => {
    expect(oneLine(answer)).toContain("± is the 95 % confidence interval");
    expect(oneLine(answer)).toContain("no stops, no rejects: a best case");
    const once = runAnswer(studyOf({ ...one, run: { ...one.run, replications: 1 } }));
    expect(oneLine(once)).toContain("one replication gives no interval");
    expect(once).not.toContain("±");
  });

  it("ends with the cautions, within one screen", () => {
    expectCautions(answer);
    expect(answer.split("\n").length).toBeLessThan(25);
    expect(answer.endsWith("\n")).toBe(true);
  });

  it("gives no time per shot for a run without shots", () => {
    const nothing = studyOf({ ...one, run: { ...one.run, length: 1, warmup: 0 } });
    expect(runAnswer(nothing)).toMatch(/^Shots +0 an hour$/m);
    expect(runAnswer(nothing)).toContain("The cell makes no part in this run.");
  });
});

describe("a line that is too wide", () => {
  it("is broken between words, with indented continuation lines", () => {
    expect(wrappedLines("  one two three", 9)).toEqual(["  one two", "    three"]);
    expect(wrappedLines("  one two three", 15)).toEqual(["  one two three"]);
    expect(wrappedLines("word", 2)).toEqual(["word"]);
  });

  it.each([60, 80])("groups the keys for more rows by their field in %i columns", (width) => {
    const scenario = scenarioOf(shippedText("two-station"));
    const lines = windowLines(stationWindows(scenario, idealCycle(scenario)), 2, width);
    const groups = lines.slice(lines.findIndex((line) => line.startsWith("More answers")) + 1);
    expect(groups.filter((line) => line.length > width)).toEqual([]);
    expect(groups.flatMap((line) => /^ {2}(\S.*?) {2,}/u.exec(line)?.[1] ?? [])).toEqual([
      "parison and die",
      "screw and drive",
      "air and clamp",
      "usual ranges",
    ]);
    // Four keys of the many of the first group, and as many more as there are.
    const missing = stationWindows(scenario, idealCycle(scenario))[0]!.missing.filter(
      ({ field }) => field === "parison and die",
    );
    const keys = new Set(missing.flatMap((row) => row.keys));
    const [, named = "", more] = /die (product\..*?) and (\d+) more/u.exec(oneLine(groups.join(" ")))!;
    expect(named).toMatch(/^product\.die\.diameter, product\.die\.mandrel, /u);
    expect(named.split(", ")).toHaveLength(4);
    expect(Number(more)).toBe(keys.size - 4);
  });
});

describe("an answer in 80 columns", () => {
  // The shipped scenarios with the widest lines: a long title, names of 60 letters in the process window, remedies of 200.
  const names = ["handled-container", "large-part", "rigid-pvc", "slow-trimmer", "two-shifts-one-color"];

  it.each(names)("keeps every value of %s, and no line of check is wider", (name) => {
    const scenario = readSettled(shippedText(name), { name, file: name }).scenario!;
    const ideal = idealCycle(scenario);
    const found = { scenario, ideal, times: stepTimes(scenario), windows: stationWindows(scenario, ideal) };
    const [narrow, wide] = [checkAnswer(found, 80), checkAnswer(found, 400)];
    expect(narrow.split("\n").filter((line) => Array.from(line).length > 80)).toEqual([]);
    // The chart of one period depends on the width; everything else has the same numbers.
    const numbers = (answer: string): readonly string[] =>
      Array.from(answer.replace(/One period[\s\S]*?\n\n/u, "").matchAll(/\d+(?:\.\d+)?/gu), ([number]) => number);
    expect(numbers(narrow).toSorted()).toEqual(numbers(wide).toSorted());
    expect(narrow).not.toContain("…");
  });

  it("aligns the numbers of a column on the first line of a broken row", () => {
    const rows = [
      ["one two three four five six seven", "1.5 s", "ten"],
      ["short", "12.25 s", "eleven"],
    ];
    expect(alignedLines(rows, [1], 35)).toEqual([
      "one two three four    1.5 s  ten",
      "  five six seven",
      "short               12.25 s  eleven",
    ]);
    expect(alignedLines(rows, [1])).toHaveLength(2);
  });

  it("has no line break between a number and its unit or interval", () => {
    expect(wrappedLines("some 12 s of it, 5.0 ± 0.2 kg", 7)).toEqual([
      "some",
      "  12 s",
      "  of",
      "  it,",
      "  5.0 ± 0.2 kg",
    ]);
  });
});

describe("the answer to check", () => {
  const of = (scenario: Scenario) =>
    checkAnswer({ scenario, times: stepTimes(scenario), ideal: idealCycle(scenario), windows: [] });

  it("gives the mean times of all steps, the circuits and the number of stations that the screw needs", () => {
    const answer = of(scenarioOf(cellText(2), "stations.steps.cool={ triangular: [7 s, 7.5 s, 9.5 s] }"));
    // By hand [C]: the mean of a triangular distribution is a third of the sum of minimum, mode and maximum.
    expect(answer).toMatch(/^ {2}cool +8\.00$/m);
    expect(answer).toMatch(/^ {2}recharge +4\.00$/m);
    expect(answer).toContain(
      `The ideal cycle is ${(13.05 / 2).toFixed(2)} s a shot, 1,103 parts an hour; each station sets`,
    );
    expect(answer).toMatch(/^ {2}screw +6\.30 +0\.2[23]$/m);
    // By hand [C]: station circuit / plasticator circuit = 13.05 / 6.3.
    expect(answer).toContain(`the screw busy: ${(13.05 / 6.3).toFixed(3)}, in practice 3;`);
    expectCautions(answer);
  });

  it("states the use of more stations than needed", () => {
    expect(of(scenarioOf(cellText(4)))).toContain("covers for stops and adds no rate");
  });

  it("gives different stations a column each", () => {
    const stations = two.stations.map((each, k) => ({ ...each, open: { kind: "fixed", value: k + 1 } as const }));
    expect(of({ ...two, stations })).toMatch(/^ {2}open +1\.00 +2\.00$/m);
  });
});

describe("the answer to compare", () => {
  it("gives the scenarios side by side and the paired difference in words", () => {
    const [base, other] = [studyOf({ ...one, name: "one" }), studyOf(two)];
    const answer = compareAnswer({ studies: [base, other], rows: compareStudies(base, [other]), paybacks: [] });
    expect(answer).toMatch(/^one +55\d +station 1 100 %$/m);
    expect(answer).toMatch(/^one +13\.0\d s +13\.05 s/m);
    expect(answer).toMatch(/^two makes 55\d good parts an hour more than one: 2(?:\.0\d+)? times as many\.$/m);
    expect(answer).toContain("Replications are paired by common random numbers");
    expectCautions(answer);
  });
});

describe("aligned lines", () => {
  it("count characters, not code units, and have no trailing blanks", () => {
    expect(
      alignedLines(
        [
          ["a", "1"],
          ["𝒶𝒷", "22"],
        ],
        [1],
      ),
    ).toEqual(["a    1", "𝒶𝒷  22"]);
    expect(
      alignedLines([
        ["a", ""],
        ["bb", "c"],
      ]),
    ).toEqual(["a", "bb  c"]);
  });
});

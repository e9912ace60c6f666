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

/** Titles of EN 422:2009, ANSI/PLASTICS B151.31-2014 and 29 CFR 1910.147 [M], and cautions that every answer must contain. */
function expectCautions(answer: string): void {
  for (const words of [
    "never safe limits",
    "EN 422:2009",
    "B151.31-2014",
    "1910.147",
    "local codes",
    "licensed, qualified people",
  ])
    expect(answer.toLowerCase().replaceAll("\n", " ")).toContain(words.toLowerCase());
}

describe("the answer to run", () => {
  const answer = runAnswer(studyOf(one));

  it("gives output, ideal cycle, bottleneck, runner-up and waits of the closed form", () => {
    // Circuits derived by hand [C]: 13.05 s a shot for one station, 6.3 s for the screw; two parts a shot.
    expect(answer).toMatch(/^Good parts +55\d(?:\.\d)? an hour/m);
    expect(answer).toContain("Ideal cycle  13.05 s a shot");
    expect(answer).toMatch(/^Bottleneck +cooling, station 1: 61\.\d+ %/m);
    expect(answer).toMatch(/^Next +the screw, 6\.75 s away/m);
    expect(answer).toMatch(/^the screw +48 % +52 % +holding a full shot 52 %$/m);
  });

  it("explains the confidence interval, and states that parts are not checked", () => {
    expect(answer).toContain("± is the 95 % confidence interval");
    expect(answer).toContain("nothing is judged");
    const once = runAnswer(studyOf({ ...one, run: { ...one.run, replications: 1 } }));
    expect(once).toMatch(/one\s+replication: how far chance moves it is not known/u);
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
  });
});

describe("a line that is too wide", () => {
  it("is broken between words, with indented continuation lines", () => {
    expect(wrappedLines("  one two three", 9)).toEqual(["  one two", "    three"]);
    expect(wrappedLines("  one two three", 15)).toEqual(["  one two three"]);
    expect(wrappedLines("word", 2)).toEqual(["word"]);
  });

  it.each([60, 80])("keeps every word of the keys for more rows within %i columns", (width) => {
    const scenario = scenarioOf(shippedText("two-station"));
    const ideal = idealCycle(scenario);
    const lines = windowLines(stationWindows(scenario, ideal), 2, width);
    const first = lines.findIndex((line) => line.includes("more rows with"));
    const wrapped = lines.slice(first).filter((line) => line !== "");
    expect(wrapped.length).toBeGreaterThan(1);
    expect(wrapped.filter((line) => line.length > width)).toEqual([]);
    expect(wrapped.map((line) => line.trim()).join(" ")).toMatch(/^\d+ more rows with (?:`\S+`,? )+and \d+ more keys$/);
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
    expect(answer).toContain(`Ideal cycle: ${(13.05 / 2).toFixed(2)} s a shot`);
    expect(answer).toMatch(/^ {2}plasticator +6\.30 +0\.2[23] s$/m);
    // By hand [C]: station circuit / plasticator circuit = 13.05 / 6.3.
    expect(answer).toContain(`the screw busy: ${(13.05 / 6.3).toFixed(3)}, so 3; the cell has 2.`);
    expectCautions(answer);
  });

  it("states the use of more stations than needed", () => {
    expect(of(scenarioOf(cellText(4)))).toContain("covers for stops, it does not add rate");
  });

  it("gives different stations a column each", () => {
    const stations = two.stations.map((each, k) => ({ ...each, open: { kind: "fixed", value: k + 1 } as const }));
    expect(of({ ...two, stations })).toMatch(/^ {2}open +1\.00 +2\.00$/m);
  });
});

describe("the answer to compare", () => {
  it("gives the scenarios side by side and the paired difference in words", () => {
    const [base, other] = [studyOf({ ...one, name: "one" }), studyOf(two)];
    const answer = compareAnswer([base, other], compareStudies(base, [other]));
    expect(answer).toMatch(/^one +55\d +13\.\d+ +13\.05 s/m);
    expect(answer).toMatch(/^two makes 55\d good parts an hour more than one: 2(?:\.0\d+)? times as many$/m);
    expect(answer).toContain("3 pairs of runs with the same luck");
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

// The answer to `compare` for several layouts, as a reader sees it on the screen.
import { describe, expect, it } from "vitest";
import { pairsAgainst } from "#analysis/study/against.ts";
import { comparePairs, comparableScenarios, type Comparison } from "#analysis/study/comparison.ts";
import { paybacks } from "#analysis/study/payback.ts";
import type { Study } from "#analysis/study/study.ts";
import { compareAnswer } from "#report/answers/compareAnswer.ts";
import { mergedWarnings } from "#report/tables/mergedWarnings.ts";
import { scenarioOf, shippedText, studyOf } from "../../support/reported.ts";

const coolings = [7, 7.5, 8, 8.5, 9, 9.5, 10, 10.5, 11, 11.5];
const rates = (i: number) =>
  `costs={ currency: EUR, machine: ${40 - i} per h, station: 5 per h, investment: ${1000 + 500 * i} }`;

function studiesOf(count: number): readonly Study[] {
  const scenarios = coolings.slice(0, count).map((cool, i) =>
    scenarioOf(shippedText("two-station"), `layout-${i + 1}`, [
      `stations.*.steps.cool={ triangular: [${cool} s, ${cool + 0.5} s, ${cool + 2} s] }`,
      // 109.2 g drop in 0.936 s, less than the usual 1 s.
      "delivery.deliveryRate=420 kg/h",
      rates(i),
    ]),
  );
  return comparableScenarios(scenarios).map(studyOf);
}

const ten = studiesOf(10);
const three = ten.slice(0, 3);

function comparisonOf(studies: readonly Study[], against?: string): Comparison {
  const pairs = pairsAgainst(studies, against);
  return { studies, rows: comparePairs(pairs), paybacks: paybacks(pairs) };
}

const basesOf = (against: string): readonly string[] =>
  pairsAgainst(three, against).map(([base, other]) => `${other.scenario.name} - ${base.scenario.name}`);

describe("the pairs", () => {
  it("are those of the word or the name", () => {
    expect(basesOf("first")).toEqual(["layout-2 - layout-1", "layout-3 - layout-1"]);
    expect(basesOf("previous")).toEqual(["layout-2 - layout-1", "layout-3 - layout-2"]);
    expect(basesOf("all")).toEqual(["layout-2 - layout-1", "layout-3 - layout-1", "layout-3 - layout-2"]);
    expect(basesOf("layout-2")).toEqual(["layout-1 - layout-2", "layout-3 - layout-2"]);
    expect(basesOf("nobody")).toEqual([]);
  });

  it("share their confidence, however many they are", () => {
    for (const [against, count] of [
      ["previous", 9],
      ["all", 45],
    ] as const)
      expect(new Set(comparisonOf(ten, against).rows.map(({ comparisons }) => comparisons))).toEqual(new Set([count]));
  });
});

describe("the answer for ten layouts with costs", () => {
  const answer = compareAnswer(comparisonOf(ten));
  const lines = answer.trimEnd().split("\n");

  it("fits on a screen of 80 x 50", () => {
    expect(lines.length).toBeLessThanOrEqual(50);
    expect(lines.filter((line) => Array.from(line).length > 80)).toEqual([]);
  });

  it("begins with the best, then each layout has a row of output and one of cost", () => {
    expect(answer).toMatch(/^layout-1 makes the most: 1,\d\d\d ± \d good parts an hour, the best of 10 layouts\n/u);
    for (const { scenario } of ten)
      expect(lines.filter((line) => line.startsWith(`${scenario.name} `)).length).toBeGreaterThanOrEqual(2);
    expect(answer).toContain("The\n  9 differences of a measure hold together (Bonferroni).");
  });

  it("has a finding of all layouts once", () => {
    expect(answer.match(/parison drop of a reciprocating/gu)).toHaveLength(1);
  });

  it("against all names the pairs without a difference only", () => {
    expect(compareAnswer(comparisonOf(ten, "all"))).toContain("is seen in 0 of 45 pairs.");
  });
});

describe("the answer for three layouts", () => {
  it("names the best together where no difference is seen", () => {
    const twin = { ...three[0]!, scenario: { ...three[0]!.scenario, name: "twin" } };
    const answer = compareAnswer(comparisonOf([three[1]!, three[0]!, twin]));
    expect(answer).toMatch(
      /^layout-1 makes the most: .* an hour; no difference in good\s+parts an hour is seen between it and twin\./u,
    );
    expect(compareAnswer(comparisonOf([three[0]!, twin, three[1]!]))).toMatch(/^twin .* 0 \(=\)/mu);
  });

  it("against all has a line a pair, with the cost", () => {
    const answer = compareAnswer(comparisonOf(three, "all"));
    for (const pair of ["layout-2 − layout-1", "layout-3 − layout-1", "layout-3 − layout-2"])
      expect(answer).toMatch(new RegExp(`^${pair} +-\\d+\\S* ± \\S+ +\\+\\d`, "mu"));
  });

  it("says that one replication gives no interval", () => {
    const single = three.map((study) =>
      studyOf({ ...study.scenario, run: { ...study.scenario.run, replications: 1 } }),
    );
    expect(compareAnswer(comparisonOf(single))).toMatch(/in one replication, which\s+gives no interval\./u);
    expect(compareAnswer(comparisonOf(single))).not.toContain("Bonferroni");
  });

  it("says that different products count alike", () => {
    const mixed = [scenarioOf(shippedText("two-station"), "a"), scenarioOf(shippedText("two-molds"), "b")].map(studyOf);
    expect(compareAnswer(comparisonOf(mixed))).toContain("do not make the same products: good parts count alike");
    expect(compareAnswer(comparisonOf(three))).not.toContain("same products");
  });
});

describe("merged findings", () => {
  it("name layouts and stations, and give the range of the values", () => {
    const settings = {
      "two-molds": ["delivery.deliveryRate=420 kg/h", "stations.sample side.steps.vent=0.4 s"],
      "one-operator": ["delivery.deliveryRate=450 kg/h"],
    };
    const studies = Object.entries(settings).map(([name, set]) => studyOf(scenarioOf(shippedText(name), name, set)));
    const [unusual = ""] = mergedWarnings(studies, "si").filter((line) => line.startsWith("Unusual"));
    expect(unusual).toContain("vent 0.4 s, below 0.5 s (two-molds sample side)");
    expect(unusual).toMatch(/parison drop of a reciprocating screw 0\.\d+ to 0\.\d+ s, below 1 s/u);
    expect(mergedWarnings([], "si")).toEqual([]);
  });

  it("keep values outside the window apart, with their remedy", () => {
    const thick = studyOf(scenarioOf(shippedText("two-station"), "thick", ["product.wall.thickest=2.5 mm"]));
    const lines = mergedWarnings([three[0]!, thick], "si");
    expect(lines[0]).toBe("Outside the process window:");
    expect(lines[1]).toMatch(/^ {2}\S.* \(thick\)\. \S/u);
  });
});

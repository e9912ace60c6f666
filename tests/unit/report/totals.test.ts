// The total of a calendar, good parts by product, and what a scenario does not enter.
import { describe, expect, it } from "vitest";
import { runAnswer } from "#report/answers/runAnswer.ts";
import { studyFinding } from "#report/answers/findingWords.ts";
import { assumptionWords } from "#report/words/assumptionWords.ts";
import { totalsTables } from "#report/tables/asked/totalsTable.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { scenarioOf, shippedText, studyOf } from "../../support/reported.ts";

const oneLine = (text: string): string => text.replaceAll(/\s+/gu, " ");
const weekly = ["run.length=7 d"];

describe("a week on a calendar", () => {
  const study = studyOf(scenarioOf(shippedText("two-shifts-one-color"), "week", weekly));
  const of = (measure: string): number => measureOf(study.measures, "cell", measure)!.interval.mean;

  it("counts seconds a shot on shift only", () => {
    // Five days of two work shifts of 8 h are 80 of 168 hours; the cell runs on while its operator has a break [C].
    expect(of("seconds per shot") * of("shots per hour")).toBeCloseTo((3600 * 80) / 168, 0);
    const cycle = measureOf(study.measures, "side 1", "cycle time")!.interval.mean;
    expect(cycle).toBeGreaterThan(2 * study.ideal.secondsPerShot);
    expect(cycle).toBeLessThan(2 * of("seconds per shot") * 1.02);
  });

  it("gives the total, the range of single weeks and, apart from it, the interval of the mean", () => {
    const [all] = study.totals;
    expect(all?.parts.mean).toBeCloseTo(of("good parts per hour") * 168, 6);
    expect(all!.single!.high - all!.single!.low).toBeGreaterThan(2 * all!.parts.halfWidth!);
    const answer = oneLine(runAnswer(study));
    expect(answer).toMatch(/makes 8\d,\d{3} good parts in the week; 9 of 10 such weeks make 8\d,\d{3} to 8\d,\d{3}\./u);
    expect(answer).toMatch(/In the week 8\d,\d{3} ± [\d,]+ good parts: the mean of 4 weeks/u);
    expect(answer).toMatch(/On shift 48 % of the time: .* a shot every 6\.\d+ ± /u);
    expect(answer).not.toContain("a best case");
  });

  it("fills one row of totals.csv", () => {
    const [table] = totalsTables([study]);
    expect(table?.rows).toHaveLength(1);
    expect(table?.rows[0]?.slice(0, 3)).toEqual(["week", null, study.totals[0]?.parts.mean]);
    expect(totalsTables([studyOf(scenarioOf(shippedText("two-station"), "two-station"))])).toEqual([]);
  });
});

it("gives good parts by product, which add up to all", () => {
  const study = studyOf(scenarioOf(shippedText("two-molds"), "two-molds"));
  const of = (measure: string): number => measureOf(study.measures, "cell", measure)!.interval.mean;
  const [bottles, samples] = [of("good parts: cleaner bottle"), of("good parts: sample bottle")];
  // One station a product, so that each makes what its station makes.
  expect(bottles).toBe(measureOf(study.measures, "bottle side", "good parts per hour")!.interval.mean);
  expect(bottles + samples).toBeCloseTo(of("good parts per hour"), 9);
  expect(runAnswer(study)).toMatch(/^ {2}sample bottle +8\d\d.* an hour$/mu);
});

it("says once what was not entered, on the screen and in the report", () => {
  const study = studyOf(scenarioOf(shippedText("two-station"), "two-station"));
  const words = "No stops, no rejects: a best case (enter `stops`, `quality`).";
  expect(oneLine(runAnswer(study)).split(words)).toHaveLength(2);
  expect(studyFinding(study).join(" ").split(words)).toHaveLength(2);
  const others = ["stops-and-repairs", "slow-trimmer"].map((name) => scenarioOf(shippedText(name), name));
  expect(assumptionWords([study.scenario, ...others])).toEqual([
    `two-station: ${words}`,
    "stops-and-repairs: No rejects: a best case (enter `quality`).",
    "slow-trimmer: No stops: a best case (enter `stops`).",
  ]);
});

it("names in the report what it leaves unanswered", () => {
  const text = shippedText("two-station").replace(/^ {2}material:.*\n/mu, "");
  const finding = studyFinding(studyOf(scenarioOf(text, "no-material"))).join(" ");
  expect(finding).toContain("Not answered: the process window (give `product.material`).");
});

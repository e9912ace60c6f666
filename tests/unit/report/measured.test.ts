// The model against what was measured at the real cell.
import { describe, expect, it } from "vitest";
import { measuredChecks } from "#analysis/study/measuredChecks.ts";
import { runAnswer } from "#report/answers/runAnswer.ts";
import { measuredTables } from "#report/tables/asked/measuredTable.ts";
import type { MeasuredSpec, Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf as cell } from "../../support/cellScenario.ts";
import { scenarioOf, shippedText, studyOf } from "../../support/reported.ts";

const oneLine = (text: string): string => text.replaceAll(/\s+/gu, " ");
const two = scenarioOf(shippedText("two-station"), "two-station");
const studied = studyOf(two);
const answerTo = (measured: MeasuredSpec, scenario: Scenario = two): string =>
  oneLine(runAnswer(studyOf({ ...scenario, measured })));

describe("a measured number", () => {
  it("is compared with the closed form of a cell of fixed times", () => {
    // [C] One station makes a shot in 13.05 s: 1000 of them in the run, 2000 parts, 275.86 shots an hour.
    const fixed = { ...cell(cellText(1), "run.length=13050 s", "run.warmup=0 s"), measured: { shots: 250 / 3600 } };
    const [check] = studyOf(fixed).measured;
    expect(check?.model.mean).toBeCloseTo(3600 / 13.05, 9);
    expect(check?.difference).toBeCloseTo((250 * 13.05) / 3600 - 1, 9);
    expect(check?.verdict).toBe("slower");
    // 3600 s / 250 − 13.05 s = 1.35 s a shot, and 60 × (1 − 250 / 275.86) = 5.6 min an hour.
    const answer = oneLine(runAnswer(studyOf(fixed)));
    expect(answer).toContain("enter stops (5.6 min an hour would explain it), or check step times (1.35 s a shot more");
  });

  it("agrees within 1 %, or within the range of single runs", () => {
    const verdicts = [0.992, 1.008, 0.98, 1.02].map((ratio) => {
      const parts = (ratio * studied.measures[0]!.interval.mean) / 3600;
      return measuredChecks({ ...two, measured: { parts } }, studied.measures)[0]?.verdict;
    });
    expect(verdicts).toEqual(["agrees", "agrees", "slower", "faster"]);
    const stops = studyOf(scenarioOf(shippedText("stops-and-repairs"), "stops", ["run.warmup=5 min"]));
    const [low] = measuredChecks({ ...stops.scenario, measured: { parts: 1 } }, stops.measures);
    const inside = { parts: (low!.single!.low + 1) / 3600 };
    const [check] = measuredChecks({ ...stops.scenario, measured: inside }, stops.measures);
    expect(check?.difference).toBeLessThan(-0.01);
    expect(check?.verdict).toBe("agrees");
  });

  it("says both numbers, the difference, the verdict and what to do", () => {
    expect(answerTo({ shots: 563 / 3600 })).toMatch(
      /Measured 563 shots an hour, model 58\d[\d.]* ± [\d.]+: −3\.\d %, more than the model explains; enter stops \(2(?:\.\d)? min/u,
    );
    expect(answerTo({ parts: 1140 / 3600 })).toContain("would explain it) and rejects, or check step times");
    expect(answerTo({ cycle: 11.7 })).toMatch(
      /model 12\.3[\d.]* .*: −5\.\d %, .*the real cell takes 0\.6\d s a cycle less, first cooling/u,
    );
    expect(answerTo({ shots: 580 / 3600 })).toMatch(/−0\.\d %, agrees/u);
    const entered = scenarioOf(shippedText("stops-and-repairs"), "stops", ["run.warmup=5 min"]);
    expect(answerTo({ shots: 400 / 3600 }, entered)).toContain(
      "more than the model explains; check stops and step times",
    );
  });

  it("fills a row of measured.csv, and none where nothing was measured", () => {
    expect(measuredTables([studied])).toEqual([]);
    const [table] = measuredTables([studyOf({ ...two, measured: { shots: 0.1, cycle: 12 } })]);
    expect(table?.rows.map((row) => row.slice(0, 4))).toEqual([
      ["two-station", "shots per hour", "1/h", 360],
      ["two-station", "cycle time", "s", 12],
    ]);
  });
});

// What one change buys on the screen: at most eight rows, the rest and the changes without a difference in words.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { describe, expect, it } from "vitest";
import type { Study } from "#analysis/study/study.ts";
import { changesLines } from "#report/answers/changesLines.ts";
import { lostLines } from "#report/answers/lostLines.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

type Changes = NonNullable<Study["changes"]>;
type Change = Changes["rows"][number];

const scenario = scenarioOf(cellText(2));
const interval = (mean: number, halfWidth: number | null, count = 3): Change["gain"] => {
  return { count, mean, sd: halfWidth, halfWidth, confidence: 0.95 };
};

function changeOf(name: string, gain: Change["gain"], more: Partial<Change> = {}): Change {
  return {
    name,
    settings: [],
    options: "",
    good: 100 + gain.mean,
    gain,
    simultaneousHalfWidth: gain.halfWidth,
    relativeGain: gain.mean / 100,
    costPerThousand: null,
    paceSetter: { group: "plasticator", resources: ["plasticator"] },
    verdict: Math.abs(gain.mean) > (gain.halfWidth ?? 0) ? "more" : "no difference seen",
    ...more,
  };
}

function linesOf(rows: readonly Change[], more: Partial<Changes> = {}): readonly string[] {
  const seconds = scenario.run.length;
  const changes: Changes = { unit: "good parts per hour", currency: null, seconds, rows, notRun: [], ...more };
  return changesLines({ scenario, replications: 3, changes }, 80);
}

describe("what one change buys", () => {
  it("has a row for each gain, with interval, percent and what sets the pace then", () => {
    const lines = linesOf([changeOf("cooling −5 %", interval(4.3, 0.2)), changeOf("valve", interval(0.1, 0.2))]);
    expect(lines[0]).toBe("What one change buys, in good parts an hour:");
    expect(lines[2]).toMatch(/^cooling −5 % +\+4\.3 ± 0\.2 +\+4\.3 % +the screw$/u);
    expect(lines.slice(3)).toEqual(["No difference seen: valve.", ""]);
  });

  it("has at most eight rows, and names the others", () => {
    const rows = Array.from({ length: 10 }, (_, i) => changeOf(`change ${i}`, interval(20 - i, 0.5)));
    const lines = linesOf(rows);
    expect(lines.filter((line) => line.startsWith("change "))).toHaveLength(8);
    expect(lines).toContain("Smaller gains are in changes.csv: change 8, change 9.");
  });

  it("shows a loss with its sign, and the cost beside it", () => {
    const loss = changeOf("more", interval(-3, 0.5), { verdict: "less", costPerThousand: interval(1.5, 0.1) });
    const [, heads, row] = linesOf([loss], { currency: "EUR" });
    expect(heads).toContain("EUR a 1,000");
    expect(row).toMatch(/−3\.0 ± 0\.5 +−3\.0 % +\+1\.50 ± 0\.10/u);
  });

  it("says which changes were not run, with the bound of the critical path, and from how many pairs a gain comes", () => {
    const few = changeOf("cooling", interval(4, 0.2, 2));
    const lines = linesOf([few], {
      notRun: [
        { name: "screw", atMost: 0.002 },
        { name: "crew", atMost: null },
      ],
    });
    expect(lines).toContain("Gains from 2 pairs of replications of 120 min.");
    expect(lines).toContain("Not run, use --changes full: screw (at most 0.2 %), crew.");
    expect(linesOf([changeOf("cooling", interval(4, null, 1))])).toContain(
      "One pair of replications: the gains have no intervals.",
    );
  });

  it("is nothing without changes", () => {
    expect(changesLines({ scenario, replications: 3 }, 80)).toEqual([]);
    expect(linesOf([])).toEqual([]);
  });
});

describe("lost parts", () => {
  it("lead from the ideal cycle to the good parts made, small causes in one line", () => {
    const rows = [
      { cause: "jam", kind: "stop", parts: 20, halfWidth: 2, share: 0.8 },
      { cause: "varying times and waits", kind: "variation", parts: 5.01, halfWidth: 0.1, share: 0.2 },
      { cause: "causes acting together", kind: "together", parts: -0.01, halfWidth: 0.1, share: 0 },
    ] as const;
    const lost = { unit: "parts per hour", plannedSeconds: 7200, ideal: 125, made: 100, rows, notRun: [] } as const;
    const lines = lostLines({ scenario, lost, ideal: idealCycle(scenario) }, 80);
    expect(lines.map((line) => line.replaceAll(/ {2,}/gu, " | "))).toEqual([
      "Lost | parts an hour",
      "ideal cycle | 125",
      "jam | −20 ± 2 | 16 %",
      "varying times and waits | −5.01 ± 0.10 | 4.0 %",
      "good parts made | 100 | 80 %",
      "1 smaller cause is in lost.csv.",
      "",
    ]);
  });
});

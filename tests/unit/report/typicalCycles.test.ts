// Holds what a report shows of single cycles and of many stations against what the whole run says.
import { describe, expect, it } from "vitest";
import { firstShots } from "#analysis/study/firstShots.ts";
import type { Study } from "#analysis/study/study.ts";
import { cycleBins } from "#report/tables/cycleBins.ts";
import { waitingWords } from "#report/answers/findingWords.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import { runReport, scenarioOf, shippedText, studyOf } from "../../support/reported.ts";

describe("the few cycles of a report", () => {
  const slow = runReport("slow-trimmer", ["run.warmup=0 s", "run.length=4 h"]);
  const { study, shots } = slow.scenarios[0]!;
  const [leading] = study.leading;

  it("come later than the start where the start tells another story: a trimmer that fills its belt first", () => {
    expect(leading?.step).toBe("trim");
    expect(firstShots(study.scenario).timeline?.from).toBeLessThan(60);
    expect(shots.isFromTheStart).toBe(false);
    expect(shots.timeline!.from).toBeGreaterThan(1800);
    expect(shots.leadingShare).toBeGreaterThan(0.9);
    expect(reportPage(slow)).toContain(
      "The first cycles after the start are left out: in them trim does not bind yet.",
    );
  });

  it("come from the start where that is typical, and say nothing of it", () => {
    const usual = runReport("two-station");
    expect(usual.scenarios[0]!.shots.isFromTheStart).toBe(true);
    expect(reportPage(usual)).not.toMatch(/left out: in them|not typical/u);
  });

  it("say so where no stretch is typical", () => {
    const odd = { ...slow.scenarios[0]!, shots: { ...shots, leadingShare: 0.1 } };
    expect(reportPage({ ...slow, scenarios: [odd] })).toMatch(
      /These few cycles are not typical of the run: in them trim has 10 % of the path, over the whole run \d\d/u,
    );
  });
});

describe("twelve stations", () => {
  const text = shippedText("one-station").replace("- name: left", "- name: side\n    count: 12");
  const many: Study = studyOf(scenarioOf(text, "many", ["run.replications=2"]));
  const sides = Array.from({ length: 12 }, (_, i) => `side ${i + 1}`);

  it("stand in every table of the study in the order of their numbers", () => {
    for (const name of ["throughput", "time-by-state", "replications", "kpi", "window"]) {
      const table = studyTables([many]).find((each) => each.name === name)!;
      const at = table.columns.findIndex((column) => column.name === "resource" || column.name === "station");
      const told = [...new Set(table.rows.map((row) => row[at]))].filter((each) => String(each).startsWith("side"));
      expect([name, told]).toEqual([name, sides]);
    }
    expect(many.cycles.map(({ station }) => station)).toEqual(sides);
  });

  it("are served as before: ties go by code point, not by number", () => {
    expect(many.scenario.stations.slice(0, 3).map(({ name }) => name)).toEqual(["side 1", "side 10", "side 11"]);
  });

  it("are one in the sentence on waits", () => {
    expect(waitingWords(many)).toMatch(/^Longest waits: all 12 stations: awaiting melt \d\d %/u);
  });
});

describe("cycle times with a night among them", () => {
  const times = [...Array.from({ length: 200 }, (_, i) => 12 + (i % 10) / 10), 29_000];
  const seconds = Float64Array.from(times).toSorted();
  const spread = { min: 12, p05: 12, p25: 12.2, p50: 12.4, p75: 12.7, p95: 12.9, max: 29_000 };
  const bins = cycleBins([{ station: "left", seconds, spread }]);

  it("keep their shape, and count the night apart", () => {
    const [shown, beyond] = [bins.filter(({ isBeyond }) => !isBeyond), bins.filter(({ isBeyond }) => isBeyond)];
    expect(shown.reduce((sum, { count }) => sum + count, 0)).toBe(200);
    expect(shown.at(-1)!.to).toBeLessThan(14);
    expect(beyond).toMatchObject([{ count: 1, to: 29_000 }]);
  });
});

// Holds the typical cycles of a report to the whole run, and the order and bins of many stations to their numbers.
import { describe, expect, it } from "vitest";
import { firstShots } from "#analysis/study/firstShots.ts";
import type { Study } from "#analysis/study/study.ts";
import { countedTimes } from "../../support/countedTimes.ts";
import { cycleBins } from "#report/tables/cycleBins.ts";
import { waitingWords } from "#report/answers/findingWords.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import { runReport, scenarioOf, shippedText, studyOf } from "../../support/reported.ts";

describe("the few cycles of a report", () => {
  const slow = runReport("slow-trimmer", ["run.warmup=0 s", "run.length=4 h"]);
  const { study, shots } = slow.scenarios[0]!;
  const leading = study.bottleneck[0]?.steps[0];

  it("come later in the run when the start is not typical: a trimmer first fills its buffer", () => {
    expect(leading?.step).toBe("trim");
    expect(firstShots(study.scenario).timeline?.from).toBeLessThan(60);
    expect(shots.isFromTheStart).toBe(false);
    expect(shots.timeline!.from).toBeGreaterThan(1800);
    expect(shots.leadingShare).toBeGreaterThan(0.9);
    expect(reportPage(slow)).toContain(
      "The first cycles after the start are left out: trim does not yet set the pace in them.",
    );
  });

  it("come from the start when that is typical, without a remark", () => {
    const usual = runReport("two-station");
    expect(usual.scenarios[0]!.shots.isFromTheStart).toBe(true);
    expect(reportPage(usual)).not.toMatch(/left out: in them|not typical/u);
  });

  it("come with a remark when no part of the run is typical", () => {
    const odd = { ...slow.scenarios[0]!, shots: { ...shots, leadingShare: 0.1 } };
    expect(reportPage({ ...slow, scenarios: [odd] })).toMatch(
      /These few cycles are not typical of the run: trim has 10 % of the path, over the whole run \d\d/u,
    );
  });
});

describe("twelve stations", () => {
  const text = shippedText("one-station").replace("- name: left", "- name: side\n    count: 12");
  const many: Study = studyOf(scenarioOf(text, "many", ["run.replications=2"]));
  const sides = Array.from({ length: 12 }, (_, i) => `side ${i + 1}`);

  it("are in every table of the study in the order of their numbers", () => {
    for (const name of ["throughput", "time-by-state", "replications", "kpi", "window"]) {
      const table = studyTables([many]).find((each) => each.name === name)!;
      const at = table.columns.findIndex((column) => column.name === "resource" || column.name === "station");
      const listed = [...new Set(table.rows.map((row) => row[at]))].filter((each) => String(each).startsWith("side"));
      expect([name, listed]).toEqual([name, sides]);
    }
    expect(many.cycles.map(({ station }) => station)).toEqual(sides);
  });

  it("are served in the order of code points, not of their numbers", () => {
    expect(many.scenario.stations.slice(0, 3).map(({ name }) => name)).toEqual(["side 1", "side 10", "side 11"]);
  });

  it("are combined in the sentence on waits", () => {
    expect(waitingWords(many)).toMatch(/^Longest waits: all 12 stations: awaiting melt \d\d %/u);
  });
});

describe("cycle times with one that includes a night", () => {
  const times = [...Array.from({ length: 200 }, (_, i) => 12 + (i % 10) / 10), 29_000];
  const spread = { min: 12, p05: 12, p25: 12.2, p50: 12.4, p75: 12.7, p95: 12.9, max: 29_000 };
  const bins = cycleBins([{ station: "left", times: countedTimes(times), spread }]);

  it("have bins for the usual cycles, and a separate count beyond them", () => {
    const [shown, beyond] = [bins.filter(({ isBeyond }) => !isBeyond), bins.filter(({ isBeyond }) => isBeyond)];
    expect(shown.reduce((sum, { count }) => sum + count, 0)).toBe(200);
    expect(shown.at(-1)!.to).toBeLessThan(14);
    expect(beyond).toMatchObject([{ count: 1, to: 29_000 }]);
  });
});

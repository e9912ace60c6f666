// Holds rare stops to their known rate, and the notes beside an interval to the number of stops seen.
import { mean } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { compareStudies } from "#analysis/study/comparison.ts";
import { expectedStops } from "#analysis/study/rareStops.ts";
import { controlledStops, controlTasks } from "#analysis/study/stopControl.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { runNotes } from "#report/words/runNotes.ts";
import { throughputTable } from "#report/tables/studyTables.ts";
import { isLong } from "../../support/caseCount.ts";
import { coverage, experimentOf, experiments } from "../../support/stopExperiments.ts";
import { resultsOf } from "../../support/changedCell.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const band = (more: string): string =>
  `stops: [{ name: band, resource: plasticator, between: { exponential: 30 h }, repair: { lognormal: [40 min, 20 min] }, by: itself, step: finish${more} }]`;
const short = ["run.length=4 h", "run.replications=10", "run.warmup=1 min"];
const rare = scenarioOf(cellText(2, band("")), ...short);

function studyOf(...set: readonly string[]): Study {
  const outcome = runStudy(scenarioOf(cellText(2, band("")), ...short, ...set));
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

const answersOf = (scenario: typeof rare) =>
  Array.from({ length: scenario.run.replications }, (_, i) =>
    replicationRunner(scenario)({ replication: i + 1, scale: null }),
  );

describe("the interval with a rare stop of the screw", () => {
  // By hand from fixed times: a shot takes 6.525 s, in which the screw recharges, shifts twice and delivers for 6.3 s. By renewal
  // reward (Cox, Renewal Theory, 1962 [M]) each second of this work costs R / B = 40 min / 30 h of repair, in which nothing is made [C].
  const truth = (2 * 3600) / (6.525 + (6.3 * (40 / 60)) / 30);
  const found = experiments(rare, isLong ? 40 : 20);
  const rootError = (which: "plain" | "controlled"): number =>
    Math.sqrt(mean(found.map((each) => (each[which].mean - truth) * (each[which].mean - truth))));

  it("contains the closed form, which is missed without control where no stop occurs", () => {
    expect(
      coverage(
        truth,
        found.map(({ controlled }) => controlled),
      ),
    ).toBeGreaterThanOrEqual(0.93);
    const unseen = found.filter(({ plain }) => plain.halfWidth < 0.001 * truth);
    expect(unseen.length).toBeGreaterThan(0);
    for (const { plain, controlled } of unseen) {
      expect(plain.mean).toBeGreaterThan(1.01 * truth);
      expect(Math.abs(controlled.mean - truth)).toBeLessThan(0.002 * truth);
    }
  });

  it("is narrower, and nearer to the closed form", () => {
    const width = (which: "plain" | "controlled"): number => mean(found.map((each) => each[which].halfWidth));
    expect(width("controlled")).toBeLessThan(0.3 * width("plain"));
    expect(rootError("controlled")).toBeLessThan(0.1 * rootError("plain"));
  });

  it("keeps measures of one another: shots are half of the parts, seconds a shot their inverse", () => {
    const [parts, shots, pace] = ["good parts per hour", "shots per hour", "seconds per shot"].map(
      (measure) => experimentOf(rare, measure).controlled,
    );
    expect(parts!.mean / shots!.mean).toBeCloseTo(2, 2);
    expect(3600 / shots!.mean / pace!.mean).toBeCloseTo(1, 2);
  });
});

describe("a stop is controlled", () => {
  const controlled = (scenario: typeof rare): readonly number[] => controlledStops(scenario, answersOf(scenario));

  it("by 10 runs in which it comes often", () => {
    expect(controlled(rare)).toEqual([0]);
    const tasks = controlTasks(rare, answersOf(rare));
    expect(tasks).toHaveLength(10);
    expect(tasks[9]).toEqual({ replication: 10, scale: null, frequent: 0 });
    const often = tasks.map(replicationRunner(rare));
    expect(expectedStops(rare, often)[0]!.seen).toBeGreaterThanOrEqual(5);
  });

  it.each([
    [
      "that occurs often",
      scenarioOf(cellText(2, band("")), ...short, "stops.band.between=20 min", "stops.band.repair=10 s"),
    ],
    ["that begins fresh", scenarioOf(cellText(2, band(", start: fresh")), ...short)],
    ["of a single replication", scenarioOf(cellText(2, band("")), ...short, "run.replications=1")],
  ])("but not one %s", (_, scenario) => {
    expect(controlled(scenario)).toEqual([]);
  });
});

describe("the note", () => {
  it("names the stop, its number and the length that holds 3 in each of 10 replications", () => {
    const study = studyOf();
    const seen = study.stops[0]!.count.mean * 10;
    const [note] = runNotes(study);
    expect(note).toContain(`Few stops in 10 replications: band ${seen}. ± and means use their known rate`);
    // 3 intervals of 30 h of working time, of which an hour holds about 0.88 × 0.98 [C].
    const hours = Number(/A length of (\d+) h holds enough\./.exec(note!)?.[1]);
    expect(hours).toBeGreaterThan(95);
    expect(hours).toBeLessThan(115);
  });

  it("is absent where stops are frequent", () => {
    const study = studyOf("stops.band.between=20 min", "stops.band.repair=10 s");
    expect(study.rareStops).toBeNull();
    expect(runNotes(study)).toEqual([]);
  });

  it("says that ± may be too narrow where the stop cannot be controlled", () => {
    const fresh = runStudy(scenarioOf(cellText(2, band(", start: fresh")), ...short));
    if (fresh.kind === "stuck") throw new Error(fresh.issue.message);
    expect(runNotes(fresh.study)[0]).toContain("± may be too narrow.");
  });

  it("reports a warm-up above a tenth of the run", () => {
    expect(runNotes(studyOf("run.warmup=30 min")).at(-1)).toBe(
      "The warm-up takes 13 % of the run; make `run.length` longer.",
    );
  });
});

describe("tables and comparison", () => {
  it("name the controlled stops, and keep the spread of the replications", () => {
    const study = studyOf();
    const { columns, rows } = throughputTable([study]);
    const at = (name: string): number => columns.findIndex((column) => column.name === name);
    const output = rows.find((row) => row[at("resource")] === "cell" && row[at("measure")] === "good parts per hour")!;
    expect(output[at("control")]).toBe("band of plasticator");
    const { values } = measureOf(study.measures, "cell", "good parts per hour")!;
    expect(output[at("max")]).toBe(Math.max(...values.map(Number)));
    expect(output[at("mean")]).not.toBeCloseTo(mean(values.map(Number)), 3);
  });

  it("end the lost parts at the controlled output, with what the known rate adds", () => {
    const { study, lost } = resultsOf(cellText(2, band("")), short);
    const { mean: made } = measureOf(study.measures, "cell", "good parts per hour")!.interval;
    expect(lost!.made).toBeCloseTo(made, 9);
    expect(lost!.rows.reduce((sum, { parts }) => sum + parts, 0)).toBeCloseTo(lost!.ideal - made, 9);
    expect(lost!.rows.filter(({ kind }) => kind === "rare")).toHaveLength(1);
  });

  it("agree on the difference of two controlled cells", () => {
    const [base, other] = [studyOf(), studyOf("valve.shift=0.5 s")];
    const row = compareStudies(base, [other]).find(
      ({ resource, measure }) => resource === "cell" && measure === "good parts per hour",
    )!;
    const output = [other, base].map(
      (study) => measureOf(study.measures, "cell", "good parts per hour")!.interval.mean,
    );
    expect(row.difference).toBeCloseTo(output[0]! - output[1]!, 9);
    expect(row.halfWidth).toBeLessThan(0.02 * output[1]!);
  });
});

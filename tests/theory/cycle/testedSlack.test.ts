// Holds tested slack to the closed form of fixed times, and to cells whose text has the longer time.
import { expect, it } from "vitest";
import {
  beginSlackTest,
  concludeSlackTest,
  nextSlackRuns,
  withSlackAnswers,
  type TestedSlack,
} from "#analysis/bottleneck/slackTest.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import type { Study } from "#analysis/study/study.ts";
import { isLong } from "../../support/caseCount.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { scenarioOf as shortened, shippedText, studyOf } from "../../support/reported.ts";

function slackOf(study: Study): readonly TestedSlack[] {
  const run = replicationRunner(study.scenario);
  let test = beginSlackTest(study);
  for (let tasks = nextSlackRuns(test); tasks.length > 0; tasks = nextSlackRuns(test)) {
    test = withSlackAnswers(test, tasks.map(run));
  }
  return concludeSlackTest(test);
}

function rowOf(rows: readonly TestedSlack[], step: string): TestedSlack {
  const row = rows.find((each) => each.step === step);
  if (!row) throw new Error(`no row ${step}`);
  return row;
}

it("is period / 0.99 − period for a critical step, and the slack besides for another one", () => {
  // [C] One station makes a shot in 13.05 s, its screw needs 6.3 s of these: 1000 shots, of which 1 % are lost at 13.182 s a shot.
  // One shot more or less in 1000 moves that by 0.013 s.
  const rows = slackOf(studyOf(scenarioOf(cellText(1), "run.length=13050 s", "run.warmup=0 s")));
  const grown = 13.05 / 0.99 - 13.05;
  for (const step of ["cool", "drop", "remove"]) {
    expect(Math.abs(rowOf(rows, step).seconds!.mean - grown)).toBeLessThan(0.014);
  }
  expect(Math.abs(rowOf(rows, "recharge").seconds!.mean - 6.75 - grown)).toBeLessThan(0.014 + 0.005 * 6.9);
  expect(rows.at(-1)?.step).toBe("recharge");
});

it.runIf(isLong)("agrees with runs of the cell whose text has the longer time, where the order is not fixed", () => {
  const text = shippedText("slow-trimmer");
  const study = studyOf(shortened(text, "slow-trimmer", ["run.warmup=10 min"]));
  const output = ({ measures }: Study): readonly (number | null)[] =>
    measureOf(measures, "cell", "good parts per hour")!.values;
  const loss = (seconds: number): number => {
    const set = ["run.warmup=10 min", `takeaway.trim.time=+${seconds} s`];
    const longer = output(studyOf(shortened(text, "slow-trimmer", set)));
    const losses = output(study).map((base, i) => 1 - longer[i]! / base!);
    return losses.reduce((sum, each) => sum + each, 0) / losses.length;
  };
  const { seconds } = rowOf(slackOf(study), "trim");
  expect(loss(seconds!.mean * 0.7)).toBeLessThan(0.01);
  expect(loss(seconds!.mean * 1.3)).toBeGreaterThan(0.01);
});

it.runIf(isLong)("says how far it went where output does not fall", () => {
  const study = studyOf(shortened(shippedText("slow-trimmer"), "slow-trimmer"));
  const row = rowOf(slackOf(study), "belt");
  expect(row.seconds).toBeNull();
  expect(row.atLeast).toBeCloseTo(2 * study.ideal.secondsPerShot, 2);
});

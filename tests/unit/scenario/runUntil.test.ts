// The end of a run as a local date and time.
import { expect, it } from "vitest";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { shippedText } from "../../support/reported.ts";

const week = (...set: readonly string[]) =>
  readScenario(shippedText("two-shifts-one-color"), { name: "week", file: "week.yaml", set });

it.each([
  ["2026-03-25 22:00", 2 * 24 + 22],
  // The clocks go on at 02:00 on the 29th: that day has an hour less.
  ["2026-03-29 06:00", 6 * 24 + 5],
  ["2026-03-23 06:01", 6 + 1 / 60],
])("until %s: the run takes %s h", (until, hours) => {
  const { scenario, issues } = week("run.length=null", `run.until=${until}`);
  expect(issues.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(scenario?.run.length).toBeCloseTo(hours * 3600, 6);
});

it.each([
  [["run.until=2026-03-25 22:00"], "run-until"],
  [["run.length=null", "run.until=2026-03-23 00:00"], "run-until"],
  [["run.length=null", "run.until=2026-02-30 10:00"], "wrong-form"],
  [["run.length=null", "run.until=friday"], "wrong-form"],
  [["run.length=null", "run.until=2026-03-25 22:00", "calendar=null", "changes=null"], "run-until"],
])("%j is refused with %s", (set, code) => {
  const { scenario, issues } = week(...set);
  expect(scenario).toBeUndefined();
  expect(issues.filter(({ severity }) => severity === "error").map((issue) => issue.code)).toEqual([code]);
});

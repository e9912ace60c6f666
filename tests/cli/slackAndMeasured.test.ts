// The options --slack and --measured of the command run.
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { expect, it } from "vitest";
import { cellText } from "../support/cellScenario.ts";
import { callBlowcell, newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
writeFileSync(path.join(folder, "one.yaml"), cellText(1));
const run = ["run", "one.yaml", "--replications", "2", "--changes", "off", "--sensitivity", "off"];
const call = (...args: readonly string[]) => callHere([...run, ...args], { folder });

function rowsOf(out: string, name: string): readonly Readonly<Record<string, string>>[] {
  return parse(readFileSync(path.join(folder, out, name)), { columns: true }) as readonly Record<string, string>[];
}

it("--slack writes slack.csv, the screen and the report, the same for any number of workers", async () => {
  const { code, output } = await call("--slack", "--out", "a");
  expect(code).toBe(0);
  expect(output).toMatch(/before output falls by 1 % \(tested\):\n(?: {2}.*\n)* {2}cooling, station 1 +0\.1\d* /u);
  // [C] 13.05 s / 0.99 − 13.05 s = 0.13 s; a run of 8 h has 2,200 shots, one of which is 0.006 s.
  const cool = rowsOf("a", "slack.csv").find(({ step }) => step === "cool");
  expect(Math.abs(Number(cool?.["tested_slack_s"]) - 0.132)).toBeLessThan(0.012);
  expect(readFileSync(path.join(folder, "a/report.html"), "utf8")).toContain("Tested slack");
  callBlowcell([...run, "--slack", "--jobs", "2", "--out", "b"], { folder });
  expect(rowsOf("b", "slack.csv")).toEqual(rowsOf("a", "slack.csv"));
});

it("--measured compares with the model, and names what it needs", async () => {
  const { code, output } = await call("--measured", "250 shots per h", "--out", "c");
  expect(code).toBe(0);
  expect(output).toMatch(/^Measured +250 shots an hour, model 27\d/mu);
  expect(rowsOf("c", "measured.csv")).toMatchObject([
    { measure: "shots per hour", measured: "250", verdict: "slower" },
  ]);
  expect(readFileSync(path.join(folder, "c/report.html"), "utf8")).toContain("Measured: 250 shots an hour");
  const { code: refused, errors } = await call("--measured", "250 per h");
  expect(refused).toBe(2);
  expect(errors).toContain("--measured: error: The measured number does not say what it counts.");
  expect(errors).toContain("Write shots, parts or cycle beside the number.");
  expect((await call("--measured", "250 shots")).errors).toContain("did you mean `250 per h`?");
});

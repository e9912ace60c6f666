// The commands sweep and merge.
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { isLong } from "../support/caseCount.ts";
import { cellText } from "../support/cellScenario.ts";
import { builtCommand, callBlowcell, newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
writeFileSync(path.join(folder, "two.yaml"), cellText(2));
writeFileSync(
  path.join(folder, "spread.yaml"),
  cellText(2).replace("cool: 8 s", "cool: { triangular: [7 s, 8 s, 10 s] }"),
);
const call = (...args: readonly string[]) => callHere(args, { folder });
const sweep = (file: string, ...args: readonly string[]) => call("sweep", file, "--jobs", "1", ...args);
const inFolder = (...names: readonly string[]) => path.join(folder, ...names);

type Row = Readonly<Record<string, string>>;

function rowsOf(out: string): readonly Row[] {
  return parse(readFileSync(inFolder(out, "sweep.csv")), { columns: true }) as readonly Row[];
}

/** The values of one measure of the cell, in the order of the points. */
function valuesOf(out: string, measure: string): readonly number[] {
  const rows = rowsOf(out).filter((row) => row["resource"] === "cell" && row["measure"] === measure);
  return rows.map((row) => Number(row["mean"]));
}

function filesOf(out: string): ReadonlyMap<string, string> {
  // A kill during the last moment leaves a temporary folder.
  const names = readdirSync(inFolder(out)).filter((name) => !name.startsWith(".blowcell-"));
  return new Map(names.map((name) => [name, readFileSync(inFolder(out, name), "utf8")]));
}

const cool = "stations.*.steps.cool";

describe("the points of a sweep", () => {
  it("are all combinations, with exact decimals in columns of the varied paths", async () => {
    const { code, output } = await sweep(
      "two.yaml",
      "--vary",
      `${cool}=7.7..8.3 s by 0.1 s`,
      "--vary",
      "stations.count=1,2",
      "--out",
      "all",
    );
    expect(code).toBe(0);
    expect(output).toContain("14 points, 3 replications of 120 min each, with common random numbers");
    const rows = rowsOf("all").filter(
      ({ measure, resource }) => measure === "good parts per hour" && resource === "cell",
    );
    const [values, counts] = [`${cool}_s`, "stations.count"].map((name) => rows.map((row) => row[name]));
    const steps = ["7.7", "7.8", "7.9", "8", "8.1", "8.2", "8.3"];
    expect(values).toEqual(steps.flatMap((value) => [value, value]));
    expect(counts).toEqual(steps.flatMap(() => ["1", "2"]));
    expect(Object.keys(rows[0] ?? {})).toEqual([
      "scenario",
      "variant",
      `${cool}_s`,
      "stations.count",
      "resource",
      "measure",
      "unit",
      "mean",
      "half_width_95",
    ]);
  });

  it("make exactly the ideal cycle where all times are fixed", async () => {
    await sweep("two.yaml", "--vary", `${cool}=1..8 s/8`, "--out", "fixed");
    // [C] The circuit of a station takes shift, drop, 3 s and cooling for two shots; that of the screw recharge, drop and two shifts.
    const circuits = [1, 2, 3, 4, 5, 6, 7, 8].map((seconds) => Math.max(4 + 1.8 + 0.5, (0.25 + 1.8 + 3 + seconds) / 2));
    const [run, ideal] = ["seconds per shot", "ideal seconds per shot"].map((measure) => valuesOf("fixed", measure));
    expect(ideal).toHaveLength(8);
    // A count in 110 min is at most one shot more or less.
    ideal?.forEach((seconds, i) => expect(Math.abs(1 / (run?.[i] ?? NaN) - 1 / seconds)).toBeLessThan(1 / 6600));
    ideal?.forEach((seconds, i) => expect(seconds).toBeCloseTo(circuits[i] ?? NaN, 9));
  });

  it("move distributions with their spread, and a point equals the run with the same setting", async () => {
    expect((await sweep("spread.yaml", "--vary", `${cool}=-1 s..+1 s by 1 s`, "--out", "moved")).code).toBe(0);
    expect(new Set(rowsOf("moved").map((row) => row[`${cool}_shift_s`]))).toEqual(new Set(["-1", "0", "1"]));
    await call("run", "spread.yaml", "--set", `${cool}=+1 s`, "--out", "moved-run");
    const run = parse(readFileSync(inFolder("moved-run/throughput.csv")), { columns: true }) as readonly Row[];
    const ofPoint = rowsOf("moved").filter(
      (row) => row[`${cool}_shift_s`] === "1" && !row["measure"]?.startsWith("ideal"),
    );
    const cells = ({ resource, measure, mean, half_width_95: half }: Row) => [resource, measure, mean, half];
    expect(ofPoint.filter((row) => !row["measure"]?.endsWith("at mean times")).map(cells)).toEqual(run.map(cells));
  });

  it("show where the number at mean times is only a bound", async () => {
    const args = ["--vary", "stations.count=2,5", "--replications", "2", "--length", "1 h", "--out", "bound"];
    const { output } = await callHere([
      "sweep",
      "scenarios/one-operator-four-molds.yaml",
      ...args.slice(0, -1),
      inFolder("bound"),
    ]);
    expect(output).toContain("≤ and ≥: only a bound, because no repeating order of stations is found.");
    expect(output).toMatch(/^5 +.* ≤ [\d,.]+ .* ≥ [\d.]+$/mu);
    expect(output).toMatch(/^2 +.* \*$/mu);
  });

  it("that are refused are listed with their errors, and the others run", async () => {
    const { code, errors } = await sweep("two.yaml", "--vary", "stations.*.cavities=0,2", "--out", "refused");
    expect(code).toBe(2);
    expect(errors).toContain(
      "--vary stations.*.cavities: error: At the point stations.*.cavities=0: 0 is outside 1 to 12.",
    );
    expect(new Set(rowsOf("refused").map((row) => row["stations.*.cavities"]))).toEqual(new Set(["2"]));
    expect(readFileSync(inFolder("refused/report.html"), "utf8")).toContain("0 is outside 1 to 12.");
  });

  it.each([
    [["--vary", "stations.count"], "is not a path, an equals sign and values"],
    [["--vary", `${cool}=7..9 s by 0 s`], "The step of the range is 0."],
    [["--vary", `${cool}=7..9 s by 1 min`], "The range has the units s and min."],
    [["--vary", `${cool}=7..9 s`], "is not a range"],
    [["--vary", `${cool}=7 s,`], "A value is missing."],
    [["--vary", `${cool}=7 s,7 s`], "The value 7 s is named twice."],
    [["--vary", `${cool}=7..9 s/1`], "has no two ends"],
    [["--vary", `${cool}=0..9 s by 0.0001 s`], "There are 90001 points, more than 10000."],
    [["--vary", `${cool}=1..9 s/200`, "--vary", "stations.count=1..200 by 1"], "There are 40000 points"],
    [["--vary", "stations.count=1,2", "--vary", "stations.count=3"], "A path is varied twice."],
    [["--vary", "stations.count=1,2", "--shard", "3/2"], `"3/2" is not a share of the points.`],
    [[], "The sweep varies nothing."],
  ])("are refused as a whole: %j", async (args, message) => {
    const { code, output, errors } = await sweep("two.yaml", ...args, "--out", "none");
    expect([code, output]).toEqual([2, ""]);
    expect(errors).toContain(message);
    expect(existsSync(inFolder("none"))).toBe(false);
  });

  it("write nothing where all are refused", async () => {
    const { code, errors } = await sweep("two.yaml", "--vary", "stations.*.steps.kool=7 s,8 s", "--out", "none");
    expect(code).toBe(2);
    expect(errors).toContain("Did you mean `cool`?");
    expect(errors).toContain("All 2 points of stations.*.steps.kool are refused; nothing is written");
    expect(existsSync(inFolder("none"))).toBe(false);
  });
});

const grid = ["--vary", `${cool}=-1 s..+1 s by 0.25 s`, "--vary", "stations.count=1,2"];

await sweep("spread.yaml", ...grid, "--out", "whole");

describe("a sweep that is divided or stopped", () => {
  it("has the same files for any number of workers and for merged shares", async () => {
    callBlowcell(["sweep", "spread.yaml", "--jobs", "2", ...grid, "--out", "workers"], { folder });
    expect(filesOf("workers")).toEqual(filesOf("whole"));
    const shares = ["share0", "share1", "share2"];
    for (const [i, share] of shares.entries())
      expect((await sweep("spread.yaml", ...grid, "--shard", `${i + 1}/3`, "--out", share)).code).toBe(0);
    expect((await call("merge", ...shares, "--out", "merged")).code).toBe(0);
    expect(filesOf("merged")).toEqual(filesOf("whole"));
    const { code, errors } = await call("merge", "share0", "share2", "--out", "part");
    expect(code).toBe(2);
    expect(errors).toContain("6 of 18 points are missing, the first is point 2");
    expect((await call("merge", "share0", "moved", "--out", "part")).errors).toContain(
      "moved has a share of another sweep",
    );
    expect((await call("merge", "share0", "nowhere", "--out", "part")).errors).toContain(
      "nowhere has no share of a sweep",
    );
  });

  it("keeps finished points of the same scenario only, and never a damaged line", async () => {
    const [plan = "", first = "", second = "", third = ""] = readFileSync(inFolder("whole/sweep.jsonl"), "utf8").split(
      "\n",
    );
    const journal = [plan, first, second.replace(/"mean":\d/u, '"mean":9'), third.slice(0, 200)].join("\n");
    for (const out of ["damaged", "fewer", "edited", "other"]) {
      mkdirSync(inFolder(out));
      writeFileSync(inFolder(out, "sweep.jsonl"), journal);
    }
    expect((await sweep("spread.yaml", ...grid, "--out", "damaged")).errors).toContain("1 of 18 points are kept");
    const fewer = ["--vary", `${cool}=-1 s,0 s`, "--vary", "stations.count=1,2"];
    expect((await sweep("spread.yaml", ...fewer, "--out", "fewer")).errors).toContain("1 of 4 points are kept");
    const written = readFileSync(inFolder("spread.yaml"), "utf8");
    writeFileSync(inFolder("spread.yaml"), written.replace("10 s]", "11 s]"));
    expect((await sweep("spread.yaml", ...grid, "--out", "edited")).errors).not.toContain("are kept");
    writeFileSync(inFolder("spread.yaml"), written);
    const other = await sweep("two.yaml", ...grid, "--out", "other");
    expect([other.code, other.errors]).toEqual([
      2,
      expect.stringContaining("other holds the results of a different run"),
    ]);
    expect(readFileSync(inFolder("other/sweep.jsonl"), "utf8")).toBe(journal);
    const replaced = await sweep("two.yaml", ...fewer, "--out", "other", "--replace");
    expect([replaced.code, replaced.errors.includes("are kept")]).toEqual([0, false]);
    expect(filesOf("damaged")).toEqual(filesOf("whole"));
    expect((await sweep("two.yaml", ...grid, "--out", "whole")).errors).toContain(
      "whole holds the results of a different run",
    );
    expect((await sweep("spread.yaml", ...grid, "--out", "whole")).errors).toContain("18 of 18 points are kept");
    expect((await sweep("spread.yaml", ...grid, "--out", "whole", "--replace")).errors).not.toContain("are kept");
  });

  it.runIf(isLong)("is finished after kills with the same bytes", { timeout: 7_200_000 }, async () => {
    const begun = performance.now();
    callBlowcell(["sweep", "spread.yaml", "--jobs", "1", ...grid, "--out", "timed"], { folder });
    const whole = performance.now() - begun;
    // `KILLS=1000` sets another number.
    const kills = Number(process.env["KILLS"] ?? 100);
    let continued = 0;
    for (let i = 0; i < kills; i += 1) {
      const out = `killed${i}`;
      await killedSweep(out, whole * Math.random());
      const kept = pointsIn(out);
      const { code, errors } = await sweep("spread.yaml", ...grid, "--out", out);
      expect(code).toBe(0);
      expect(/(\d+) of 18 points are kept/u.exec(errors)?.[1] ?? "0").toBe(String(kept));
      expect(filesOf(out)).toEqual(filesOf("whole"));
      continued += kept > 0 && kept < 18 ? 1 : 0;
    }
    expect(continued).toBeGreaterThan(kills / 10);
  });
});

function pointsIn(out: string): number {
  const journal = inFolder(out, "sweep.jsonl");
  return existsSync(journal) ? (readFileSync(journal, "utf8").match(/^.*"kind":"point".*\}$/gmu)?.length ?? 0) : 0;
}

function killedSweep(out: string, milliseconds: number): Promise<void> {
  const child = spawn(process.execPath, [builtCommand, "sweep", "spread.yaml", "--jobs", "1", ...grid, "--out", out], {
    cwd: folder,
    stdio: "ignore",
  });
  const timer = setTimeout(() => child.kill("SIGKILL"), milliseconds);
  return new Promise((resolve) => {
    child.on("close", () => {
      clearTimeout(timer);
      resolve();
    });
  });
}

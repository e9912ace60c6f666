// The command `promise`, called as a user does.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { cellText } from "../support/cellScenario.ts";
import { callBlowcell, newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
const write = (name: string, text: string): void => writeFileSync(path.join(folder, name), text);
const vary = cellText(1).replace("cool: 8 s", "cool: { gamma: [8 s, 1 s] }");
write("one.yaml", vary);
const call = (...args: readonly string[]) => callHere(["promise", "one.yaml", ...args], { folder });

function rowsOf(out: string, name: string): readonly Readonly<Record<string, string>>[] {
  return parse(readFileSync(path.join(folder, out, name)), { columns: true }) as readonly Record<string, string>[];
}

const inOneLine = (output: string): string => output.replaceAll(/\s+/gu, " ");

const early = ["--shifts", "1 x 8 h, mon-fri", "--start", "2026-11-30 06:00"];

describe("promise", () => {
  it("says yes with chance, dates and slack, writes its files and ends with 0", async () => {
    const { code, output } = await call("--order", "1000 parts", "--due", "Tuesday 14:00", ...early, "--out", "yes");
    expect(code).toBe(0);
    expect(inOneLine(output)).toMatch(
      /^Yes: the order is done by Tue 2026-12-01 14:00 with a chance of 100 % \(150 of 150 runs; 95 % confidence:/u,
    );
    expect(output).toMatch(/^Slack: 95 % of the runs are done 1 d \d/mu);
    expect(output).toMatch(/^95 % +Mon 2026-11-30 \d\d:\d\d +\d\d:\d\d to \d\d:\d\d$/mu);
    const lines = output.trimEnd().split("\n");
    expect(lines.length).toBeLessThanOrEqual(40);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    expect(readdirSync(path.join(folder, "yes")).toSorted()).toEqual([
      "datapackage.json",
      "finish.csv",
      "promise.csv",
      "report.html",
    ]);
    const [time] = rowsOf("yes", "promise.csv");
    expect(time).toMatchObject({ quantity: "time to finish", unit: "h", chance_by_due: "1", verdict: "yes" });
    expect(time?.["due"]).toBe("Tue 2026-12-01 14:00");
    const finishes = rowsOf("yes", "finish.csv").map(({ finish_s: seconds }) => Number(seconds));
    expect(finishes).toHaveLength(150);
    // [C] The smallest value that at least the share of the runs does not exceed.
    const rank = (share: number) => finishes.toSorted((a, b) => a - b)[Math.ceil(share * 150) - 1]! / 3600;
    for (const [name, share] of [
      ["p50", 0.5],
      ["p80", 0.8],
      ["p95", 0.95],
    ] as const) {
      expect(Number(time?.[name])).toBeCloseTo(rank(share), 6);
    }
  });

  it("says no with what would make it fit, and ends with 1", async () => {
    const { code, output } = await call("--order", "1000 parts", "--due", "1 h", "--replications", "20", "--out", "no");
    expect(code).toBe(1);
    expect(inOneLine(output)).toMatch(
      /^No: the order is done by 1 h after the start with a chance of 0 % \(0 of 20 runs; 95 % confidence: 0 % to 16 %\);/u,
    );
    expect(output).toContain("Late: 95 % of the runs are done only");
    expect(output).toContain("What would make it fit (same random numbers");
    expect(rowsOf("no", "promise-levers.csv").length).toBeGreaterThan(0);
  });

  it("is undecided where the interval holds the wanted chance, and ends with 3", async () => {
    const time = Number(rowsOf("yes", "promise.csv")[0]?.["p50"]);
    const due = ["--due", `${time} h`, "--replications", "40", "--chance", "50 %"];
    const { code, output } = await call("--order", "1000 parts", ...due, "--out", "open");
    expect(code).toBe(3);
    expect(inOneLine(output)).toMatch(/^Undecided: .*\(\d+ of 40 runs;/u);
    expect(output).toContain("Leave out `--replications`");
  });

  it("gives dates alone without a due date", async () => {
    const { code, output } = await call("--order", "500 parts", "--out", "dates");
    expect(code).toBe(0);
    expect(output).toMatch(/^500 parts: half of 100 runs are done by /u);
    expect(rowsOf("dates", "promise.csv")[0]).toMatchObject({ due: "", chance_by_due: "", verdict: "" });
  });

  it("gives the same bytes for any number of workers", async () => {
    const order = ["--order", "60000 parts", "--due", "5 d", "--replications", "24", "--chance", "50 %", "--verbose"];
    const alone = await call(...order, "--jobs", "1", "--out", "alone");
    const shared = callBlowcell(["promise", "one.yaml", ...order, "--jobs", "2", "--out", "shared"], { folder });
    expect([alone.code, shared.code]).toEqual([0, 0]);
    expect(alone.errors).toContain("all work in one thread");
    expect(shared.errors).toContain("2 workers did");
    const filesOf = (out: string) =>
      readdirSync(path.join(folder, out)).map((name) => [name, readFileSync(path.join(folder, out, name), "utf8")]);
    expect(filesOf("shared")).toEqual(filesOf("alone"));
  });

  it("prints the tables as JSON and nothing else", async () => {
    const { code, output } = await call("--order", "500 parts", "--due", "2 h", "--replications", "20", "--json");
    const { command, tables } = JSON.parse(output) as {
      readonly command: string;
      readonly tables: Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>;
    };
    expect(command).toBe("promise");
    expect(tables["finish"]).toHaveLength(20);
    expect(tables["promise"]?.[0]?.["chance_wanted"]).toBe(0.95);
    expect([0, 1, 3]).toContain(code);
  });
});

describe("promise refuses", () => {
  it.each([
    [[], "Nothing is ordered.", 2],
    [["--order", "100 parts", "--due", "Friday 14:00"], "A due date needs a calendar.", 2],
    [["--order", "100 parts", "--due", "2 h", "--chance", "100 %"], "A chance of 100 % is never decided by runs.", 2],
    [["--order", "900000000 parts"], "takes longer than two years", 1],
    [["--order", "100 parts", "--set", "quality={ rejects: 100 % }"], "can never be done", 1],
  ] as const)("%j", async (args, message, code) => {
    const { errors, code: ended, output } = await call(...args);
    expect(errors).toContain(message);
    expect(output).toBe("");
    expect(ended).toBe(code);
  });

  it("to work without a calendar, and names the option that gives one", async () => {
    expect((await call("--order", "100 parts", "--due", "Friday 14:00")).errors).toContain(
      '--shifts "2 x 8 h, mon-fri"',
    );
  });
});

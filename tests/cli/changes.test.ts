// What one change buys, as a user gets it: the rows, their options that repeat them, and the depth.
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { firstCases } from "../support/caseCount.ts";
import { shippedText } from "../support/reported.ts";
import { newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();

type Row = Readonly<Record<string, string>>;

function rowsOf(out: string, table: string): readonly Row[] {
  return parse(readFileSync(path.join(folder, out, `${table}.csv`), "utf8"), { columns: true, bom: true });
}

async function run(file: string, out: string, ...more: readonly string[]): Promise<string> {
  const { code, output, errors } = await callHere(["run", file, "--out", out, ...more], { folder });
  expect(code, errors).toBe(0);
  return output;
}

/** The options of `blowcell run FILE --set "a" --replications 4`. */
const optionsOf = (call: string): readonly string[] =>
  [...call.replace("blowcell run FILE ", "").matchAll(/"([^"]*)"|(\S+)/gu)].map(
    ([, quoted, plain]) => quoted ?? plain ?? "",
  );

function goodParts(out: string): Row {
  return rowsOf(out, "throughput").find((row) => row.resource === "cell" && row.measure === "good parts per hour")!;
}

/** Mean of the replications, without control variates. */
function plainMean(out: string): number {
  const values = rowsOf(out, "replications")
    .filter((row) => row.resource === "cell" && row.measure === "good parts per hour")
    .map(({ value }) => Number(value));
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Many runs on a busy machine. */
const longest = 300_000;

describe("--changes", () => {
  const calls: readonly (readonly string[])[] = [
    ["two-station", "run.length=1 h"],
    ["stops-and-repairs", "run.length=3 h", "run.replications=5"],
    ["rigid-pvc", "run.length=1 h"],
    // Too long for six changes with four pairs: the pairs are shorter.
    ["small-screw", "run.length=30 d", "run.replications=2"],
    ["one-operator-four-molds", "run.length=1 h"],
    ["canister-accumulator-head", "run.length=2 h"],
    ["two-shifts-one-color", "run.length=3 d", "run.replications=5"],
  ];
  it.each(firstCases(calls, 1).map(([name = "", ...settings]) => ({ name, settings })))(
    "prints the call that repeats a row of $name digit for digit",
    async ({ name, settings }) => {
      const file = `${name}.yaml`;
      writeFileSync(path.join(folder, file), shippedText(name));
      const set = settings.flatMap((setting) => ["--set", setting]);
      await run(file, name, ...set);
      const rows = rowsOf(name, "changes");
      expect(rows.length).toBeGreaterThan(3);
      for (const [i, row] of rows.entries()) {
        const out = `${name}-${i}`;
        await run(file, out, ...set, "--changes", "off", ...optionsOf(row.repeat!));
        const again = goodParts(out);
        expect(again.replications).toBe(row.pairs);
        // With a calendar of three days an hour is a part of the run, and both are rounded when they are written.
        if (row.counted === "good parts in the run") {
          expect(Number(again.mean) * 72, row.change).toBeCloseTo(Number(row.good_parts), 4);
        } else if (again.control !== "") {
          // The gain is that of the plain means; rare stops are controlled in the mean of the run only.
          expect(plainMean(out), row.change).toBeCloseTo(Number(row.good_parts), 5);
        } else expect(again.mean, row.change).toBe(row.good_parts);
      }
    },
    longest,
  );

  it("runs all replications of all changes where they are wanted, and none where not", async () => {
    const full = await run("two-station.yaml", "full", "--set", "run.length=1 h", "--changes", "full");
    expect(full).toContain("What one change buys");
    expect(new Set(rowsOf("full", "changes").map(({ pairs }) => pairs))).toEqual(new Set(["20"]));
    const off = await run("two-station.yaml", "off", "--set", "run.length=1 h", "--changes", "off");
    expect(off).not.toContain("What one change buys");
    expect(() => rowsOf("off", "changes")).toThrow("ENOENT");
  });
});

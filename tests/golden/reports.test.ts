// Holds the shipped reports to the output of `npm start`, byte for byte.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { isLong } from "../support/caseCount.ts";
import { callBlowcell, newFolder, projectFolder } from "../cli/callBlowcell.ts";

const packageText = readFileSync(path.join(projectFolder, "package.json"), "utf8");
const { scripts } = JSON.parse(packageText) as { readonly scripts: { readonly start: string } };
const startCall = scripts.start.split(/dist\/cli\/blowcell\.js\s+/)[1]?.split(/\s+/) ?? [];
const shipped = path.join(projectFolder, "reports/one-station-against-two-station");

/** Name and bytes of every file. */
function filesIn(folder: string): Readonly<Record<string, string>> {
  return Object.fromEntries(
    readdirSync(folder).map((name) => [name, readFileSync(path.join(folder, name)).toString("latin1")]),
  );
}

describe("the shipped reports", () => {
  const folder = newFolder();
  const { code } = callBlowcell([...startCall, "--out", folder]);

  it("are those of the scenarios that npm start compares", () => {
    expect(code).toBe(0);
    expect(path.basename(shipped)).toBe(
      startCall
        .slice(1)
        .map((file) => path.basename(file, ".yaml"))
        .join("-against-"),
    );
  });

  it("have the same names as the regenerated files", () => {
    expect(readdirSync(folder)).toEqual(readdirSync(shipped));
    expect(readdirSync(folder)).toContain("comparison.csv");
  });

  it("have the same bytes", () => {
    expect(filesIn(folder)).toEqual(filesIn(shipped));
  });

  it.runIf(isLong)("differ for another seed", () => {
    const other = newFolder();
    callBlowcell([...startCall, "--out", other, "--seed", "other"]);
    expect(filesIn(other)["throughput.csv"]).not.toBe(filesIn(shipped)["throughput.csv"]);
  });
});

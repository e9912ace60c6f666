// Distributions with values from a column of a CSV file, and the place of faults in that file.
import { describe, expect, it } from "vitest";
import { readScenario, type ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { twoStations } from "./validTexts.ts";

function read(csv: string | undefined, column: string): ScenarioReading {
  const cool = "cool: { triangular: [7.0 s, 7.5 s, 9.0 s] }";
  const text = twoStations.replace(cool, `cool: { empirical: { file: log.csv, ${column} } }`);
  const readText = (path: string): string | undefined => (path === "log.csv" ? csv : undefined);
  return readScenario(text, { name: "cell", file: "cell.yaml", readText });
}

describe("a column is read", () => {
  it.each<[string, string, string]>([
    ["with the unit in its name", "shot,cool_s\n1,7.5\n2,8\n", "column: cool_s"],
    ["with the unit in brackets", "cool [s],shot\n7.5,1\n8,2\n", "column: 'cool [s]'"],
    ["with units in its cells", "cool\n7.5 s\n8 s\n", "column: cool"],
    ["with the unit in the scenario", "cool\n7.5\n8\n", "column: cool, unit: s"],
    ["with another unit", "cool\n7500\n8000\n", "column: cool, unit: ms"],
    [
      "with semicolons, quotes, a byte order mark and gaps",
      '\uFEFF"cool_s";b\r\n"7.5";x\r\n\r\n8;z\r\n',
      "column: cool_s",
    ],
  ])("%s", (_, csv, column) => {
    const { scenario, issues } = read(csv, column);
    expect(issues).toEqual([]);
    const right = scenario?.stations.find((station) => station.name === "right");
    expect(right?.cool).toEqual({ kind: "empirical", values: [7.5, 8] });
  });
});

describe("empty cells of a column", () => {
  it("are left out with one warning that has their number and the first line", () => {
    const { scenario, issues } = read("cool_s,b\n7.5,x\n,y\n8,z\n,y\n", "column: cool_s");
    expect(issues).toEqual([
      expect.objectContaining({
        code: "csv-gaps",
        severity: "warning",
        message: '2 cells are empty in the column "cool_s"; they are left out.',
        place: { file: "log.csv", line: 3, column: 1 },
      }),
    ]);
    const right = scenario?.stations.find((station) => station.name === "right");
    expect(right?.cool).toEqual({ kind: "empirical", values: [7.5, 8] });
  });
});

describe("a wrong column", () => {
  const path = "stations.right.steps.cool.empirical";

  it.each<[string, string, string, string, number, string]>([
    // Name, text, column, code, line, part of the remedy.
    ["a value without a unit", "cool\n7.5\n", "column: cool", "unit-missing", 2, "`cool_s`"],
    ["a decimal comma", "cool_s;b\n7.5;1\n7,5;2\n", "column: cool_s", "decimal-comma", 3, "`7.5"],
    ["a word", "cool_s\n7.5\nbroken\n", "column: cool_s", "not-a-number", 3, "7.5 s"],
    ["a negative value", "cool_s\n\n-1\n", "column: cool_s", "negative", 3, "0 or more"],
    ["an open quote", 'cool_s\n7.5\n"8\n', "column: cool_s", "csv-broken", 3, "quotes"],
  ])("with %s is reported at its line", (_, csv, column, code, line, remedy) => {
    const { scenario, issues } = read(csv, column);
    expect(scenario).toBeUndefined();
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ code, place: { file: "log.csv", line } });
    expect(issues[0]?.path).toContain(path);
    expect(issues[0]?.remedy).toContain(remedy);
  });

  it.each<[string, string | undefined, string, string, string]>([
    ["a missing file", undefined, "column: cool_s", "csv-missing", "beside the scenario"],
    ["a missing column", "cool_s\n7\n", "column: coool_s", "csv-column", "`cool_s`"],
    ["no values", "cool_s\n\n", "column: cool_s", "csv-empty", "Check"],
    ["an empty file", "", "column: cool_s", "csv-column", "header"],
  ])("with %s is reported at its place in the scenario", (_, csv, column, code, remedy) => {
    const { issues } = read(csv, column);
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ code, place: { file: "cell.yaml", line: 23 } });
    expect(issues[0]?.remedy).toContain(remedy);
  });

  it("with many faults has the first ones reported and the others counted", () => {
    const { issues } = read(`cool_s\n${"x\n".repeat(100)}`, "column: cool_s");
    expect(issues.map((issue) => issue.code)).toEqual(["csv-more", ...Array.from({ length: 5 }, () => "not-a-number")]);
    expect(issues[0]?.message).toContain("95");
  });
});

describe("a CSV file outside the scenario's folder", () => {
  const secret = "secret header,user_s\n7,private words\n";
  const readOutside = (file: string, column: string): ScenarioReading => {
    const cool = "cool: { triangular: [7.0 s, 7.5 s, 9.0 s] }";
    const text = twoStations.replace(cool, `cool: { empirical: { file: "${file}", column: ${column} } }`);
    return readScenario(text, { name: "cell", file: "cell.yaml", readText: () => secret });
  };

  it.each(["../log.csv", "/etc/log.csv", "a/../../log.csv", "C:/log.csv", "..\\\\log.csv"])(
    "as %s is read, and its content is not shown",
    (file) => {
      for (const column of ["secret", "user_s"]) {
        const shown = JSON.stringify(readOutside(file, column).issues);
        expect(shown).toContain("outside the scenario's folder");
        expect(shown).not.toMatch(/secret header|private words/u);
      }
    },
  );

  it("is told from one inside, whose content helps", () => {
    expect(JSON.stringify(readOutside("logs/log.csv", "secret").issues)).toContain("secret header");
    expect(JSON.stringify(readOutside("a..b/log.csv", "user_s").issues)).toContain("private words");
  });
});

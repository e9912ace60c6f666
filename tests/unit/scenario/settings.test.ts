// Settings (--set) change a scenario before it is read, and their faults are reported with their place in the setting.
import { describe, expect, it } from "vitest";
import { readScenario, type ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { everything, log, shortest, twoStations } from "./validTexts.ts";

function read(text: string, ...set: readonly string[]): ScenarioReading {
  return readScenario(text, { name: "cell", file: "cell.yaml", set, readText: () => log });
}

describe("a setting", () => {
  it("changes one station by its name", () => {
    const [left, right] = read(twoStations, "stations.left.steps.cool=8 s").scenario?.stations ?? [];
    expect(left?.cool).toEqual({ kind: "fixed", value: 8 });
    expect(right?.cool.kind).toBe("triangular");
  });

  it("changes a station by its place in the file", () => {
    const names = read(twoStations, "stations[0].name=zebra").scenario?.stations.map((station) => station.name);
    expect(names).toEqual(["left", "zebra"]);
  });

  it("changes the number of stations", () => {
    expect(read(shortest, "stations.count=3").scenario?.stations).toHaveLength(3);
  });

  it("changes the count of a list with one entry", () => {
    const listed = shortest.replace("stations:\n  count", "stations:\n- count");
    expect(read(listed, "stations.count=4").scenario?.stations).toHaveLength(4);
  });

  it("changes all stations of an entry with a count", () => {
    const stations = read(everything, "stations.side.cavities=3").scenario?.stations ?? [];
    expect(stations.map(({ cavities }) => cavities)).toEqual([1, 3, 3]);
  });

  it("adds keys that the file does not have", () => {
    expect(read(shortest, "run.length=2 h", "run.seed=other").scenario?.run).toMatchObject({
      length: 7200,
      seed: "other",
    });
  });

  it("has a YAML value", () => {
    expect(read(twoStations, "valve.shift={ normal: [0.3 s, 0.05 s] }").scenario?.valve.shift.kind).toBe("normal");
  });

  it("replaces an earlier one of the same path", () => {
    expect(read(twoStations, "run.replications=3", "run.replications=4").scenario?.run.replications).toBe(4);
  });

  it("replaces an entry of a list", () => {
    const distribution = read(twoStations, "stations.left.steps.cool.triangular[2]=10 s").scenario?.stations[0]?.cool;
    expect(distribution).toEqual({ kind: "triangular", min: 7, mode: 7.5, max: 10 });
  });

  it("may correct a fault of the file", () => {
    expect(read(twoStations.replace("42 g", "42"), "product.partMass=42 g").issues).toEqual([]);
  });
});

describe("a wrong setting is reported", () => {
  it.each<[string, string, number, string, string]>([
    // Setting, code, column, path, part of the remedy.
    ["stations.left.steps.cool=8", "unit-missing", 26, "stations.left.steps.cool", "`8 s`"],
    ["run.length = 8", "unit-missing", 14, "run.length", "`8 s`"],
    ["run.lenght=8 h", "unknown-key", 5, "run.lenght", "`length`"],
    ["rum.length=8 h", "unknown-key", 1, "rum", "`run`"],
    ["stations.lefd.cavities=2", "set-path", 1, "stations.lefd.cavities", "`stations.left`"],
    ["stations[2].cavities=2", "set-path", 1, "stations[2].cavities", "0 to 1"],
    ["stations.count=2", "set-path", 1, "stations.count", "`stations[0].count`"],
    ["stations=3", "wrong-type", 10, "stations", "list of stations"],
    ["run[0]=8 h", "set-path", 1, "run[0]", "Leave out `[0]`"],
    ["title.length=3", "set-path", 1, "title.length", "as a whole"],
    ["product.wall.mean[0]=3", "set-path", 1, "product.wall.mean[0]", "as a whole"],
    ["stations.left.extra.first.time=3 s", "set-path", 1, "stations.left.extra.first.time", "brackets"],
    ["run.length", "set-form", 1, "", "path=value"],
    ["=8 h", "set-form", 1, "", "path=value"],
    ["run..length=8 h", "set-form", 1, "", "path=value"],
    ["[0].length=8 h", "set-form", 1, "", "path=value"],
    ["run.length=", "set-form", 1, "", "path=value"],
    ["run.length=# 8 h", "set-form", 1, "", "path=value"],
    ["run.seed=&a b", "yaml-anchor", 13, "", "anchor"],
    ["run.seed=[a", "yaml-syntax", 12, "", "brackets"],
    ["valve.shift={ normal: [0.3 s, 0,1 s] }", "decimal-comma", 31, "valve.shift.normal[1]", "`0.1 s`"],
    ["stations.left.steps.vent=0 s", "vent-zero", 26, "stations.left.steps.vent", "`0.5 s`"],
    [
      "delivery.meltRise={ from: 110 kg/h, rise: 5, per: 10 kg/h }",
      "unit-missing",
      43,
      "delivery.meltRise.rise",
      "`5 °C`",
    ],
  ])("%s", (setting, code, column, path, remedy) => {
    const { scenario, issues } = read(twoStations, "run.replications=5", setting);
    expect(scenario).toBeUndefined();
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ code, path, place: { file: "--set 2", line: 1, column } });
    expect(issues[0]?.remedy).toContain(remedy);
  });

  it("for one of several counted stations, which has no entry of its own", () => {
    const { issues } = read(everything, "stations.side 2.cavities=3");
    const issue = issues.find((each) => each.code === "set-path");
    expect(issue?.path).toBe("stations.side 2.cavities");
    expect(issue?.remedy).toContain("`stations.side`");
  });
});

// Settings (--set) change a scenario before it is read, and their faults are reported with their place in the setting.
import { describe, expect, it } from "vitest";
import type { RunTexts } from "#scenario/reading/settings.ts";
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

  it.each([
    ["stations.*.steps.cool=7 s", "stations.right.steps.cool"],
    ["stations.left.steps.cool=7 s", "stations.left.steps.cool"],
  ])("%s warns once, at %s, that the spread is gone", (setting, at) => {
    const { scenario, issues } = read(twoStations, setting);
    expect(scenario).toBeDefined();
    expect(issues.map(({ code, severity, path }) => ({ code, severity, path }))).toEqual([
      { code: "set-spread", severity: "warning", path: at },
    ]);
    expect(issues[0]?.remedy).toContain("`-1 s`");
  });

  it.each([
    "stations.*.steps.cool=-1 s",
    "stations.*.steps.cool=+10 %",
    "stations.*.steps.cool={ uniform: [6 s, 7 s] }",
  ])("%s keeps a spread, so it does not warn", (setting) => expect(read(twoStations, setting).issues).toEqual([]));

  it("counts in weeks", () => {
    expect(read(shortest, "run.length=2 weeks").scenario?.run.length).toBe(2 * 7 * 24 * 3600);
  });

  it("may correct a fault of the file", () => {
    expect(read(twoStations.replace("42 g", "42"), "product.partMass=42 g").issues).toEqual([]);
  });
});

/** Two stops of one name, and one with a name of its own. */
const withStops = twoStations.replace(
  "crew:",
  `stops:
  - { name: jam, resource: left, between: 2 h, repair: 5 min, step: finish }
  - { name: jam, resource: right, cycles: 300, repair: 6 min, step: finish }
  - { name: heater band, resource: plasticator, between: 40 h, repair: 30 min, step: finish }
crew:`,
);

describe("a path with `*` or a name", () => {
  it("changes every station", () => {
    const stations = read(twoStations, "stations.*.steps.cool=7 s").scenario?.stations ?? [];
    expect(stations.map(({ cool }) => cool)).toEqual([
      { kind: "fixed", value: 7 },
      { kind: "fixed", value: 7 },
    ]);
  });

  it("changes the one mapping of counted stations", () => {
    expect(read(shortest, "stations.*.cavities=3").scenario?.stations.map(({ cavities }) => cavities)).toEqual([3, 3]);
  });

  it("changes every entry of a mapping by name", () => {
    const products = read(everything, "products.*.partMass=50 g").scenario?.stations.map(({ partMass }) => partMass);
    expect(products).toEqual([0.05, 0.05, 0.05]);
  });

  it("changes every stop, or those of one name", () => {
    const repairs = (...set: readonly string[]) =>
      read(withStops, ...set).scenario?.stops?.map(({ repair }) => repair.kind === "fixed" && repair.value);
    expect(repairs()).toEqual([300, 360, 1800]);
    expect(repairs("stops.*.repair=1 min")).toEqual([60, 60, 60]);
    expect(repairs("stops.jam.repair=1 min")).toEqual([60, 60, 1800]);
    expect(repairs("stops.heater band.repair=1 min")).toEqual([300, 360, 60]);
  });
});

describe("null and []", () => {
  it.each(["stops=null", "stops=[]", "stops=~", "stops.*=null"])("%s removes the stops", (setting) => {
    const { scenario, issues } = read(withStops, setting);
    expect(issues).toEqual([]);
    expect(scenario?.stops).toBeUndefined();
  });

  it("remove one entry of a list", () => {
    const names = read(withStops, "stops.heater band=null").scenario?.stops?.map(({ name }) => name);
    expect(names).toEqual(["jam", "jam"]);
    expect(read(twoStations, "stations.right=null").scenario?.stations.map(({ name }) => name)).toEqual(["left"]);
  });

  it("leave alone what the file does not have", () => {
    const { scenario, issues } = read(twoStations, "stops=null", "calendar.shifts=null", "run.precision=[]");
    expect(issues).toEqual([]);
    expect(scenario).toEqual(read(twoStations).scenario);
  });

  it("bring the default back", () => {
    expect(read(twoStations, "run.length=null", "run.length=null").scenario?.run.length).toBe(8 * 3600);
    expect(read(twoStations, "run=null").scenario?.run).toMatchObject({ length: 8 * 3600, seed: "1" });
  });
});

describe("the number of stations that a file lists one by one", () => {
  it.each([3, 4, 9])("becomes %d by the remedy that the error gives", (count) => {
    const [issue] = read(twoStations, `stations.count=${count}`).issues;
    const remedy = /`(stations\.right\.count=\d+)`/u.exec(issue?.remedy ?? "")?.[1] ?? "";
    const { scenario, issues } = read(twoStations, remedy);
    expect(issues).toEqual([]);
    expect(scenario?.stations).toHaveLength(count);
  });

  it("becomes smaller by the remedy that the error gives", () => {
    const [issue] = read(twoStations, "stations.count=1").issues;
    const remedy = /`(.*)`/u.exec(issue?.remedy ?? "")?.[1] ?? "";
    expect(read(twoStations, remedy).scenario?.stations).toHaveLength(1);
  });
});

describe("an option of a run", () => {
  const readWith = (run: RunTexts) => readScenario(twoStations, { name: "cell", file: "cell.yaml", run });

  it("gives a value of its own, after --set", () => {
    const set = ["run.length=1 h"];
    const run = { seed: "007", replications: "5", length: "2 h", precision: "1 %" };
    const { scenario } = readScenario(twoStations, { name: "cell", file: "cell.yaml", set, run });
    expect(scenario?.run).toMatchObject({ seed: "007", replications: 5, length: 7200, precision: 0.01 });
  });

  it.each<[keyof RunTexts, string, string, string]>([
    ["replications", "x", "not-whole", "`x` is not a whole number"],
    ["replications", "0", "out-of-range", "0 is outside 1"],
    ["replications", "-1", "out-of-range", "-1 is outside 1"],
    ["length", "8", "unit-missing", "did you mean `8 h`?"],
    ["length", "-1 h", "negative", "-1 h is negative"],
    ["length", "+10 %", "not-a-number", "not a number with a unit"],
    ["length", "", "value-missing", "no value"],
    ["seed", " ", "value-missing", "no value"],
    ["precision", "0.005", "unit-missing", "did you mean `0.5 %`?"],
  ])("--%s %j is reported by its name", (key, text, code, says) => {
    const { scenario, issues } = readWith({ [key]: text });
    expect(scenario).toBeUndefined();
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ code, place: { file: `--${key}` } });
    expect(issues[0]?.message).toContain(says);
  });
});

describe("a wrong setting is reported", () => {
  it.each<[string, string, number, string, string]>([
    // Setting, code, column, path, part of the remedy.
    ["stations.left.steps.cool=8", "unit-missing", 26, "stations.left.steps.cool", "`8 s`"],
    ["run.length = 8", "unit-missing", 14, "run.length", "`8 h`"],
    ["run.lenght=8 h", "unknown-key", 5, "run.lenght", "`length`"],
    ["rum.length=8 h", "unknown-key", 1, "rum", "`run`"],
    ["stations.lefd.cavities=2", "set-path", 1, "stations.lefd.cavities", "`stations.left`"],
    ["stations[2].cavities=2", "set-path", 1, "stations[2].cavities", "0 to 1"],
    ["stations.count=4", "set-path", 1, "stations.count", "`stations.right.count=3` makes 4"],
    ["stations.count=2", "set-path", 1, "stations.count", "has 2 stations"],
    ["stations.count=1", "set-path", 1, "stations.count", "`stations.left=null`"],
    ["stations.count=+1", "set-path", 1, "stations.count", "such as `stations.right.count=2`"],
    ["stations=3", "wrong-type", 10, "stations", "list of stations"],
    ["run[0]=8 h", "set-path", 1, "run[0]", "Leave out `[0]`"],
    ["title.length=3", "set-path", 1, "title.length", "as a whole"],
    ["product.wall.mean[0]=3", "set-path", 1, "product.wall.mean[0]", "as a whole"],
    [
      "stations.left.extra.first.time=3 s",
      "set-path",
      1,
      "stations.left.extra.first.time",
      "`stations.left.extra.pin down`",
    ],
    ["delivery.plasticatingRate.normal.x=3 s", "set-path", 1, "delivery.plasticatingRate.normal.x", "as a whole"],
    ["stops[0].repair=3 s", "set-path", 1, "stops[0].repair", "Set `stops` as a whole"],
    ["stops.*.repair=3 s", "set-path", 1, "stops.*.repair", "that the file has"],
    ["stations.*.steps.vent=0 s", "vent-zero", 23, "stations.right.steps.vent", "`0.5 s`"],
    ["stations.*.steps.cool=7", "unit-missing", 23, "stations.right.steps.cool", "`7 s`"],
    ["stopps=null", "unknown-key", 1, "stopps", "`stops`"],
    ["stations.left.steps.cool=null", "missing", 1, "stations.left.steps.cool", "Add `cool`"],
    ["stations.*=null", "missing", 1, "stations", "Add `stations`"],
    ["run.length=*x", "set-form", 1, "", "`*0.9`"],
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

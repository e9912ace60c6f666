// A valid scenario is read in SI units, with all defaults and with ordered stations.
import { describe, expect, it } from "vitest";
import { readScenario, type ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { everything, log, shortest, twoStations, validTexts } from "./validTexts.ts";

function read(text: string, set: readonly string[] = []): ScenarioReading {
  return readScenario(text, { name: "cell", file: "cell.yaml", set, readText: () => log });
}

it.each(validTexts)("%s is read without an error", (_, text) => {
  const { scenario, issues } = read(text);
  expect(issues.filter((issue) => issue.severity !== "hint")).toEqual([]);
  expect(scenario).toBeDefined();
});

describe("the two-station scenario", () => {
  const { scenario, issues } = read(twoStations);

  it("has no issues", () => expect(issues).toEqual([]));

  it("has its quantities in SI units", () => {
    expect(scenario?.delivery).toEqual({
      kind: "reciprocating-screw",
      shotCapacity: 0.4,
      rechargeStarts: "valve-neutral",
      shotFor: "served",
    });
    expect(scenario?.run).toEqual({ length: 28_800, replications: 20, seed: "demo", warmup: "auto", start: "running" });
    const [left] = scenario?.stations ?? [];
    expect(left?.recharge).toEqual({ by: "rate", rate: { kind: "fixed", value: 110 / 3600 } });
    expect(left?.cool).toEqual({ kind: "triangular", min: 7, mode: 7.5, max: 9 });
    expect([left?.partMass, left?.flashMass]).toEqual([0.042, 0.0126]);
  });

  it("has its stations in the order of their names, not of the file", () => {
    expect(scenario?.stations.map((station) => station.name)).toEqual(["left", "right"]);
  });

  it("has its extra steps in the order of the file", () => {
    expect(scenario?.stations[0]?.extra.map(({ name, after }) => [name, after])).toEqual([
      ["pin down", "close"],
      ["pin up", "pin down"],
    ]);
  });
});

describe("the shortest scenario", () => {
  const { scenario, assumed } = read(shortest);

  it("has numbered stations from `count`", () => {
    expect(scenario?.stations.map((station) => station.name)).toEqual(["station 1", "station 2"]);
  });

  it("has the file's name as its title", () => expect(scenario?.title).toBe("cell"));

  it("lists its assumptions with their reasons", () => {
    const paths = assumed.map((assumption) => assumption.path);
    expect(paths).toContain("run.length");
    expect(paths).toContain("stations.steps.remove.by");
    expect(paths).not.toContain("valve.shift");
    for (const { reason, value } of assumed) expect(`${reason}${value}`).toMatch(/\w.*\w/u);
  });

  it("is read the same when every assumption is written out", () => {
    const settings = assumed.map(({ path, value }) => `${path}=${path === "run.seed" ? `"${value}"` : value}`);
    const written = read(shortest, settings);
    expect(written.issues).toEqual([]);
    expect(written.assumed).toEqual([]);
    expect(written.scenario).toEqual(scenario);
  });
});

describe("a removal", () => {
  const removeOf = (remove: string) => {
    const { scenario, issues } = read(shortest, [`stations.steps.remove=${remove}`]);
    return { remove: scenario?.stations[0]?.remove, found: issues.map(({ code, path }) => [code, path]) };
  };

  it("that is a time alone is by machine", () => {
    const machine = (time: object) => ({ remove: { time, by: "machine" }, found: [] });
    expect(removeOf("0.9 s")).toEqual(machine({ kind: "fixed", value: 0.9 }));
    expect(removeOf("{ time: 0.9 s }")).toEqual(machine({ kind: "fixed", value: 0.9 }));
    expect(removeOf("{ uniform: [1 s, 2 s] }")).toEqual(machine({ kind: "uniform", min: 1, max: 2 }));
  });

  it("is told apart from a slip in the name of a distribution", () => {
    expect(removeOf("{ unifrom: [1 s, 2 s] }").found).toEqual([
      ["distribution-unknown", "stations.steps.remove.unifrom"],
    ]);
    expect(removeOf("{ tiem: 1 s }").found).toEqual([
      ["unknown-key", "stations.steps.remove.tiem"],
      ["missing", "stations.steps.remove.time"],
    ]);
    expect(removeOf("5").found).toEqual([["unit-missing", "stations.steps.remove"]]);
  });
});

describe("the scenario that uses everything", () => {
  const { scenario } = read(everything);
  const [top, side] = scenario?.stations ?? [];

  it("has its stations in the given order", () => {
    expect(scenario?.stations.map((station) => station.name)).toEqual(["top", "side 2", "side 1"]);
  });

  it("has separate delivery values for a station", () => {
    expect(top?.recharge).toEqual({ by: "time", time: { kind: "fixed", value: 4 } });
    expect(top?.drop).toEqual({ by: "rate", rate: { kind: "fixed", value: 400 / 3600 } });
    expect(side?.recharge.by).toBe("rate");
    expect(side?.drop.by).toBe("time");
  });

  it("has ounces rounded to the milligram, and 25 % of the shot as a third of the part", () => {
    // 1.5 oz = 42.5242846875 g: the ounce is 28.349523125 g, NIST SP 811 (2008), appendix B.8 [M].
    expect(side?.partMass).toBe(0.042524);
    expect(side?.flashMass).toBe(0.014175);
  });

  it("has every kind of distribution", () => {
    const kinds = [side?.close, side?.blow, side?.cool, side?.vent, side?.remove.time].map(
      (distribution) => distribution?.kind,
    );
    expect(kinds).toEqual(["normal", "lognormal", "empirical", "exponential", "triangular"]);
  });

  it("has a fixed value for a distribution without spread", () => {
    expect(side?.open).toEqual({ kind: "fixed", value: 0.6 });
  });
});

it("ignores a byte order mark and Windows line ends", () => {
  const plain = read(twoStations);
  const marked = read(`\uFEFF${twoStations.replaceAll("\n", "\r\n")}`);
  expect(marked).toEqual(plain);
  const faulty = read(`\uFEFFformat: 2\n`).issues.find((issue) => issue.code === "format-newer");
  expect(faulty?.place).toMatchObject({ line: 1, column: 9 });
});

it("orders stations by code point without `order`: 10 before 2", () => {
  const text = shortest.replace("count: 2", "count: 10").replace("cavities: 1", "cavities: 1\n  name: side");
  const names = read(text).scenario?.stations.map((station) => station.name);
  expect(names?.slice(0, 3)).toEqual(["side 1", "side 10", "side 2"]);
});

it("reads the same scenario when the stations are listed in another order", () => {
  const [head = "", right = "", left = ""] = twoStations.split(/(?=^ {2}- name)/mu);
  const [own = "", tail = ""] = left.split(/(?=^crew)/mu);
  expect(read([head, own, right, tail].join("")).scenario).toEqual(read(twoStations).scenario);
});

it("reads the old word for a dispatch rule as the new one", () => {
  const [old, now] = ["longest-waiting", "longest-since-drop"].map((word) =>
    read(twoStations.replace("first-ready", word)),
  );
  expect(old?.scenario).toEqual(now?.scenario);
  expect(now?.issues).toEqual([]);
});

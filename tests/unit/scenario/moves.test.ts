// Moves (--set path=-1 s, +10 %, *0.9) shift or scale a value or a distribution and keep the shape of its spread.
import exponential from "@stdlib/stats-base-dists-exponential-quantile";
import gamma from "@stdlib/stats-base-dists-gamma-quantile";
import lognormal from "@stdlib/stats-base-dists-lognormal-quantile";
import normal from "@stdlib/stats-base-dists-normal-quantile";
import triangular from "@stdlib/stats-base-dists-triangular-quantile";
import triangularMean from "@stdlib/stats-base-dists-triangular-mean";
import triangularStdev from "@stdlib/stats-base-dists-triangular-stdev";
import uniform from "@stdlib/stats-base-dists-uniform-quantile";
import weibull from "@stdlib/stats-base-dists-weibull-quantile";
import weibullMean from "@stdlib/stats-base-dists-weibull-mean";
import weibullStdev from "@stdlib/stats-base-dists-weibull-stdev";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { readScenario, type ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { log, shortest, twoStations } from "./validTexts.ts";

function read(text: string, ...set: readonly string[]): ScenarioReading {
  return readScenario(text, { name: "cell", file: "cell.yaml", set, readText: () => log });
}

/** The cool time of a cell that has it written so, after the move. */
function moved(written: string, move: string): Distribution {
  const { scenario, issues } = read(
    shortest.replace("cool: 7.5 s", `cool: ${written}`),
    `stations.*.steps.cool=${move}`,
  );
  // A factor may lead to a time that is asked about.
  expect(issues.filter(({ code }) => code !== "time-unusual")).toEqual([]);
  return scenario!.stations[0]!.cool;
}

/**
 * Quantiles by @stdlib. Lognormal and gamma have mean and sd of the quantity itself: sigma² = ln(1 + (sd/mean)²), mu = ln mean − sigma²/2;
 * shape = (mean/sd)², rate = mean/sd² (Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions, vol. 1 [M+C]).
 */
function quantileOf(distribution: Distribution): (p: number) => number {
  switch (distribution.kind) {
    case "fixed":
      return () => distribution.value;
    case "uniform":
      return (p) => uniform(p, distribution.min, distribution.max);
    case "triangular":
      return (p) => triangular(p, distribution.min, distribution.max, distribution.mode);
    case "normal":
      return (p) => normal(p, distribution.mean, distribution.sd);
    case "lognormal": {
      const sigma = Math.sqrt(Math.log(1 + (distribution.sd / distribution.mean) ** 2));
      return (p) => lognormal(p, Math.log(distribution.mean) - sigma ** 2 / 2, sigma);
    }
    case "gamma":
      return (p) => gamma(p, (distribution.mean / distribution.sd) ** 2, distribution.mean / distribution.sd ** 2);
    case "exponential":
      return (p) => exponential(p, 1 / distribution.mean);
    case "weibull":
      return (p) => weibull(p, distribution.shape, distribution.scale);
    case "empirical":
      return (p) =>
        distribution.values.toSorted((one, other) => one - other)[Math.floor(p * distribution.values.length)]!;
  }
}

/** Mean and standard deviation, by @stdlib where it has them, else by their definitions. */
function momentsOf(distribution: Distribution): readonly [mean: number, sd: number] {
  switch (distribution.kind) {
    case "fixed":
      return [distribution.value, 0];
    case "uniform":
      return [(distribution.min + distribution.max) / 2, (distribution.max - distribution.min) / Math.sqrt(12)];
    case "triangular":
      return [
        triangularMean(distribution.min, distribution.max, distribution.mode),
        triangularStdev(distribution.min, distribution.max, distribution.mode),
      ];
    case "exponential":
      return [distribution.mean, distribution.mean];
    case "weibull":
      return [
        weibullMean(distribution.shape, distribution.scale),
        weibullStdev(distribution.shape, distribution.scale),
      ];
    case "empirical": {
      const mean = distribution.values.reduce((sum, value) => sum + value, 0) / distribution.values.length;
      return [
        mean,
        Math.sqrt(
          distribution.values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / distribution.values.length,
        ),
      ];
    }
    case "normal":
    case "lognormal":
    case "gamma":
      return [distribution.mean, distribution.sd];
  }
}

const probabilities = [0.001, 0.05, 0.3, 0.5, 0.8, 0.99];

const written = {
  fixed: "7.5 s",
  uniform: "{ uniform: [7 s, 9 s] }",
  triangular: "{ triangular: [7 s, 7.5 s, 0.15 min] }",
  normal: "{ normal: [7.5 s, 300 ms] }",
  lognormal: "{ lognormal: [7.5 s, 0.4 s] }",
  gamma: "{ gamma: [7.5 s, 0.5 s] }",
  exponential: "{ exponential: 7.5 s }",
  weibull: "{ weibull: [7.5 s, 8] }",
  empirical: "{ empirical: [7.1 s, 7.4 s, 8 s] }",
  column: "{ empirical: { file: log.csv, column: cool_s } }",
} as const;
type Kind = keyof typeof written;
const kinds = Object.keys(written) as Kind[];
/** Distributions that a shift only moves. */
const located = ["fixed", "uniform", "triangular", "normal", "empirical", "column"] satisfies Kind[];

const plain = Object.fromEntries(kinds.map((kind) => [kind, moved(written[kind], "*1")])) as Record<Kind, Distribution>;

/** Values are written with twelve digits. */
const few = { numRuns: 15 };
const shift = fc.integer({ min: -6000, max: 9000 }).map((milliseconds) => milliseconds / 1000);
const factor = fc.integer({ min: 1, max: 3000 }).map((thousandths) => thousandths / 1000);
const signed = (amount: number): string => `${amount < 0 ? "" : "+"}${amount}`;

describe("a shift moves the mean and leaves the standard deviation", () => {
  it.each([...located, "lognormal", "gamma"] as const)("%s", (kind) => {
    fc.assert(
      fc.property(shift, (seconds) => {
        const [mean, sd] = momentsOf(plain[kind]);
        const [after, spread] = momentsOf(moved(written[kind], `${signed(seconds)} s`));
        expect(after).toBeCloseTo(mean + seconds, 9);
        expect(spread).toBeCloseTo(sd, 9);
      }),
      few,
    );
  });

  it.each(located)("and every quantile of %s by as much", (kind) => {
    for (const p of probabilities) {
      expect(quantileOf(moved(written[kind], "-1.25 s"))(p)).toBeCloseTo(quantileOf(plain[kind])(p) - 1.25, 9);
    }
  });

  it.each(["exponential", "weibull"] as const)("but is refused for %s, whose spread follows from its mean", (kind) => {
    const { scenario, issues } = read(shortest.replace("7.5 s", written[kind]), "stations.steps.cool=+1 s");
    expect(scenario).toBeUndefined();
    expect(issues.map(({ code, remedy }) => [code, remedy])).toEqual([
      ["set-move", "Scale it, such as `*0.9` or `-10 %`."],
    ]);
  });
});

describe("a factor scales mean, standard deviation and every quantile", () => {
  it.each(kinds)("%s", (kind) => {
    fc.assert(
      fc.property(factor, (times) => {
        const [mean, sd] = momentsOf(plain[kind]);
        const distribution = moved(written[kind], `*${times}`);
        const [after, spread] = momentsOf(distribution);
        expect(after / times).toBeCloseTo(mean, 7);
        expect(spread / times).toBeCloseTo(sd, 7);
        for (const p of probabilities)
          expect(quantileOf(distribution)(p) / times).toBeCloseTo(quantileOf(plain[kind])(p), 6);
      }),
      few,
    );
  });

  it.each(kinds)("%s: +10 %% is the factor 1.1 and -25 %% the factor 0.75", (kind) => {
    expect(moved(written[kind], "+10 %")).toEqual(moved(written[kind], "*1.1"));
    expect(moved(written[kind], "-25 percent")).toEqual(moved(written[kind], "* 0.75"));
  });
});

describe("a move keeps", () => {
  it.each([
    ["0.5 min", "+6 s", "0.6 min"],
    ["7.5 s", "-0.1 min", "1.5 s"],
    ["0.1 s", "+0.2 s", "0.3 s"],
    ["7.5 s", "+.5s", "8 s"],
    ["2 h", "*1e-3", "0.002 h"],
  ])("the unit as written: %s moved by %s is %s", (before, move, after) => {
    expect(moved(before, move)).toEqual(moved(after, "*1"));
  });

  it("whole numbers, shares of something, temperatures and masses in milligrams", () => {
    const text = twoStations.replace("wall:", "moldTemperature: 50 °F\n  wall:");
    const after = read(
      text.replace("partMass: 42 g", "partMass: 30.333 g"),
      "stations.*.cavities=+1",
      "run.replications=*2",
      "product.flash=+10 %",
      "product.moldTemperature=+5 °C",
      "product.partMass=*0.97",
    ).scenario;
    const plainly = read(
      text,
      "stations.*.cavities=3",
      "run.replications=40",
      "product.flash=33 % of part",
      "product.moldTemperature=59 °F",
      "product.partMass=29.423 g",
    ).scenario;
    expect(after).toEqual(plainly);
  });

  it("what an earlier setting said", () => {
    const cool = read(twoStations, "stations.*.steps.cool=8 s", "stations.left.steps.cool=-1 s").scenario?.stations[0]
      ?.cool;
    expect(cool).toEqual({ kind: "fixed", value: 7 });
  });

  it("what the program assumes where the file is silent", () => {
    expect(read(shortest, "run.length=*2", "run.replications=+5").scenario?.run).toMatchObject({
      length: 16 * 3600,
      replications: 25,
    });
  });

  it("entries without the value as they are, where `*` stands for several", () => {
    const stops = `stops:
  - { name: jam, resource: left, between: 2 h, repair: 5 min, step: finish }
  - { name: purge, resource: left, cycles: 300, repair: 6 min, step: finish }
crew:`;
    const comes = read(twoStations.replace("crew:", stops), "stops.*.between=*2").scenario?.stops?.map(
      (stop) => stop.comes,
    );
    expect(comes).toMatchObject([{ between: { value: 4 * 3600 } }, { by: "cycles" }]);
  });

  it("a quoted value with a sign as a value", () => {
    const text = twoStations.replace("wall:", "moldTemperature: 10 °C\n  wall:");
    const both = ['product.moldTemperature="-5 °C"', "product.moldTemperature=-15 °C"].map(
      (set) => read(text, set).scenario,
    );
    expect(both[0]).toEqual(both[1]);
    expect(both[0]).toBeDefined();
  });
});

describe("a move is reported", () => {
  it.each<[string, string, string, string, string]>([
    // Setting, code, part of the message, value, part of the remedy.
    ["stations.left.steps.vent=-1 s", "negative", "-0.5 s", "-0.5 s, moved by -1 s", "0 or more"],
    ["stations.left.steps.vent=-0.5 s", "vent-zero", "no time", "0 s, moved by -0.5 s", "`0.5 s`"],
    ["stations.left.steps.cool=-7.2 s", "negative", "-0.2 s", "-0.2 s, moved by -7.2 s", "0 or more"],
    ["stations.left.cavities=*1.25", "not-whole", "2.5", "2.5, moved by *1.25", "whole number"],
    ["run.replications=-20", "out-of-range", "0 is outside", "0, moved by -20", "1 to 100000"],
    ["stations.left.steps.cool=-1", "unit-missing", "`-1`", "-1", "`-1 s`"],
    ["stations.left.steps.cool=-1 kg", "unit-mismatch", "a mass, the value is a time", "-1 kg", "in s"],
    ["stations.left.steps.cool=-1 furlong", "unit-unknown", '"furlong"', "-1 furlong", "in s"],
    ["stations.left.cavities=+1 s", "unit-mismatch", "a plain number", "+1 s", "without a unit"],
    ["product.material=*2", "set-move", "`HDPE`", "*2", "value itself"],
    ["product.wall=*2", "set-move", "mapping", "*2", "one value"],
    ["stations=*2", "set-move", "list", "*2", "one value"],
    ["stations.left.steps.clear=*2", "set-move", "no value", "*2", "without a sign"],
    ["stops.0.repair=*2", "set-move", "no value", "*2", "without a sign"],
  ])("%s", (setting, code, says, value, remedy) => {
    const { scenario, issues } = read(twoStations, setting);
    expect(scenario).toBeUndefined();
    expect(issues).toMatchObject([{ code, value, place: { file: "--set 1" } }]);
    expect(issues[0]?.message).toContain(says);
    expect(issues[0]?.remedy).toContain(remedy);
  });

  it.each(["cool", "blow", "vent"])("where the %s time is estimated", (step) => {
    const text = twoStations.replace(new RegExp(`${step}: .*`, "u"), `${step}: estimate`);
    const issues = read(text, `stations.right.steps.${step}=-1 s`).issues.filter(
      ({ place }) => place?.file === "--set 1",
    );
    expect(issues.map(({ code, message }) => [code, message])).toEqual([
      ["set-move", "`estimate` is not a number with a unit, so it cannot be moved."],
    ]);
  });

  it("where the warm-up is found in the run", () => {
    const [issue] = read(twoStations, "run.warmup=*2").issues;
    expect(issue).toMatchObject({
      code: "set-move",
      message: "`auto` is not a number with a unit, so it cannot be moved.",
    });
  });

  it("where a temperature is scaled", () => {
    const [issue] = read(
      twoStations.replace("wall:", "moldTemperature: 10 °C\n  wall:"),
      "product.moldTemperature=*2",
    ).issues;
    expect(issue).toMatchObject({ code: "set-move", remedy: "Shift it, such as `+5 °C`." });
  });

  it("where a distribution or its file is broken, beside that fault", () => {
    const codes = (cool: string) =>
      read(shortest.replace("7.5 s", cool), "stations.steps.cool=*2").issues.map(({ code }) => code);
    expect(codes("{ normal: [7 s] }")).toEqual(["distribution-length", "set-move"]);
    expect(codes("{ empirical: { file: log.csv, column: cold_s } }")).toEqual(["csv-column", "set-move"]);
    expect(codes("{ empirical: [[7 s]] }")).toEqual(["wrong-type", "set-move"]);
  });
});

// The command choose, and sweep --best.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { isLong } from "../support/caseCount.ts";
import { cellText } from "../support/cellScenario.ts";
import { callBlowcell, newFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

const folder = newFolder();
const inFolder = (...names: readonly string[]) => path.join(folder, ...names);
const call = (...args: readonly string[]) => callHere(args, { folder });
const choose = (file: string, ...args: readonly string[]) => call("choose", file, "--jobs", "1", ...args);

const spread = (stations: number) =>
  cellText(stations).replace("remove: { time: 0.8 s }", "remove: { time: { gamma: [0.8 s, 0.3 s] } }");
const costs = "costs: { currency: EUR, machine: 30 per h, investment: 100000 }\n";
const options = `options:
  - { name: two stations, group: stations, settings: { stations.count: 2 }, investment: 80000, perHour: 4 per h }
  - { name: three stations, group: stations, settings: { stations.count: 3 }, investment: 150000, floorSpace: 12 m² }
  - { name: short cooling, group: mold, settings: { "stations.*.steps.cool": -1 s }, investment: 20000 }
  - { name: long drop, settings: { delivery.drop: 2.5 s } }
`;
writeFileSync(inFolder("fixed.yaml"), cellText(2));
writeFileSync(inFolder("one.yaml"), cellText(1));
writeFileSync(inFolder("spread.yaml"), spread(2));
writeFileSync(inFolder("options.yaml"), spread(1) + costs + options);

type Row = Readonly<Record<string, string>>;

function rowsOf(out: string): readonly Row[] {
  return parse(readFileSync(inFolder(out, "choose.csv")), { columns: true }) as readonly Row[];
}

const verdicts = (out: string) => Object.fromEntries(rowsOf(out).map((row) => [row["scenario"], row["verdict"]]));

/** The same mean: the difference of two runs varies. */
const otherSpread = "other spread: stations.*.steps.remove.time={ gamma: [0.8 s, 0.31 s] }";
const cool = "stations.*.steps.cool";

const { code: choiceCode, output: choice } = await choose("options.yaml", "--out", "options");

describe("the layouts", () => {
  it("are the file, each option, and the combinations of groups", () => {
    expect(choiceCode).toBe(0);
    expect(new Set(rowsOf("options").map((row) => row["scenario"]))).toEqual(
      new Set([
        "as it stands",
        "two stations",
        "three stations",
        "short cooling",
        "two stations + short cooling",
        "three stations + short cooling",
        "long drop",
      ]),
    );
    const combined = rowsOf("options").find((row) => row["scenario"] === "two stations + short cooling");
    expect(combined?.["variant"]).toBe("stations.count=2; stations.*.steps.cool=-1 s");
  });

  it("have the prices of their options added", () => {
    const priced = Object.fromEntries(
      rowsOf("options").map((row) => [
        row["scenario"],
        [row["investment"], row["cost_per_hour"], row["floor_space_m2"]],
      ]),
    );
    expect(priced["as it stands"]).toEqual(["100000", "30", "0"]);
    expect(priced["two stations + short cooling"]).toEqual(["200000", "34", "0"]);
    expect(priced["three stations"]).toEqual(["250000", "30", "12"]);
  });

  it("are ranked, with the next simpler one and what it loses", () => {
    expect(choice).toMatch(
      /^three stations \+ short cooling is best: [\d,.]+ good parts an hour, with 95 %\s+confidence/u,
    );
    expect(choice.replaceAll(/\s+/gu, " ")).toMatch(
      /The next simpler layout, three stations, saves 20,000 EUR of investment and (?:loses|shows)/u,
    );
    const ranks = rowsOf("options").map((row) => Number(row["rank"]));
    expect(ranks).toEqual(ranks.map((_, i) => i + 1));
    const behind = rowsOf("options")
      .slice(1)
      .map((row) => Number(row["behind"]));
    expect(behind).toEqual(behind.toSorted((one, other) => one - other));
  });

  it("fill one screen", () => {
    const lines = choice.trimEnd().split("\n");
    expect(lines.length).toBeLessThanOrEqual(40);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it("stand in the report with output against investment as a chart", () => {
    const page = readFileSync(inFolder("options/report.html"), "utf8");
    expect(page).toContain('id="output-investment-chart-title"');
    expect(page).toContain("Most parts for their investment: ");
    expect(page).toContain("three stations + short cooling (best)");
    expect(existsSync(inFolder("options/datapackage.json"))).toBe(true);
  });

  it("may be files and variants", async () => {
    expect((await choose("one.yaml", "fixed.yaml", "--variant", `short: ${cool}=-1 s`, "--out", "files")).code).toBe(0);
    expect(Object.keys(verdicts("files")).toSorted()).toEqual(["fixed", "fixed short", "one", "one short"]);
  });
});

describe("the chosen layout", () => {
  const grid = ["--vary", `${cool}=7..8 s by 0.5 s`, "--vary", "stations.count=1,2"];

  it("is the one with the shortest circuit where all times are fixed", async () => {
    await choose("fixed.yaml", ...grid, "--out", "fixed");
    // [C] Two cavities; the circuit of a station takes shift, drop, 3 s and cooling, that of the screw recharge, drop and two shifts.
    const parts = (cooling: number, stations: number) =>
      7200 / Math.max(4 + 1.8 + 0.5, (0.25 + 1.8 + 3 + cooling) / stations);
    for (const row of rowsOf("fixed")) {
      const [, cooling, stations] = /cool ([\d.]+) s, count (\d)/u.exec(row["scenario"] ?? "") ?? [];
      // A count in 110 min is at most one shot more or less.
      expect(Math.abs(Number(row["mean"]) - parts(Number(cooling), Number(stations)))).toBeLessThan(2.2);
      expect(Number(row["replications"])).toBe(20);
    }
    expect(rowsOf("fixed")[0]?.["scenario"]).toBe("cool 7 s, count 2");
  });

  it.runIf(isLong)("is that of the largest mean of all points over many more replications", async () => {
    await choose("spread.yaml", ...grid, "--worthwhile", "0.5 per h", "--out", "chosen");
    await call("sweep", "spread.yaml", "--jobs", "1", ...grid, "--replications", isLong ? "100" : "30", "--out", "all");
    const points = (parse(readFileSync(inFolder("all/sweep.csv")), { columns: true }) as readonly Row[]).filter(
      (row) => row["resource"] === "cell" && row["measure"] === "good parts per hour",
    );
    const most = points.toSorted((one, other) => Number(other["mean"]) - Number(one["mean"]))[0];
    expect(rowsOf("chosen")[0]?.["scenario"]).toBe(`cool ${most?.[`${cool}_s`]} s, count ${most?.["stations.count"]}`);
  });

  it("is the same from sweep --best", async () => {
    const args = ["--out", "best", "--replace"];
    const own = await choose("spread.yaml", ...grid, ...args);
    const files = readFileSync(inFolder("best/choose.csv"), "utf8");
    const swept = await call("sweep", "spread.yaml", "--best", "--jobs", "1", ...grid, ...args);
    expect([swept.code, swept.output]).toEqual([own.code, own.output]);
    expect(readFileSync(inFolder("best/choose.csv"), "utf8")).toBe(files);
  });

  it.runIf(isLong)("is the same for any number of workers, to the last byte", async () => {
    const args = ["--worthwhile", "0.05", "--replications", "60", "--length", "24 h"];
    const alone = await choose("spread.yaml", "options.yaml", ...args, "--out", "alone");
    const shared = ["choose", "spread.yaml", "options.yaml", ...args, "--jobs", "2", "--out", "shared"];
    const { code, output } = callBlowcell(shared, { folder });
    expect({ code, output }).toEqual({ code: alone.code, output: alone.output });
    const filesOf = (out: string) =>
      readdirSync(inFolder(out)).map((name) => [name, readFileSync(inFolder(out, name), "utf8")]);
    expect(filesOf("shared")).toEqual(filesOf("alone"));
  });

  it("is found with fewer replications where others are far behind", async () => {
    const args = ["--variant", otherSpread, "--variant", `much: ${cool}=+3 s`, "--worthwhile", "0.1"];
    const { code } = await choose("spread.yaml", ...args, "--out", "stages");
    expect(code).toBe(0);
    const [best, ...others] = rowsOf("stages");
    const far = others.find((row) => row["scenario"] === "much");
    expect(far?.["dropped_at"]).toBe("20");
    expect(far?.["replications"]).toBe("20");
    expect(Number(best?.["replications"])).toBeGreaterThan(20);
  });

  it("is the cheapest by cost, and less is better", async () => {
    const { output } = await choose("options.yaml", "--by", "cost per 1,000", "--out", "cost");
    const [best, ...others] = rowsOf("cost");
    expect([best?.["measure"], best?.["better"], best?.["unit"]]).toEqual(["cost per 1,000 good parts", "less", "EUR"]);
    for (const row of others) expect(Number(row["mean"])).toBeGreaterThanOrEqual(Number(best?.["mean"]));
    expect(output).toContain("EUR per");
  });

  it.runIf(isLong)("may be the best in any measure of throughput.csv or cost.csv", async () => {
    await choose("options.yaml", "--by", "machine per hour", "--out", "machine");
    expect(rowsOf("machine")[0]?.["mean"]).toBe("30");
    await choose("options.yaml", "--by", "shots per", "--out", "shots");
    expect(rowsOf("shots")[0]?.["measure"]).toBe("shots per hour");
    await choose("fixed.yaml", "--variant", `short: ${cool}=-1 s`, "--by", "station 1: cycle time", "--out", "cycle");
    expect([rowsOf("cycle")[0]?.["scenario"], rowsOf("cycle")[0]?.["better"]]).toEqual(["short", "less"]);
  });

  it("has others beside it that are as good", async () => {
    const { output } = await choose("fixed.yaml", "--variant", "seed apart: crew.operators=3", "--out", "equal");
    expect(output).toContain("No difference that matters: seed apart is equal to it.");
    expect(verdicts("equal")).toEqual({ fixed: "best", "seed apart": "equal to the best" });
  });
});

describe("a need", () => {
  it("drops layouts that cannot meet it, after few runs", async () => {
    // [C] One station makes 2 × 4 h / 13.05 s = 2,207 parts in 4 h, two make 4,413.
    const { code, output } = await choose("one.yaml", "fixed.yaml", "--need", "4000 parts in 4 h", "--out", "need");
    expect(code).toBe(0);
    expect(output).toMatch(/^Only fixed can make 4,000 parts in 4 h with a chance of 95 %:/u);
    const [best, other] = rowsOf("need");
    expect([best?.["scenario"], best?.["need_met"]]).toEqual(["fixed", best?.["need_tested"]]);
    expect([other?.["verdict"], other?.["need_met"]]).toEqual(["cannot meet the need", "0"]);
    expect(Number(other?.["replications"])).toBeLessThan(20);
  });

  it("that none can meet is answered with no, and with the nearest", async () => {
    const { code, output } = await choose("one.yaml", "fixed.yaml", "--need", "5000 parts in 4 h", "--out", "none");
    expect(code).toBe(1);
    expect(output).toContain("No layout can make 5,000 parts in 4 h with a chance of 95 %.");
    expect(output.replaceAll(/\s+/gu, " ")).toMatch(
      /Nearest: fixed, 4,4\d\d parts on average, enough in 0 of \d runs/u,
    );
  });

  it("counts from the start of a run as long as its time", async () => {
    expect(
      (await choose("one.yaml", "fixed.yaml", "--need", "100 parts in 90 min", "--json", "--out", "span")).output,
    ).toContain('"length": 5400');
  });
});

describe("a call", () => {
  it("that the cap leaves open exits with 3", async () => {
    const args = ["--variant", otherSpread, "--worthwhile", "0.0001", "--replications", "20"];
    const { code, output } = await choose("spread.yaml", ...args, "--out", "open");
    expect(code).toBe(3);
    expect(output).toMatch(/^Not decided after 20 replications: /u);
    expect(new Set(Object.values(verdicts("open")))).toEqual(new Set(["not decided"]));
  });

  it("leaves out points that are refused, and layouts that come to a standstill", async () => {
    const { code, output } = await choose("fixed.yaml", "--vary", "stations.*.cavities=0,1,2", "--out", "refused");
    expect(code).toBe(0);
    expect(output).toContain("Left out: cavities 0 (0 is outside 1 to 12).");
    expect(rowsOf("refused").at(-1)).toMatchObject({ scenario: "cavities 0", verdict: "left out", rank: "" });
  });

  it("says the default difference and where it comes from", async () => {
    expect((await choose("one.yaml", "fixed.yaml", "--out", "usual")).output.replaceAll(/\s+/gu, " ")).toMatch(
      /Differences below 5\.5 good parts an hour do not matter: 1 % of one, the default of --worthwhile\./u,
    );
  });

  it("with several faults names them all and writes nothing", async () => {
    const { code, output, errors } = await choose(
      "one.yaml",
      "missing.yaml",
      "--worthwhile",
      "0",
      "--need",
      "many parts soon",
      "--chance",
      "100 %",
      "--confidence",
      "40 %",
      "--replications",
      "5",
      "--out",
      "nothing",
    );
    expect([code, output]).toEqual([2, ""]);
    for (const named of ["file-missing", "worthwhile-form", "need-form", "out-of-range"])
      expect(errors).toContain(named);
    for (const option of ["--chance", "--confidence", "--replications"]) expect(errors).toContain(`${option}: error`);
    expect(existsSync(inFolder("nothing"))).toBe(false);
  });

  it.each([
    [["one.yaml"], "There is only one to choose from."],
    [["one.yaml", "one.yaml"], "Two layouts are called one."],
    [["one.yaml", "fixed.yaml", "--by", "godo parts per hour"], 'Did you mean "good parts per hour"?'],
    [["one.yaml", "fixed.yaml", "--by", "cost"], 'No measure of all layouts is called "cost".'],
    [["one.yaml", "fixed.yaml", "--worthwhile", "3 EUR"], 'The difference is in "EUR"'],
    [["one.yaml", "fixed.yaml", "--worthwhile", "60 %"], "A difference of 60 % is too large."],
    [["one.yaml", "fixed.yaml", "--chance", "90 %"], "The chance stands without a need."],
    [["one.yaml", "fixed.yaml", "--need", "200,000 parts in 5 d"], "separates thousands"],
    [
      ["one.yaml", "fixed.yaml", "--need", "10 parts in 1 h", "--length", "2 h"],
      "A run is as long as the time of the need.",
    ],
    [["one.yaml", "fixed.yaml", "--vary", "stations.count=1,2"], "Points of --vary stand beside other layouts."],
    [
      ["one.yaml", "--vary", "stations.count=1..16 by 1", "--vary", `${cool}=1..9 s/40`],
      "There are 640 layouts to choose from; the most are 500.",
    ],
  ])("%j is refused", async (args, message) => {
    const { code, output, errors } = await call("choose", ...args, "--out", "never");
    expect([code, output]).toEqual([2, ""]);
    expect(errors).toContain(message);
    expect(existsSync(inFolder("never"))).toBe(false);
  });

  it("of sweep refuses what does not go together", async () => {
    const varied = ["sweep", "one.yaml", "--vary", "stations.count=1,2"];
    expect((await call(...varied, "--by", "shots per hour")).errors).toContain("--by stands without --best.");
    const { code, errors } = await call(...varied, "--best", "--shard", "1/2", "--precision", "1 %");
    expect(code).toBe(2);
    for (const option of ["--shard", "--precision"]) expect(errors).toContain(`${option} does not go with --best.`);
    expect((await call("sweep", "one.yaml", "--best")).errors).toContain("The sweep varies nothing.");
  });

  it("names the option of a scenario whose setting is wrong, and prices without a currency", async () => {
    writeFileSync(inFolder("wrong.yaml"), spread(1) + options.replace("stations.count: 3", "stations.cont: 3"));
    const { code, errors } = await choose("wrong.yaml", "--out", "never");
    expect(code).toBe(2);
    expect(errors).toContain("option-currency");
    writeFileSync(inFolder("wrong.yaml"), spread(1) + costs + options.replace("stations.count: 3", "stations.cont: 3"));
    const named = (await choose("wrong.yaml", "--out", "never")).errors;
    expect(named).toContain('wrong.yaml option "three stations" stations.cont: error: With "three stations":');
    expect(named).toContain("Did you mean `count`?");
    expect(named.match(/: error:/gu)).toHaveLength(1);
  });
});

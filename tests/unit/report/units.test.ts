// Text and pages in US customary units; the factors are exact by definition: NIST SP 811 (2008), appendix B.8 [M].
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { reportPage } from "#report/page/reportPage.ts";
import { runAnswer } from "#report/answers/runAnswer.ts";
import { compareAnswer } from "#report/answers/compareAnswer.ts";
import { differenceColumns, tableInUnits, valueColumns } from "#report/tables/tableInUnits.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import { comparisonTable } from "#report/tables/comparisonTable.ts";
import { tableSpecs } from "#report/tables/tableSpecs.ts";
import type { Cell, Table } from "#report/tables/table.ts";
import { windowLines, windowWarnings } from "#report/tables/windowWords.ts";
import { extrusionWords } from "#report/words/extrusionWords.ts";
import { measureWords } from "#report/words/shownUnits.ts";
import { shown } from "#report/words/shownValue.ts";
import { processWindow } from "#physics/window/processWindow.ts";
import { bottle } from "../physics/inventedBottle.ts";
import { compareReport, runReport, scenarioOf, shippedText, studyOf } from "../../support/reported.ts";

const measured = ["blow=0.3 s", "cool=27 s", "vent=0.6 s"].map((step) => `stations.*.steps.${step}`);

const pound = 0.45359237;
const inch = 0.0254;
const poundForce = pound * 9.80665;

describe("a value of the process window", () => {
  it.each<[value: number, unit: string, si: string, us: string]>([
    // 64.58 kg/h: 64.58 / 0.45359237 = 142.3745 lb/h.
    [64.58 / 3600, "kg/s", "64.6 kg/h", "142 lb/h"],
    // 2 mm: 2 / 25.4 = 0.078740 in.
    [0.002, "m", "2 mm", "0.0787 in"],
    // A yard and more is shown in feet of 0.3048 m: 1.2 / 0.3048 = 3.937 ft.
    [1.2, "m", "1.2 m", "3.94 ft"],
    // 6 bar: a pound-force is 4.4482216152605 N, a square inch 6.4516e-4 m², so psi is 6894.757 Pa; 87.0226 psi.
    [6e5, "Pa", "6 bar", "87 psi"],
    // A stress: 0.12 MPa is 17.4045 psi.
    [1.2e5, "MPa", "0.12 MPa", "17.4 psi"],
    // 65 °C: 65 × 1.8 + 32 = 149 °F.
    [65, "°C", "65 °C", "149 °F"],
    [-40, "°C", "-40 °C", "-40 °F"],
    // 42 g: an ounce is 28.349523125 g, 1.48151 oz.
    [0.042, "kg", "42 g", "1.48 oz"],
    // 1.01 kg: 2.22667 lb.
    [1.01, "kg", "1.01 kg", "2.23 lb"],
    // 46.8 kN: a short ton-force is 2000 lbf, 8896.443 N; 5.26053 tonf.
    [46_800, "N", "46.8 kN", "5.26 tonf"],
    // 1 kN: 224.809 lbf.
    [1000, "N", "1 kN", "225 lbf"],
    // 982 kJ/kg: a Btu (International Table) a pound is 2326 J/kg; 422.184 Btu/lb.
    [982_000, "J/kg", "982 kJ/kg", "422 BTU/lb"],
    // 10.4 kW: a horsepower is 550 ft lbf/s, 745.6999 W; 13.9466 hp.
    [10_400, "W", "10.4 kW", "13.9 hp"],
    [7.5, "s", "7.5 s", "7.5 s"],
    [0.2, "1", "20 %", "20 %"],
    [300, "1/s", "300 1/s", "300 1/s"],
    [Infinity, "kg", "without end", "without end"],
  ])("%d %s is %s or %s", (value, unit, si, us) => {
    expect(shown(value, unit, "si")).toBe(si);
    expect(shown(value, unit, "us")).toBe(us);
  });
});

describe("the process window", () => {
  it("shows a stress in MPa and an air pressure in bar, as data sheets and gauges do", () => {
    const window = { stations: ["left"], rows: processWindow(bottle), missing: [], hasConstantMold: false };
    const lines = windowLines([window], 1, 400);
    const unitsOf = (words: RegExp) =>
      lines.filter((line) => words.test(line)).flatMap((line) => / (MPa|Pa|bar|kPa)(?= |$)/u.exec(line)?.[1] ?? []);
    expect(new Set(unitsOf(/^ {2}\S.*stress.*\d/u))).toEqual(new Set(["MPa"]));
    expect(new Set(unitsOf(/^ {2}\S.*pressure.*\d/u))).toEqual(new Set(["bar"]));
  });
});

describe("a measure", () => {
  it("has its interval in the same unit", () => {
    // 64.58 ± 0.09 kg/h: 142.3745 ± 0.1984 lb/h.
    const melt = { unit: "kg/h", interval: { mean: 64.58, halfWidth: 0.09, sd: 0, count: 20, confidence: 0.95 } };
    expect(measureWords(melt, "si")).toBe("64.58 ± 0.09 kg/h");
    expect(measureWords(melt, "us")).toBe("142.4 ± 0.2 lb/h");
  });

  it("stays as it is where both systems have its unit", () => {
    const pace = { unit: "s", interval: { mean: 6.05, halfWidth: 0.02, sd: 0, count: 20, confidence: 0.95 } };
    expect(measureWords(pace, "us")).toBe(measureWords(pace, "si"));
  });
});

describe("a table", () => {
  const columns = ["quantity", "value", "unit", "difference", "half_width_95", "ratio"].map((name) => {
    return {
      name,
      type: name === "quantity" || name === "unit" ? ("text" as const) : ("number" as const),
      meaning: "",
    };
  });
  const tableOf = (...rows: readonly (readonly Cell[])[]): Table => ({ name: "t", meaning: "", columns, rows });
  const converted = (...row: readonly Cell[]) => tableInUnits(tableOf(row), "us").rows[0];

  it("keeps its rows in SI", () => {
    const table = tableOf(["melt", 3, "kg/h", 1, 0.5, 2]);
    expect(tableInUnits(table, "si")).toBe(table);
  });

  it("has the other unit in rows that have one, for values, differences and half widths but not for ratios", () => {
    expect(converted("melt", pound, "kg/h", 2 * pound, 3 * pound, 4)).toEqual(["melt", 1, "lb/h", 2, 3, 4]);
    const [, value, unit] = converted("length", 0.5 * inch, "m", null, null, null)!;
    expect(value).toBeCloseTo(0.5, 12);
    expect(unit).toBe("in");
    const [, pressure] = converted("air", 100 * (poundForce / inch ** 2), "Pa", null, null, null)!;
    expect(pressure).toBeCloseTo(100, 9);
  });

  it("has temperatures with their zero and differences of temperature without", () => {
    const [, value, unit, difference, half] = converted("wall", 65, "°C", 5, 10, 1)!;
    expect([value, difference, half].map((cell) => Number(Number(cell).toFixed(9)))).toEqual([149, 9, 18]);
    expect(unit).toBe("°F");
  });

  it("keeps rows whose unit both systems have", () => {
    const row = ["pace", 6, "s", 1, 0.5, 2];
    expect(converted(...row)).toEqual(row);
  });

  it("has no column of numbers of which it is not known whether they have the unit of their row", () => {
    const plain = "replication replications ratio relative_difference pairs comparisons correlation".split(" ");
    const chances = "chance_by_due chance_low_95 chance_high_95 chance_wanted".split(" ");
    const ofChoice = `rank within_worthwhile confidence dropped_at fixed_size_replications need_met need_tested
      good_parts_per_hour cost_per_hour cost_per_1000_good_parts investment floor_space_m2 stations efficient_by_cost
      efficient_by_investment`.split(/\s+/u);
    // Hours, seconds and shares are the same in both systems.
    const ofMatch = `log log_half_width_95 model_half_width_95 low high p margin traced traced_hours traced_difference
      traced_low traced_high traced_margin`.split(/\s+/u);
    const known = [...valueColumns, ...differenceColumns, ...plain, ...chances, ...ofChoice, ...ofMatch];
    // The unit of costs is their currency, the same in both systems.
    const withUnits = tableSpecs.filter(
      ({ name: table, columns: own }) => table !== "cost" && own.some(({ name }) => name === "unit"),
    );
    expect(withUnits.length).toBeGreaterThan(4);
    const strange = withUnits.flatMap((spec) =>
      spec.columns.flatMap(({ name, type }) => (type === "text" || known.includes(name) ? [] : `${spec.name}.${name}`)),
    );
    expect(strange).toEqual([]);
  });
});

const metricUnits = String.raw`(?:k?g|k?g/[hs]|mm|m|bar|M?Pa|k?N|k?W|k?J/kg|°C|m?L|m³)`;
/** A metric unit behind a number or in a cell of its own. */
const metric = new RegExp(String.raw`\d ${metricUnits}(?=[\s,;.<)]|$)|<td>${metricUnits}</td>`, "u");
/** Its own title has liters. */
const untitled = (text: string): string => text.replace(/^title: .*$/mu, "title: A container");

describe("an answer", () => {
  const container = studyOf(scenarioOf(untitled(shippedText("handled-container")), "container", measured));
  const scenario = scenarioOf(shippedText("bottle-continuous"), "bottle");

  it("to `check` has no metric unit", () => {
    const windows = stationWindows(container.scenario, idealCycle(container.scenario));
    expect(windowLines(windows, 2).join("\n")).toMatch(metric);
    const lines = windowLines(windows, 2, 80, "us").join("\n");
    expect(lines).not.toMatch(metric);
    expect(lines).toMatch(/blow pressure +87 psi +50\.8 to 102 psi/u);
    expect(lines).toMatch(/shot mass +6\.32 oz +at most 1\.1 lb/u);
    // 110 and 42.8 kg/h.
    expect(extrusionWords(scenario, idealCycle(scenario), "us")[0]).toMatch(/243 lb\/h: .*excess melt 94\.4 lb\/h/u);
  });

  it("to `run` has no metric unit", () => {
    expect(runAnswer(container)).toMatch(metric);
    expect(runAnswer(container, 80, "us")).not.toMatch(metric);
  });

  it("to `compare` has no metric unit", () => {
    const heavy = studyOf(scenarioOf(shippedText("two-station"), "two", ["product.wall.thickest=2.5 mm"]));
    expect(compareAnswer({ studies: [heavy], rows: [], paybacks: [] })).toMatch(metric);
    expect(compareAnswer({ studies: [heavy], rows: [], paybacks: [] }, 80, "us")).not.toMatch(metric);
  });

  it("has its warnings in the same units", () => {
    const study = studyOf(scenarioOf(shippedText("two-station"), "two", ["product.wall.thickest=2.5 mm"]));
    const warned = (units: "si" | "us") => windowWarnings(study.windows, study.spreads, 2, units).join("\n");
    expect(warned("si")).toMatch(metric);
    expect(warned("us")).not.toMatch(metric);
  });
});

describe("a report", () => {
  /** Without the scenario, which stands there as it was written. */
  const shownOn = (page: string): string =>
    page.replaceAll(/<pre.*?<\/pre>|<style>.*?<\/style>|\b4 L container/gsu, "");

  it.each([
    ["of a run", runReport("handled-container", measured)],
    ["of a comparison", compareReport(["one-station", "two-station"])],
  ])("%s has no metric unit, and its files in SI named", (_, input) => {
    expect(shownOn(reportPage(input))).toMatch(metric);
    const page = shownOn(reportPage({ ...input, units: "us" }));
    expect(page).not.toMatch(metric);
    expect(page).toContain("lb/h");
    expect(page).toContain("all digits in SI units in throughput.csv");
  });

  it("has the numbers of its files, times their factor", () => {
    const input = runReport("handled-container", measured);
    const page = reportPage({ ...input, units: "us" });
    const table = studyTables(input.scenarios.map(({ study }) => study)).find(({ name }) => name === "throughput")!;
    const [, , , , mean, half] = table.rows.find((row) => row[1] === "cell" && row[2] === "melt per hour")!;
    const row = /melt per hour<\/td><td>lb\/h<\/td>(?<cells>.*?)<\/tr>/su.exec(page)?.groups?.["cells"] ?? "";
    const [shownMean, shownHalf] = [...row.matchAll(/value="([^"]+)"/gu)].map(([, value]) => Number(value));
    expect(shownMean).toBeCloseTo(Number(mean) / pound, 6);
    expect(shownHalf).toBeCloseTo(Number(half) / pound, 6);
  });

  it("leaves the tables of the files as they are", () => {
    const { comparison, scenarios } = compareReport(["one-station", "two-station"]);
    const studies = scenarios.map(({ study }) => study);
    const before = JSON.stringify([...studyTables(studies), comparisonTable(comparison)]);
    reportPage({ version: "0", scenarios, comparison, units: "us" });
    expect(JSON.stringify([...studyTables(studies), comparisonTable(comparison)])).toBe(before);
  });
});

// Holds the process window of a station to values calculated by hand.
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { outsideWindow, stationWindows, type StationWindow } from "#analysis/window/stationWindow.ts";
import { stationRanges } from "#analysis/window/stationRanges.ts";
import { coolingRangeLines } from "#report/words/coolingRangeWords.ts";
import { materials } from "#physics/materials/materials.ts";
import { windowLines, windowTable, windowWarnings } from "#report/tables/windowWords.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { scenarioOf, shippedText, studyOf } from "../../../support/reported.ts";

const text = shippedText("two-station");

function windowsOf(set: readonly string[] = []): readonly StationWindow[] {
  const scenario = scenarioOf(text, "two", set);
  return stationWindows(scenario, idealCycle(scenario));
}

function rowOf(windows: readonly StationWindow[], quantity: string): StationWindow["rows"][number] {
  const row = windows[0]?.rows.find((each) => each.quantity.startsWith(quantity));
  if (!row) throw new Error(quantity);
  return row;
}

describe("the process window of the shipped two-station cell", () => {
  it("is given once for equal stations, and separately for a different one", () => {
    expect(windowsOf().map(({ stations }) => stations)).toEqual([["left", "right"]]);
    const apart = windowsOf(["stations.left.steps.cool=9 s"]);
    expect(apart.map(({ stations }) => stations)).toEqual([["left"], ["right"]]);
  });

  // Ballman and Shusman, Modern Plastics 37 (1959) 126, one-sided wall [M]:
  // t = 4 s² / (π² α) × ln[(4/π)(Tm − Tw)/(Te − Tw)].
  it("has the cooling time of the one-term formula for the thickest place", () => {
    const { coolingDiffusivity, meltTemperature, moldTemperature, demoldTemperature } = materials.get("HDPE")!;
    const [hot, cold, out] = [meltTemperature.value, moldTemperature.value, demoldTemperature.value];
    const log = Math.log(((4 / Math.PI) * (hot - cold)) / (out - cold));
    const seconds = ((4 * 0.00085 ** 2) / (Math.PI ** 2 * coolingDiffusivity.value)) * log;
    expect(rowOf(windowsOf(), "cooling time of the thickest place, perfect").value).toBeCloseTo(seconds, 2);
  });

  it("limits the cooling time to the time after inflation, without keys of the air the cool alone, and warns when they are too short", () => {
    const row = rowOf(windowsOf(), "cooling time of the thickest place, hottest");
    expect(row.high).toBeCloseTo(7.5, 9);
    expect(row.verdict).toBe("inside");
    const short = windowsOf(["stations.left.steps.cool=5 s", "stations.right.steps.cool=5 s"]);
    const outside = outsideWindow(short).map(({ quantity, verdict }) => `${quantity} ${verdict}`);
    expect(outside).toContain("cooling time of the thickest place, hottest point above");
    expect(windowWarnings(short, [], 2).join("\n")).toMatch(/left and right: .* s, above 5 s\. Cool longer/u);
    // Common practice, no published source: a drop of 1 to 3 s, close and open together 1.5 to 3 s.
    const quick = ["stations.*.steps.close=0.6 s", "stations.*.steps.open=0.6 s", "delivery.deliveryRate=420 kg/h"];
    expect(windowWarnings(windowsOf(quick), [], 2)).toEqual([
      "Unusual (common practice, no published source): parison drop of a reciprocating screw 0.936 s, below 1 s; close and open together 1.2 s, below 1.5 s.",
      "",
    ]);
    expect(windowWarnings(windowsOf(), [], 2)).toEqual([]);
  });

  // By hand [C]: 2 × (42 g + 12.6 g) = 109.2 g; at 110 kg/h 109.2 × 3600 / 110000 = 3.574 s.
  it("has the shot mass and the recharge time", () => {
    expect(rowOf(windowsOf(), "shot mass")).toMatchObject({ value: 0.1092, high: 0.4, verdict: "inside" });
    expect(rowOf(windowsOf(), "recharge time").value).toBeCloseTo(3.574, 3);
  });

  // Hang time: 0.8 s of close and 1.5 s of extra steps. First-order sag K L₀ (t_d/6 + t_h/2), with the elongational viscosity
  // of Trouton, On the coefficient of viscous traction, Proc. R. Soc. A 77 (1906) 426 [M].
  it("adds extra steps before the end of the close to the hang time, and no others", () => {
    const hung = text
      .replace("  flash:", "  parisonLength: 300 mm\n  sagLimit: 10 %\n  flash:")
      .replaceAll(
        "    steps:",
        "    extra:\n      - { after: drop, name: pre-blow, time: 1 s }\n      - { after: pre-blow, name: hold, time: 0.5 s }\n      - { after: close, name: pin down, time: 9 s }\n    steps:",
      );
    const scenario = scenarioOf(hung, "two");
    const sag = rowOf(stationWindows(scenario, idealCycle(scenario)), "sag of the parison").value;
    const drop = (0.1092 * 3600) / 360;
    const firstOrder = ((760 * 9.80665) / 3e5) * 0.3 * (drop / 6 + 2.3 / 2);
    expect(sag / firstOrder).toBeGreaterThan(1);
    expect(sag / firstOrder).toBeLessThan(1.02);
  });

  // Residence = hold-up / throughput: 3 kg at the melt per hour of the run.
  it("computes the time at heat from the melt per hour of the run, its waits included", () => {
    const { measures, windows, ideal } = studyOf(scenarioOf(text, "two", ["delivery.holdUp=3 kg"]));
    const perHour = measures.find(({ measure }) => measure === "melt per hour")!.interval.mean;
    const atHeat = rowOf(windows, "mean time at heat").value;
    expect(atHeat).toBeCloseTo(3 / (perHour / 3600), 6);
    expect(atHeat).not.toBeCloseTo((3 / 0.1092) * ideal.secondsPerShot, 3);
  });

  // Common practice, no published source: 1 to 5 % of rejects.
  it("compares the rejects of a run with common practice when the scenario has a cause of rejects", () => {
    const rejects = (set: readonly string[]) => {
      const { windows } = studyOf(scenarioOf(text, "two", set));
      return windows[0]?.rows.find(({ quantity }) => quantity === "rejects")?.verdict;
    };
    expect(rejects([])).toBeUndefined();
    expect(rejects(["quality={ rejects: 20 % }"])).toBe("above");
    expect(rejects(["quality={ rejects: 3 % }"])).toBe("inside");
  });

  it("prints an infinite time in words", () => {
    const never = windowsOf([
      "product.volume=0.8 L",
      "product.blowPressure=6 bar",
      "product.airSupply=6 bar",
      "product.airConductance=5 dm³/(s bar)",
    ]);
    expect(windowLines(never, 2).join("\n")).toMatch(/fill time, isothermal +without end +at most 0.4 s +above/u);
  });

  it("lists the keys of missing rows, and fills a row when its key is given", () => {
    const missing = (windows: readonly StationWindow[]): readonly string[] =>
      windows[0]?.missing.map((row) => row.quantity) ?? [];
    expect(missing(windowsOf())).toContain("stroke of the screw for one shot, without cushion");
    const given = windowsOf(["delivery.screwDiameter=63.5 mm"]);
    expect(missing(given)).not.toContain("stroke of the screw for one shot, without cushion");
    // Volume of the shot / area of the screw, calculated by hand [C].
    const melt = materials.get("HDPE")!.meltDensity.value;
    const stroke = 0.1092 / melt / ((Math.PI / 4) * 0.0635 ** 2);
    expect(rowOf(given, "stroke of the screw").value).toBeCloseTo(stroke, 9);
  });

  it("prints values in customary units and keeps SI units in the table", () => {
    expect(windowLines(windowsOf(), 2).join("\n")).toMatch(/shot mass +109 g +at most 400 g +inside/u);
    const table = windowTable([{ name: "two", windows: windowsOf() }]);
    expect(table.rows.filter(([, station, quantity]) => station === "left" && quantity === "shot mass")).toEqual([
      ["two", "left", "shot mass", 0.1092, "kg", null, 0.4, "inside", "", expect.any(String)],
    ]);
  });
});

describe("the cooling time over the range of the material", () => {
  const rangesOf = (set: readonly string[]) => {
    const scenario = scenarioOf(text, "two", set);
    return stationRanges(scenario, idealCycle(scenario))[0]!;
  };
  // Ballman and Shusman, Modern Plastics 37 (1959) 126 [M]; nearly perfect contact, diffusivity 0.9 to 1.2e-7 m²/s.
  it("has the time at the lowest and at the highest value, and no row for a value of the scenario", () => {
    const nearlyPerfect = ["stations.left.moldContact=1e7 W/(m² K)", "stations.right.moldContact=1e7 W/(m² K)"];
    const { stations, ranges } = rangesOf(nearlyPerfect);
    const row = ranges.find(({ key }) => key === "diffusivity")!;
    const at = (diffusivity: number) =>
      ((4 * 0.00085 ** 2) / (Math.PI ** 2 * diffusivity)) * Math.log(((4 / Math.PI) * 180) / 55);
    expect(row.atLow).toBeCloseTo(at(0.9e-7), 2);
    expect(row.atHigh).toBeCloseTo(at(1.2e-7), 2);
    expect(stations).toEqual(["left", "right"]);
    const keys = (set: readonly string[]) => rangesOf(set).ranges.map(({ key }) => key);
    expect(keys([])).toEqual([
      "conductivity",
      "diffusivity",
      "meltTemperature",
      "moldTemperature",
      "demoldTemperature",
    ]);
    const own = ["product.moldTemperature=12 °C", "product.material={ name: HDPE, diffusivity: 0.1 mm²/s }"];
    expect(keys(own)).toEqual(["conductivity", "meltTemperature", "demoldTemperature"]);
  });

  it("is printed in the units of the user", () => {
    const scenario = scenarioOf(text, "two");
    const lines = coolingRangeLines(stationRanges(scenario, idealCycle(scenario)), 2, 80, "us").join("\n");
    expect(lines).toMatch(/meltTemperature +338 °F +6\.75 s +410 °F +7\.96 s/u);
  });
});

describe("a material", () => {
  const read = (material: string) =>
    readScenario(text.replaceAll("material: HDPE", `material: ${material}`), { name: "two", file: "two.yaml" });

  it("that is not in the catalogue is reported with the nearest name", () => {
    const { scenario, issues } = read("HDPD");
    expect(scenario).toBeUndefined();
    expect(issues.map(({ code, path }) => ({ code, path }))).toEqual([
      { code: "material-unknown", path: "product.material" },
    ]);
    expect(issues[0]?.remedy).toContain("`HDPE`");
  });

  it("may have its own values, which replace the catalogue's", () => {
    const { scenario } = read("{ name: HDPE, meltDensity: 740 kg/m³, demoldTemperature: 55 °C }");
    const own = scenario?.stations[0]?.process?.material;
    expect(own?.meltDensity.value).toBe(740);
    expect(own?.demoldTemperature.value).toBeCloseTo(55, 9);
    expect(own?.conductivity).toEqual(materials.get("HDPE")?.conductivity);
  });

  it("that is not given leaves out the window, without an error", () => {
    const { scenario } = readScenario(text.replace("  material: HDPE\n", ""), { name: "two", file: "two.yaml" });
    expect(scenario && stationWindows(scenario, idealCycle(scenario))).toEqual([]);
  });
});

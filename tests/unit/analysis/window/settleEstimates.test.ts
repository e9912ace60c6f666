// Holds step times that are estimated by the process window to published formulas, calculated by hand.
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { settleEstimates } from "#analysis/window/settleEstimates.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import { materials } from "#physics/materials/materials.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { shippedText } from "../../../support/reported.ts";

function read(set: readonly string[] = []): Scenario {
  const { scenario, issues } = readScenario(shippedText("thin-bottle"), { name: "thin", file: "thin.yaml", set });
  if (!scenario) throw new Error(JSON.stringify(issues));
  return scenario;
}

/** Seconds of the closed mold after the delay of 0.1 s and the slower fill; by hand [C] the fill of this bottle takes 0.067 s. */
const inContact = (station: StationSpec): number =>
  distributionMean(station.blow) + distributionMean(station.cool) - 0.1 - 0.067;

describe("estimated steps", () => {
  it("are open after reading, and a cell with open estimates cannot be planned", () => {
    const scenario = read();
    expect(scenario.stations[0]?.estimates).toEqual({
      steps: ["blow", "cool", "vent"],
      path: ["stations"],
    });
    expect(() => idealCycle(scenario)).toThrow("estimated times are settled");
  });

  // Perfect contact, one term (Ballman and Shusman, Modern Plastics 37 (1959) 126 [M]):
  // t = 4 s² / (π² α) × ln[(4/π)(Tm − Tw)/(Te − Tw)].
  it("cool the thickest place from the end of inflation, by the published formula", () => {
    const contact = { ...read().stations[0]!.process!.values, "station.moldContact": Infinity };
    const scenario = read();
    const stations = scenario.stations.map((each) => ({ ...each, process: { ...each.process!, values: contact } }));
    const [station] = settleEstimates({ ...scenario, stations }).scenario.stations;
    const { coolingDiffusivity, meltTemperature, moldTemperature, demoldTemperature } = materials.get("HDPE")!;
    const [hot, cold, out] = [meltTemperature.value, moldTemperature.value, demoldTemperature.value];
    const log = Math.log(((4 / Math.PI) * (hot - cold)) / (out - cold));
    const seconds = ((4 * 0.0008 ** 2) / (Math.PI ** 2 * coolingDiffusivity.value)) * log;
    expect(inContact(station!)).toBeCloseTo(seconds, 2);
  });

  // An isothermal fill takes longer than at choked flow throughout: free air / (conductance × supply) (ISO 6358-1:2013 [M]).
  it("blow and vent for at least the time at choked flow", () => {
    const [station] = settleEstimates(read()).scenario.stations;
    // Free air of the fill, V × Δp / p0, over the free air per second, C × p1, with p0 = 1 bar.
    const freeAir = (0.315e-3 * 6e5) / 1e5;
    const choked = freeAir / ((4e-3 / 1e5) * 8.013e5);
    expect(distributionMean(station!.blow)).toBeGreaterThan(choked);
    // The way out takes about twice the fill; the narrow path makes it longer than the shortest usual vent.
    const [narrow] = settleEstimates(read(["product.airConductance=0.4 dm³/(s bar)"])).scenario.stations;
    expect(distributionMean(narrow!.vent) - 0.1).toBeGreaterThan(2 * 10 * choked);
    expect(settleEstimates(read()).scenario.stations[0]?.estimates).toBeUndefined();
  });

  it("rise with the square of the wall", () => {
    const values = ["product.wall.thickest=1.6 mm", "stations.moldContact=1e6 W/(m² K)"];
    const thick = settleEstimates(read(values)).scenario.stations[0]!;
    const once = settleEstimates(read(["stations.moldContact=1e6 W/(m² K)"])).scenario.stations[0]!;
    expect(inContact(thick) / inContact(once)).toBeCloseTo(4, 1);
  });

  it("reduce the cool step by the blow and by extra steps in the closed mold", () => {
    const own = shippedText("thin-bottle").replace(
      "  moldContact",
      "  extra:\n    - { after: blow, name: pin cooling, time: 0.4 s }\n    - { after: vent, name: pin out, time: 0.2 s }\n  moldContact",
    );
    const [plain] = settleEstimates(read()).scenario.stations;
    const { scenario } = readScenario(own, { name: "thin", file: "thin.yaml" });
    const [station] = settleEstimates(scenario!).scenario.stations;
    expect(distributionMean(station!.cool)).toBeCloseTo(distributionMean(plain!.cool) - 0.4, 9);
  });

  it.each([
    ["blow", "product.airSupply=6 bar", "product.airSupply"],
    ["blow", "product.airSupply=5 bar", "product.airSupply"],
    ["cool", "product.wall.thickest=5 m", "moldContact"],
    ["vent", "product.airConductance=1e-9 dm³/(s bar)", "product.airConductance"],
  ])("that would never end are reported: %s with %s", (step, setting, key) => {
    const { findings } = settleEstimates(read([setting]));
    const found = findings.find(({ path }) => path.join(".") === `stations.steps.${step}`);
    expect(found).toMatchObject({ code: "estimate-endless", value: "estimate" });
    expect(found?.expected).toContain(key);
  });

  const bare = shippedText("thin-bottle")
    .replace(/ {2}volume: .*\n/, "")
    .replace(/ {2}wall: .*\n/, "");

  it("report all missing keys at once, with their places, and once for stations that share a line", () => {
    const { scenario, issues } = readSettled(bare, { name: "thin", file: "thin.yaml" });
    expect(scenario).toBeUndefined();
    const lines = bare.split("\n");
    const reported = issues.map(({ code, path, place, value }) => [
      code,
      path,
      value,
      lines[place!.line - 1]!.slice(place!.column - 1),
    ]);
    expect(reported).toEqual(
      ["blow", "cool", "vent"].map((step) => [
        "estimate-inputs-missing",
        `stations.steps.${step}`,
        "estimate",
        "estimate",
      ]),
    );
    expect(issues.every(({ severity, place }) => severity === "error" && place?.file === "thin.yaml")).toBe(true);
    expect(issues.map(({ remedy }) => remedy).join(" ")).toMatch(/product\.volume.*product\.wall\.thickest/u);
  });

  it("report the keys of the station's own product when there are several", () => {
    const several = bare.replace(
      /product:\n((?: {2}.*\n)+)/u,
      (_, keys: string) => `products:\n  small:\n${keys.replaceAll(/^/gmu, "  ").trimEnd()}\n`,
    );
    const { issues } = readSettled(several, { name: "thin", file: "thin.yaml" });
    expect(issues.map(({ expected }) => expected).join(" ")).toContain("`products.small.wall.thickest`");
  });

  // Common practice, no published source: a vent of 0.5 to 1.5 s, a blow of at least 0.3 s.
  it("are compared with common practice as given times are, and are never shorter than the shortest usual step", () => {
    const vented = (set: readonly string[]) => {
      const { scenario } = settleEstimates(read(set));
      const [window] = stationWindows(scenario, idealCycle(scenario));
      const row = window!.rows.find(({ quantity }) => quantity === "vent")!;
      return [row.value, row.verdict];
    };
    expect(vented([])).toEqual([0.5, "inside"]);
    expect(vented(["stations.steps.vent=0.2 s"])).toEqual([0.2, "below"]);
    const slow = vented(["product.airConductance=0.4 dm³/(s bar)"]);
    expect(slow[0]).toBeGreaterThan(1.5);
    expect(slow[1]).toBe("above");
    expect(distributionMean(settleEstimates(read()).scenario.stations[0]!.blow)).toBe(0.3);
    const long = settleEstimates(read(["stations.airDelay=0.4 s"])).scenario.stations[0]!;
    expect(distributionMean(long.blow)).toBeCloseTo(0.4 + 0.067, 3);
  });
});

describe("molds with a thermal resistance", () => {
  const settled = (set: readonly string[]) => {
    const { scenario } = readSettled(shippedText("thin-bottle"), { name: "thin", file: "thin.yaml", set });
    const ideal = idealCycle(scenario!);
    const row = (quantity: string) =>
      stationWindows(scenario!, ideal)[0]!.rows.find((each) => each.quantity === quantity)!.value;
    return { seconds: ideal.secondsPerShot, row };
  };

  // By hand [C]: a shot of 64.4 g from every second drop, 2200 · 65 + 200,000 + 2500 · 60 J/kg, and 10 °C + R Q.
  it("have the temperature of the rate that their own cooling time gives", () => {
    const { seconds, row } = settled(["stations.moldResistance=2 K/kW"]);
    const heat = (0.0644 / (2 * seconds)) * 493_000;
    expect(row("heat into the mold")).toBeCloseTo(heat, 1);
    expect(row("mold temperature at this heat load")).toBeCloseTo(10 + 2e-3 * heat, 4);
    const same = settled([`product.moldTemperature=${10 + 2e-3 * heat} °C`]);
    expect(same.seconds).toBeCloseTo(seconds, 4);
    expect(seconds).toBeGreaterThan(settled([]).seconds);
  });

  it("slow a cell down where the cooling is far too weak, and never end it", () => {
    const { seconds, row } = settled(["stations.moldResistance=100 K/kW"]);
    expect(seconds).toBeGreaterThan(20);
    expect(row("mold temperature at this heat load")).toBeLessThan(65);
  });
});

describe("the cooling criterion", () => {
  const cooled = (set: readonly string[]): number => {
    const [station] = settleEstimates(read(set)).scenario.stations;
    return inContact(station!);
  };

  // Ballman and Shusman, Modern Plastics 37 (1959) 126 [M]: 8/π² in place of 4/π for the mean; nearly perfect contact.
  it("may be the mean temperature of the thickest place instead of its hottest point", () => {
    const { coolingDiffusivity, meltTemperature, moldTemperature, demoldTemperature } = materials.get("HDPE")!;
    const [hot, cold, out] = [meltTemperature.value, moldTemperature.value, demoldTemperature.value];
    const log = Math.log(((8 / Math.PI ** 2) * (hot - cold)) / (out - cold));
    const seconds = ((4 * 0.0008 ** 2) / (Math.PI ** 2 * coolingDiffusivity.value)) * log;
    expect(cooled(["product.coolingTo=mean", "stations.moldContact=1e8 W/(m² K)"])).toBeCloseTo(seconds, 2);
    expect(cooled(["product.coolingTo=inside"])).toBe(cooled([]));
  });

  // Two equal faces cool as two walls of half the thickness: a quarter of the time (Carslaw and Jaeger, Conduction of Heat in
  // Solids, 2nd ed., 1959, 3.3 [M]).
  it("is met sooner with inside air, and in a quarter of the time when air and mold cool alike", () => {
    const nearlyPerfect = ["product.coolingTo=mean", "stations.moldContact=1e7 W/(m² K)"];
    const air = (transfer: string) => `product.insideAir={ transfer: ${transfer} W/(m² K), temperature: 10 °C }`;
    const withoutAir = cooled(nearlyPerfect);
    expect(cooled([...nearlyPerfect, air("40")])).toBeLessThan(withoutAir);
    expect(cooled([...nearlyPerfect, air("1e7")]) / withoutAir).toBeCloseTo(0.25, 3);
    expect(cooled([...nearlyPerfect, air("0")])).toBeCloseTo(withoutAir, 9);
  });
});

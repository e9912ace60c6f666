// Times that a scenario leaves to the process window, held against the formulas' published form by hand.
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { settleEstimates } from "#analysis/window/settleEstimates.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { lawMean } from "#engine/distributions/law.ts";
import { materials } from "#physics/materials/materials.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { shippedText } from "../../support/reported.ts";

function read(set: readonly string[] = []): Scenario {
  const { scenario, issues } = readScenario(shippedText("thin-bottle"), { name: "thin", file: "thin.yaml", set });
  if (!scenario) throw new Error(JSON.stringify(issues));
  return scenario;
}

describe("estimated steps", () => {
  it("stand open after reading, and no cell is planned with them", () => {
    const scenario = read();
    expect(scenario.stations[0]?.estimates).toEqual({
      steps: ["blow", "cool", "vent"],
      path: ["stations"],
    });
    expect(() => idealCycle(scenario)).toThrow("estimated times are settled");
  });

  // Perfect contact, one term (Ballman & Shusman 1959 [M]): t = 4 s² / (π² α) × ln[(4/π)(Tm − Tw)/(Te − Tw)].
  it("cool the thickest place, the blow counted in, by hand", () => {
    const contact = { ...read().stations[0]!.process!.values, "station.moldContact": Infinity };
    const scenario = read();
    const stations = scenario.stations.map((each) => ({ ...each, process: { ...each.process!, values: contact } }));
    const [station] = settleEstimates({ ...scenario, stations }).scenario.stations;
    const { coolingDiffusivity, meltTemperature, moldTemperature, demoldTemperature } = materials.get("HDPE")!;
    const [hot, cold, out] = [meltTemperature.value, moldTemperature.value, demoldTemperature.value];
    const log = Math.log(((4 / Math.PI) * (hot - cold)) / (out - cold));
    const seconds = ((4 * 0.00075 ** 2) / (Math.PI ** 2 * coolingDiffusivity.value)) * log;
    expect(lawMean(station!.cool) + lawMean(station!.blow)).toBeCloseTo(seconds, 2);
  });

  // Isothermal fill below the choke is longer than volume × pressure rise / (conductance × supply) at choked flow (ISO 6358-1 [R]).
  it("blow and vent for at least the time at choked flow", () => {
    const [station] = settleEstimates(read()).scenario.stations;
    // Free air to bring in, V × Δp / p0, over the free air that passes a second, C × p1 (p0 = 1 bar).
    const freeAir = (0.315e-3 * 6e5) / 1e5;
    const choked = freeAir / ((4e-3 / 1e5) * 8.013e5);
    expect(lawMean(station!.blow)).toBeGreaterThan(choked);
    expect(lawMean(station!.vent)).toBeGreaterThan(lawMean(station!.blow));
    expect(settleEstimates(read()).scenario.stations[0]?.estimates).toBeUndefined();
  });

  it("take a thicker wall longer, by the square", () => {
    const thin = settleEstimates(read()).scenario.stations[0]!;
    const values = ["product.wall.thickest=1.5 mm", "stations.moldContact=1e6 W/(m² K)"];
    const thick = settleEstimates(read(values)).scenario.stations[0]!;
    const once = settleEstimates(read(["stations.moldContact=1e6 W/(m² K)"])).scenario.stations[0]!;
    const whole = (station: typeof thin): number => lawMean(station.cool) + lawMean(station.blow);
    expect(whole(thick) / whole(once)).toBeCloseTo(4, 1);
  });

  it("leave to the cool what blow and a user's own step against the cold mold have not done already", () => {
    const own = shippedText("thin-bottle").replace(
      "  moldContact",
      "  extra:\n    - { after: blow, name: pin cooling, time: 0.4 s }\n    - { after: vent, name: pin out, time: 0.2 s }\n  moldContact",
    );
    const [plain] = settleEstimates(read()).scenario.stations;
    const { scenario } = readScenario(own, { name: "thin", file: "thin.yaml" });
    const [station] = settleEstimates(scenario!).scenario.stations;
    expect(lawMean(station!.cool)).toBeCloseTo(lawMean(plain!.cool) - 0.4, 9);
  });

  it.each([
    ["blow", "product.airSupply=6 bar", "product.airSupply"],
    ["blow", "product.airSupply=5 bar", "product.airSupply"],
    ["cool", "product.wall.thickest=5 m", "moldContact"],
    ["vent", "product.airConductance=1e-9 dm³/(s bar)", "product.airConductance"],
  ])("that would never end are told: %s with %s", (step, setting, key) => {
    const { findings } = settleEstimates(read([setting]));
    const found = findings.find(({ path }) => path.join(".") === `stations.steps.${step}`);
    expect(found).toMatchObject({ code: "estimate-endless", value: "estimate" });
    expect(found?.expected).toContain(key);
  });

  const bare = shippedText("thin-bottle")
    .replace(/ {2}volume: .*\n/, "")
    .replace(/ {2}wall: .*\n/, "");

  it("tell all keys that are missing, for every step at once, where they stand and once for stations that share the line", () => {
    const { scenario, issues } = readSettled(bare, { name: "thin", file: "thin.yaml" });
    expect(scenario).toBeUndefined();
    const lines = bare.split("\n");
    const told = issues.map(({ code, path, place, value }) => [
      code,
      path,
      value,
      lines[place!.line - 1]!.slice(place!.column - 1),
    ]);
    expect(told).toEqual(
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

  it("name the keys of the product that the station makes, where there are several", () => {
    const several = bare.replace(
      /product:\n((?: {2}.*\n)+)/u,
      (_, keys: string) => `products:\n  small:\n${keys.replaceAll(/^/gmu, "  ").trimEnd()}\n`,
    );
    const { issues } = readSettled(several, { name: "thin", file: "thin.yaml" });
    expect(issues.map(({ expected }) => expected).join(" ")).toContain("`products.small.wall.thickest`");
  });

  it("are no slip of anybody's: an estimated vent is not held against what is usual, a given one is", () => {
    const vented = (set: readonly string[]) => {
      const { scenario } = settleEstimates(read(set));
      const [window] = stationWindows(scenario, idealCycle(scenario));
      return window!.rows.find(({ quantity }) => quantity === "vent")?.verdict;
    };
    expect(vented([])).toBeUndefined();
    expect(vented(["stations.steps.vent=0.2 s"])).toBe("below");
  });
});

describe("what must have cooled", () => {
  const cooled = (set: readonly string[]): number => {
    const [station] = settleEstimates(read(set)).scenario.stations;
    return lawMean(station!.cool) + lawMean(station!.blow);
  };

  // Ballman & Shusman 1959 [M]: 8/π² in place of 4/π for the mean; contact near perfect.
  it("may be the mean of the thickest place in place of its inside face", () => {
    const { coolingDiffusivity, meltTemperature, moldTemperature, demoldTemperature } = materials.get("HDPE")!;
    const [hot, cold, out] = [meltTemperature.value, moldTemperature.value, demoldTemperature.value];
    const log = Math.log(((8 / Math.PI ** 2) * (hot - cold)) / (out - cold));
    const seconds = ((4 * 0.00075 ** 2) / (Math.PI ** 2 * coolingDiffusivity.value)) * log;
    expect(cooled(["product.coolingTo=mean", "stations.moldContact=1e8 W/(m² K)"])).toBeCloseTo(seconds, 2);
    expect(cooled(["product.coolingTo=inside"])).toBe(cooled([]));
  });

  // Two faces alike, half as thick each (Carslaw & Jaeger 3.3 [M]): the coldest inside air takes the time down to a quarter.
  it("cools sooner with air inside, down to a quarter with one that grips as hard as the mold and is as cold", () => {
    const hard = ["product.coolingTo=mean", "stations.moldContact=1e7 W/(m² K)"];
    const air = (transfer: string) => `product.insideAir={ transfer: ${transfer} W/(m² K), temperature: 10 °C }`;
    const dry = cooled(hard);
    expect(cooled([...hard, air("40")])).toBeLessThan(dry);
    expect(cooled([...hard, air("1e7")]) / dry).toBeCloseTo(0.25, 3);
    expect(cooled([...hard, air("0")])).toBeCloseTo(dry, 9);
  });
});

// Times that a scenario leaves to the process window, held against the formulas' published form by hand.
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/idealCycle.ts";
import { settleEstimates } from "#analysis/settleEstimates.ts";
import { lawMean } from "#engine/law.ts";
import { materials } from "#physics/materials.ts";
import { readScenario } from "#scenario/readScenario.ts";
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
    expect(scenario.stations[0]?.estimates).toEqual(["blow", "cool", "vent"]);
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
    const { issues } = settleEstimates(read([setting]));
    const found = issues.find(({ path }) => path === `stations.side 1.steps.${step}`);
    expect(found).toMatchObject({ code: "estimate-endless", severity: "error" });
    expect(found?.expected).toContain(key);
  });

  it("tell all keys that are missing, for every step at once", () => {
    const { issues } = settleEstimates(
      readScenario(
        shippedText("thin-bottle")
          .replace(/ {2}volume: .*\n/, "")
          .replace(/ {2}wall: .*\n/, ""),
        {
          name: "thin",
          file: "thin.yaml",
        },
      ).scenario!,
    );
    const told = new Set(issues.map(({ code, path }) => `${code} ${path}`));
    expect(told).toEqual(
      new Set(
        ["side 1", "side 2"].flatMap((side) =>
          ["blow", "cool", "vent"].map((step) => `estimate-inputs-missing stations.${side}.steps.${step}`),
        ),
      ),
    );
    expect(issues.map(({ remedy }) => remedy).join(" ")).toMatch(/product\.volume.*product\.wall\.thickest/u);
  });
});

// Costs are read in SI units and the user's currency, and faults in them are reported.
import { expect, it } from "vitest";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { twoStations } from "./validTexts.ts";

const read = (costs: string) => readScenario(twoStations, { name: "cell", file: "cell.yaml", set: [`costs=${costs}`] });

it("has costs in SI units: 36 per h are 0.01 per s, 0.36 per kWh are 1e-7 per J, 1000 for 2000 parts are 0.5 per part", () => {
  const rates =
    "{ currency: EUR, resin: 1400 per t, machine: 36 per h, energy: 0.36 per kWh, tooling: { price: 1000, life: 2000 parts }, packing: 5 per 1000 parts, air: 0.02 per m³ }";
  expect(read(rates).scenario?.costs).toEqual({
    currency: "EUR",
    resin: 1.4,
    machine: 0.01,
    energy: 1e-7,
    tooling: 0.5,
    packing: 0.005,
    air: 0.02,
  });
  expect(read("{ currency: EUR, tooling: 0.25 per part }").scenario?.costs).toEqual({ currency: "EUR", tooling: 0.25 });
});

it.each([
  ["{ resin: 1.40 per kg }", "missing", "costs.currency"],
  ["{ currency: EUR, resin: 1.40 }", "unit-missing", "costs.resin"],
  ["{ currency: EUR, resin: 1.40 per h }", "unit-mismatch", "costs.resin"],
  ["{ currency: EUR, tooling: { price: -5, life: 1000 parts } }", "out-of-range", "costs.tooling.price"],
  ["{ currency: EUR, tooling: { price: 5 EUR, life: 1000 parts } }", "wrong-type", "costs.tooling.price"],
  ["{ currency: EUR, tooling: { price: 5, life: 0 parts } }", "not-positive", "costs.tooling.life"],
  ["{ currency: EUR, labor: 20 per h }", "unknown-key", "costs.labor"],
])("reports in %s: %s at %s", (costs, code, path) => {
  const { scenario, issues } = read(costs);
  expect(scenario).toBeUndefined();
  expect(issues.map((issue) => [issue.code, issue.path])).toContainEqual([code, path]);
});

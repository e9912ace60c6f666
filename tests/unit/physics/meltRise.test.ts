// The effect of a melt temperature that rises with the screw's rate on the rows of the process window.
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { matchScrew } from "#analysis/ideal/matchScrew.ts";
import { screwPace } from "#analysis/ideal/screwPace.ts";
import { settleEstimates } from "#analysis/window/settleEstimates.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import { missingRows, processWindow } from "#physics/window/processWindow.ts";
import type { WindowInput } from "#physics/window/windowInput.ts";
import type { WindowRow } from "#physics/window/windowRule.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";
import { bottle } from "./inventedBottle.ts";

const melt = "melt temperature at this rate";
const kilograms = (hourly: number): number => hourly / 3600;

/** The bottle's screw makes 80 kg/h of HDPE at 190 °C. */
const withRise = (from: number, rise: number, per: number): WindowInput => ({
  ...bottle,
  "delivery.meltRise.from": kilograms(from),
  "delivery.meltRise.rise": rise,
  "delivery.meltRise.per": kilograms(per),
});
const rowOf = (input: WindowInput, quantity: string): WindowRow =>
  processWindow(input).find((row) => row.quantity === quantity)!;

describe("a rise of the melt temperature with the rate", () => {
  // By hand [C]: 190 + 4 · (80 − 70)/5 = 198 °C. HDPE melt of 170 to 210 °C: Osswald et al., International Plastics Handbook,
  // 2006; Lee, Blow Molding Handbook, 2nd ed., 2006 [M].
  it("is a straight line through two measurements", () => {
    expect(rowOf(withRise(70, 4, 5), melt)).toMatchObject({ low: 170, high: 210, verdict: "inside" });
    expect(rowOf(withRise(70, 4, 5), melt).value).toBeCloseTo(198, 9);
    expect(rowOf(withRise(80, 4, 5), melt).value).toBeCloseTo(190, 9);
  });

  it.each([
    [12, 214, "above", "slower screw"],
    [-12, 166, "below", "hotter barrel"],
  ])("of %d K per 5 kg/h gives %d °C, %s the range", (rise, value, verdict, remedy) => {
    const row = rowOf(withRise(70, rise, 5), melt);
    expect(row.value).toBeCloseTo(value, 9);
    expect(row.verdict).toBe(verdict);
    expect(row.remedy).toContain(remedy);
  });

  // Ballman and Shusman, Modern Plastics 37 (1959) 126 [M]:
  // 4 · 1.69e-6/(π² · 1.05e-7) · ln(4/π · 188/55) = 6.5231 · 1.47067 = 9.593 s, at 190 °C 9.310 s.
  it("lengthens the cooling time", () => {
    const quantity = "cooling time of the thickest place, perfect contact";
    expect(rowOf(bottle, quantity).value).toBeCloseTo(9.31, 3);
    expect(rowOf(withRise(70, 4, 5), quantity).value).toBeCloseTo(9.593, 3);
  });

  // By hand [C]: 2,500 J/(kg K) of the melt · 8 K · 60 kg/h = 333.3 W more.
  it("increases the heat into the melt", () => {
    const more = rowOf(withRise(70, 4, 5), "heat into the melt").value - rowOf(bottle, "heat into the melt").value;
    expect(more).toBeCloseTo((2500 * 8 * 60) / 3600, 6);
  });

  it("thins the melt: more sag and less stress in the die", () => {
    // 190 to 198 °C [C]: exp(28,000/8.314 · (1/471.15 − 1/463.15)) = 0.8838; first-order sag is inverse to it.
    const [plain, hot] = [bottle, withRise(70, 4, 5)];
    const sag = "sag of the parison when the mold has closed";
    expect(rowOf(hot, sag).value / rowOf(plain, sag).value).toBeCloseTo(1 / 0.8838, 2);
    const stress = "shear stress at the die wall, at least";
    expect(rowOf(hot, stress).value / rowOf(plain, stress).value).toBeCloseTo(0.8838 ** 0.3, 4);
  });

  it("leaves shear rate and time at heat unchanged, and adds one row", () => {
    const [plain, hot] = [processWindow(bottle), processWindow(withRise(70, 4, 5))];
    const changed = hot.filter((row) => plain.every((each) => JSON.stringify(each) !== JSON.stringify(row)));
    expect(hot).toHaveLength(plain.length + 1);
    expect(
      changed.filter(({ quantity }) => !/cool|place|heat into|melt temperature|sag|stress/u.test(quantity)),
    ).toEqual([]);
  });

  it("keeps the melt at the demold temperature or above, and marks a melt below its range", () => {
    const frozen = withRise(90, 200, 1);
    expect(rowOf(frozen, melt).verdict).toBe("below");
    expect(rowOf(frozen, "cooling time of the thickest place, hottest point").value).toBe(0);
  });

  it("needs the plasticating rate, and adds no missing row when it is not given", () => {
    expect(missingRows(bottle).map(({ quantity }) => quantity)).not.toContain(melt);
    const { "delivery.plasticatingRate": _, ...measured } = withRise(70, 4, 5);
    expect(missingRows(measured).find(({ quantity }) => quantity === melt)?.keys).toEqual([
      "delivery.plasticatingRate",
    ]);
  });
});

describe("the rise in a scenario", () => {
  const rise = "delivery.meltRise={ from: 100 kg/h, rise: 4 °C, per: 10 kg/h }";
  const meltAt = (name: string, ...set: readonly string[]): number => {
    const scenario = matchScrew(scenarioOf(shippedText(name), name, [rise, ...set]));
    const [window] = stationWindows(scenario, idealCycle(scenario));
    return window!.rows.find(({ quantity }) => quantity === melt)!.value;
  };

  it.each([
    ["100 kg/h", 190],
    ["110 kg/h", 194],
    ["85 kg/h", 184],
  ])("follows the rate of the screw: %s", (rate, expected) => {
    expect(meltAt("two-station", `delivery.plasticatingRate=${rate}`)).toBeCloseTo(expected, 6);
  });

  it("starts at the product's own melt temperature, and may be in °F", () => {
    const set = ["product.meltTemperature=200 °C", "delivery.meltRise.rise=9 °F", "delivery.plasticatingRate=120 kg/h"];
    expect(meltAt("two-station", ...set)).toBeCloseTo(210, 6);
  });

  it("follows the rate of a matched screw", () => {
    const scenario = matchScrew(scenarioOf(shippedText("bottle-continuous"), "bottle-continuous", [rise]));
    const { now, full } = screwPace(scenario, idealCycle(scenario))!.rates!;
    expect(now).toBeLessThan(0.9 * full);
    expect(meltAt("bottle-continuous")).toBeCloseTo(190 + (4 * (now * 3600 - 100)) / 10, 6);
    expect(meltAt("bottle-continuous", "delivery.rate=fixed")).toBeCloseTo(194, 6);
  });

  it("lengthens an estimated cooling time for a faster screw", () => {
    const cool = (...set: readonly string[]): number => {
      const { scenario } = settleEstimates(scenarioOf(shippedText("thin-bottle"), "thin-bottle", set));
      return distributionMean(scenario.stations[0]!.cool);
    };
    const [slow, fast] = ["90 kg/h", "120 kg/h"].map((rate) => `delivery.plasticatingRate=${rate}`);
    expect(cool(fast!)).toBe(cool(slow!));
    const hot = "delivery.meltRise={ from: 90 kg/h, rise: 4 °C, per: 10 kg/h }";
    expect(cool(hot, slow!)).toBe(cool(slow!));
    expect(cool(hot, fast!)).toBeGreaterThan(1.02 * cool(slow!));
  });
});

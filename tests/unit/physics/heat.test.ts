// Holds the heat of the melt to calorimetry, and the mold temperature under load to values by hand.
import { describe, expect, test } from "vitest";
import { enthalpyChange } from "#physics/cooling/enthalpyChange.ts";
import { loadedMold } from "#physics/cooling/loadedMold.ts";
import { materials } from "#physics/materials/materials.ts";
import { phasesOf } from "#physics/window/windowInput.ts";

describe("enthalpy by phases", () => {
  const hdpe = phasesOf({ material: materials.get("HDPE")! });

  test("is that of the measured heat capacity of glassy PVC between 25 and 67 °C", () => {
    // Chang, Journal of Research of the National Bureau of Standards 82 (1977) 9 [R]: c_p = 10 + 0.166 T J/(K mol); integral [C].
    const [from, to] = [298.15, 340];
    const integral = (10 * (to - from) + (0.166 / 2) * (to * to - from * from)) / 62.498e-3;
    const change = enthalpyChange(phasesOf({ material: materials.get("PVC-U")! }), from - 273.15, to - 273.15);
    expect(Math.abs(change / integral - 1)).toBeLessThan(0.02);
  });

  test("of polyethylene is within 12 % of an ideal chain crystal's fusion times crystallinity", () => {
    // Broadhurst, Journal of Research of the National Bureau of Standards 67A (1963) 233 [R]: 975 to 1025 cal/mol of CH₂, 14.027 g/mol;
    // crystallinity of HDPE 0.6 to 0.75 [M].
    const crystal = (calories: number) => (calories * 4.184) / 14.027e-3;
    expect(hdpe.fusion).toBeGreaterThan(crystal(975) * 0.6);
    expect(hdpe.fusion).toBeLessThan(crystal(1025) * 0.75);
    // Atkinson and Richardson, Transactions of the Faraday Society 65 (1969) 1764 [R]: 307 J/g for a perfect crystal.
    expect(hdpe.fusion / 307e3).toBeGreaterThan(0.6);
    expect(hdpe.fusion / 307e3).toBeLessThan(0.75);
  });

  test("adds up over any temperature between, and changes its sign on the way back", () => {
    for (const between of [50, 129, 130, 131, 180]) {
      const sum = enthalpyChange(hdpe, 23, between) + enthalpyChange(hdpe, between, 190);
      expect(sum).toBeCloseTo(enthalpyChange(hdpe, 23, 190), 6);
    }
    expect(enthalpyChange(hdpe, 190, 65)).toBe(-enthalpyChange(hdpe, 65, 190));
    // By hand [C]: 2200 · 65 + 200,000 + 2500 · 60.
    expect(enthalpyChange(hdpe, 65, 190)).toBeCloseTo(493_000, 6);
  });
});

test("a mold with a resistance is hotter in proportion to the load", () => {
  // By hand [C].
  expect(loadedMold(10, 2e-3, 3600)).toBeCloseTo(17.2, 9);
  expect(loadedMold(10, 2e-3, 0)).toBe(10);
});

// Holds air flow, blow and vent times and clamp force to ISO 6358-1, integrated independently, and to values by hand.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { airMassFlow, type AirPath } from "#physics/air/airMassFlow.ts";
import { clampForce } from "#physics/air/clampForce.ts";
import { exhaustTime } from "#physics/air/exhaustTime.ts";
import { fillTime } from "#physics/air/fillTime.ts";
import { flushAir } from "#physics/air/flushAir.ts";
import { freeAir } from "#physics/air/freeAir.ts";
import { ATMOSPHERE } from "#physics/air/standardAir.ts";
import { ventTime } from "#physics/air/ventTime.ts";
import { processWindow } from "#physics/window/processWindow.ts";
import type { WindowInput } from "#physics/window/windowInput.ts";
import { bottle } from "./inventedBottle.ts";
import { expectPrinted } from "./printed.ts";

/** Illustrative inputs: 5 dm³/(s bar), b 0.3. */
const path: AirPath = { conductance: 5e-8, criticalRatio: 0.3 };
const fill = { volume: 0.001, from: 1.013e5, to: 7e5, supply: 8e5, temperature: 20 };
const exhaust = { volume: 0.001, from: 7e5, to: 1.113e5, back: 1.013e5, temperature: 20 };

// ISO 6358-1:2013, with the reference air of 1.185 kg/m³ at 293.15 K [M].
describe("the mass flow of ISO 6358-1:2013", () => {
  test("is choked up to the critical ratio: C p ρ₀", () => {
    // By hand [C]: 5e-8 · 8e5 · 1.185 = 0.0474 kg/s.
    expect(airMassFlow(path, { ahead: 8e5, behind: 2.4e5, temperature: 20 })).toBeCloseTo(0.0474, 12);
    expect(airMassFlow(path, { ahead: 8e5, behind: 1e5, temperature: 20 })).toBeCloseTo(0.0474, 12);
  });

  test("decreases along an ellipse above the critical ratio", () => {
    // By hand [C] at p₂/p₁ = 0.72: (0.72 − 0.3)/0.7 = 0.6, √(1 − 0.36) = 0.8.
    expect(airMassFlow(path, { ahead: 8e5, behind: 5.76e5, temperature: 20 })).toBeCloseTo(0.8 * 0.0474, 12);
    expect(airMassFlow(path, { ahead: 8e5, behind: 8e5, temperature: 20 })).toBe(0);
  });

  test("is larger for colder air: √(T₀/T₁)", () => {
    // By hand [C]: √(293.15/586.3) = 1/√2 at 313.15 °C.
    expect(airMassFlow(path, { ahead: 8e5, behind: 1e5, temperature: 313.15 })).toBeCloseTo(0.0474 / Math.SQRT2, 12);
  });
});

describe("air beside the part", () => {
  test("flushes with the choked flow of its outlet", () => {
    // By hand [C]: C p₁ t = 1e-8 · 701,325 · 3 m³.
    const outlet = { conductance: 1e-8, criticalRatio: 0.3 };
    expect(flushAir(outlet, { pressure: 6e5, time: 3, temperature: 20 })).toBeCloseTo(0.02103975, 10);
    expect(flushAir(outlet, { pressure: 6e5, time: 0, temperature: 20 })).toBe(0);
  });

  test("in hose and pin takes part in fill, vent and consumption", () => {
    // By hand [C]: a dead volume of a quarter makes each a quarter more.
    const dead = { ...bottle, "station.deadVolume": 0.2e-3 };
    const row = (input: WindowInput, quantity: string) =>
      processWindow(input).find((each) => each.quantity === quantity)!.value;
    for (const quantity of [
      "fill time, isothermal",
      "vent time, adiabatic",
      "free air that the compressor adds for one bottle",
      "compressor power for the air of this mold",
    ]) {
      expect(row(dead, quantity) / row(bottle, quantity)).toBeCloseTo(1.25, 9);
    }
    const flushed = { ...bottle, "product.flush.time": 3, "product.flush.conductance": 1e-8 };
    const added = row(flushed, "free air that the compressor adds for one bottle");
    expect(added).toBeCloseTo(4.8e-3 + 0.02103975, 9);
    expect(row(flushed, "free air that flushes one bottle")).toBeCloseTo(0.02103975, 9);
  });
});

describe("a rigid volume of 1 L", () => {
  // Flow of ISO 6358-1:2013 [M], mass and heat balances integrated independently of this project [C].
  test("is filled from 1.013 to 7.00 bar absolute from a supply of 8 bar in the computed time", () => {
    expectPrinted(fillTime(path, fill, "isothermal"), "0.17011");
    expectPrinted(fillTime(path, fill, "adiabatic"), "0.12150");
  });

  test("is vented from 7 to 1.113 bar absolute in the computed time", () => {
    expectPrinted(exhaustTime(path, exhaust, "isothermal"), "0.40299");
    expectPrinted(exhaustTime(path, exhaust, "adiabatic"), "0.33221");
  });

  test("takes about twice as long to vent as to fill", () => {
    const ratio = exhaustTime(path, exhaust, "isothermal") / fillTime(path, fill, "isothermal");
    expect(ratio).toBeGreaterThan(2);
    expect(ratio).toBeLessThan(2.8);
  });

  test("has the same vent time with gauge pressures", () => {
    const vent = { volume: 0.001, blowPressure: 6e5, ventTo: 1e4, temperature: 20 };
    const absolute = { ...exhaust, from: 6e5 + ATMOSPHERE, to: 1e4 + ATMOSPHERE, back: ATMOSPHERE };
    expect(ventTime(path, vent, "adiabatic")).toBe(exhaustTime(path, absolute, "adiabatic"));
  });

  test("never reaches the pressure of the supply or the surroundings, and needs no time when the target is reached already", () => {
    expect(fillTime(path, { ...fill, to: 8e5 }, "isothermal")).toBe(Infinity);
    expect(fillTime(path, { ...fill, to: 1e5 }, "isothermal")).toBe(0);
    expect(exhaustTime(path, { ...exhaust, to: 1.013e5 }, "isothermal")).toBe(Infinity);
    expect(exhaustTime(path, { ...exhaust, to: 7e5 }, "isothermal")).toBe(0);
  });

  test("has the closed forms at choked flow throughout", () => {
    // By hand [C], isothermal: fill V Δp/(R T C p ρ₀) = 0.001 · 1e5/(287.05 · 293.15 · 0.0474), vent V ln(p/p')/(R T C ρ₀).
    const choked = fillTime(path, { ...fill, from: 1e5, to: 2e5 }, "isothermal");
    expect(choked).toBeCloseTo(100 / (287.05 * 293.15 * 0.0474), 9);
    const emptied = exhaustTime(path, { ...exhaust, to: 5e5 }, "isothermal");
    expect(emptied).toBeCloseTo((0.001 * Math.log(7 / 5)) / (287.05 * 293.15 * 5e-8 * 1.185), 9);
  });
});

test("1.05 L at 6 bar gauge hold 7.364 normal liters, 6.300 of them added by the compressor", () => {
  // By hand [C] at 1.01325 bar and a reference of 1 bar.
  const { total, added } = freeAir(1.05e-3, 6e5);
  expectPrinted(1000 * total, "7.364");
  expectPrinted(1000 * added, "6.300");
});

describe("the clamp force", () => {
  // By hand [C], illustrative inputs: 2 · 90 · 200 mm at 7 bar = 25.20 kN, 2 · 90 mm at 100 N/mm = 18.00 kN.
  const mold = {
    cavities: 2,
    projectedArea: 0.09 * 0.2,
    blowPressure: 7e5,
    pinchLength: 0.09,
    pinchLoad: 1e5,
    margin: 1,
  };
  test("is 25.20 kN of air and 18.00 kN of pinch, 43.20 kN in all", () => {
    expectPrinted(clampForce({ ...mold, pinchLoad: 0 }) / 1000, "25.20");
    expectPrinted(clampForce({ ...mold, blowPressure: 0 }) / 1000, "18.00");
    expectPrinted(clampForce(mold) / 1000, "43.20");
    expectPrinted(clampForce({ ...mold, margin: 1.25 }) / 1000, "54.00");
  });

  test("rises with pressure, cavities, area, pinch and margin", () => {
    const more = fc.double({ min: 1.01, max: 3, noNaN: true });
    const key = fc.constantFrom<(keyof typeof mold)[]>(
      "cavities",
      "projectedArea",
      "blowPressure",
      "pinchLength",
      "margin",
    );
    fc.assert(
      fc.property(key, more, (which, factor) => {
        expect(clampForce({ ...mold, [which]: mold[which] * factor })).toBeGreaterThan(clampForce(mold));
      }),
    );
  });
});

test("fill time is proportional to the volume, inverse to the conductance, and shorter when adiabatic", () => {
  const pressure = fc.double({ min: 1.2e5, max: 7.9e5, noNaN: true });
  fc.assert(
    fc.property(pressure, fc.double({ min: 0.1, max: 0.5, noNaN: true }), (to, criticalRatio) => {
      const some = { conductance: 3e-8, criticalRatio };
      const time = fillTime(some, { ...fill, to }, "isothermal");
      expect(fillTime(some, { ...fill, to, volume: 0.002 }, "isothermal") / time).toBeCloseTo(2, 9);
      expect(fillTime({ ...some, conductance: 6e-8 }, { ...fill, to }, "isothermal") / time).toBeCloseTo(0.5, 9);
      expect(fillTime(some, { ...fill, to }, "adiabatic")).toBeLessThan(time);
      const empty = { ...exhaust, from: to + 1e4, to: 1.113e5 };
      expect(exhaustTime(some, empty, "adiabatic")).toBeLessThan(exhaustTime(some, empty, "isothermal"));
    }),
  );
});

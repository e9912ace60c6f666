// Holds screw, drive and hold-up to values by hand and to common practice.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { backFlow } from "#physics/screw/backFlow.ts";
import { enthalpyChange } from "#physics/cooling/enthalpyChange.ts";
import { materials } from "#physics/materials/materials.ts";
import { pelletTravelTime } from "#physics/screw/pelletTravelTime.ts";
import { rechargeTime } from "#physics/screw/rechargeTime.ts";
import { residenceTime } from "#physics/screw/residenceTime.ts";
import { ruleOfThumbRate } from "#physics/screw/ruleOfThumbRate.ts";
import { screwHoldUp } from "#physics/screw/screwHoldUp.ts";
import { screwOutput } from "#physics/screw/screwOutput.ts";
import { shotStroke } from "#physics/screw/shotStroke.ts";
import { specificDriveEnergy, usualDriveEnergy } from "#physics/screw/specificDriveEnergy.ts";
import { expectPrinted } from "./printed.ts";

/** NIST SP 811, 2008, appendix B.8 [M]. */
const POUND = 0.45359237;
const POUND_PER_HOUR = POUND / 3600;
const INCH = 0.0254;
const BTU = 1055.05585262;
const HORSEPOWER = 745.699872;
const KILOWATT_HOUR = 3.6e6;

test("the output is 0, not below, when the head pressure is too high", () => {
  const channel = { diameter: 0.075, depth: 0.006, helixAngle: 20, length: 1.9 };
  expect(screwOutput(channel, { speed: 1, pressure: 70e6, viscosity: 100 })).toBe(0);
});

test.each([
  // lb/h ≈ 16 D^2.2, smooth bore: Giles, Wagner and Mount, Extrusion: The Definitive Processing Guide and Handbook, 2005 [M, low
  // confidence]; values [C].
  [2.5, "120.1"],
  [3.5, "251.8"],
  [4.5, "437.7"],
])("the rule of thumb for %d inches gives %s lb/h", (inches, printed) => {
  expectPrinted(ruleOfThumbRate(inches * INCH) / POUND_PER_HOUR, printed);
});

describe("energy", () => {
  test("15 to 5 lb/h per hp are 0.110 to 0.329 kWh/kg", () => {
    // Society of the Plastics Industry, Plastics Engineering Handbook, 4th ed., 1976 [R]; kWh/kg [C].
    const at = (rate: number) => specificDriveEnergy(HORSEPOWER, rate * POUND_PER_HOUR) / KILOWATT_HOUR;
    expectPrinted(at(15), "0.110");
    expectPrinted(at(5), "0.329");
    expectPrinted(usualDriveEnergy.low / KILOWATT_HOUR, "0.110");
    expectPrinted(usualDriveEnergy.high / KILOWATT_HOUR, "0.329");
  });

  const fahrenheit = (degrees: number) => ((degrees - 32) * 5) / 9;
  const specificHeat = (0.55 * BTU * 9) / 5 / POUND;
  const rise = (fusion: number) =>
    enthalpyChange(
      { solid: specificHeat, melt: specificHeat, transition: 130, fusion },
      fahrenheit(75),
      fahrenheit(425),
    );

  test("HDPE from 75 to 425 °F takes 0.1244 kWh/kg without fusion", () => {
    // By hand [C]: 0.55 BTU/(lb °F) · 350 °F = 192.5 BTU/lb.
    expectPrinted(rise(0) / KILOWATT_HOUR, "0.1244");
  });

  test("without the heat of fusion about 31 % of HDPE's total is missed", () => {
    // Wunderlich, Macromolecular Physics 3, 1980: heat of fusion of the crystal, times the usual crystallinity [M].
    const heatOfFusion = materials.get("HDPE")!.heatOfFusion.value;
    expectPrinted(heatOfFusion / rise(heatOfFusion), "0.31");
  });
});

describe("the time in the machine", () => {
  test("is 72 s for 1.2 kg at 60 kg/h", () => {
    // By hand [C]: residence = hold-up / throughput.
    expect(residenceTime(1.2, 60 / 3600)).toBeCloseTo(72, 9);
    expect(rechargeTime(0.11, 110 / 3600)).toBeCloseTo(3.6, 9);
  });

  test("is 48 s from hopper to screw tip of a 2½-inch screw, which its channel can hold", () => {
    // 48 s in-line reciprocating-screw unit: common practice, no published source.
    // By hand [C]: 120.1 lb/h = 54.5 kg/h, so 48 s need a hold-up of 54.5 · 48/3600 = 0.726 kg.
    const rate = ruleOfThumbRate(2.5 * INCH);
    const holdUp = rate * 48;
    expectPrinted(holdUp, "0.726");
    // Usual screw of 20 D (common practice, no published source): feed 8 D at 10.2 mm, taper over 6 D, metering 6 D at 3.5 mm.
    // Mean depth (8 · 10.2 + 6 · 6.85 + 6 · 3.5)/20 = 7.2 mm. Ring between root and barrel π (63.5 − 7.2) 7.2 mm² · 1.27 m
    // = 1.617 L, less a tenth for the flights 1.456 L. Pellets have about 0.57 kg/L, melt 0.76 kg/L, so 0.65 kg/L on average:
    // 0.946 kg in a full channel.
    const screw = { diameter: 2.5 * INCH, meanDepth: 0.0072, length: 20 * 2.5 * INCH, flightShare: 0.1, density: 650 };
    const fullChannel = screwHoldUp(screw);
    expectPrinted(fullChannel, "0.946");
    // 48 s need 77 % of the channel at the rule of thumb, or all of it at 71 kg/h (156 lb/h), which is below twice the rule.
    expectPrinted(holdUp / fullChannel, "0.77");
    expectPrinted((fullChannel / 48) * 3600, "71.0");
    expect(fullChannel / 48).toBeGreaterThan(rate);
    expect(fullChannel / 48).toBeLessThan(2 * rate);
    expect(pelletTravelTime([holdUp], rate)).toBeCloseTo(48, 9);
  });

  test("of a pellet is the sum over screw, shot and manifold", () => {
    // By hand [C] at 60 kg/h: 0.8 kg 48 s, 0.2 kg 12 s, 0.4 kg 24 s
    expect(pelletTravelTime([0.8, 0.2, 0.4], 60 / 3600)).toBeCloseTo(84, 9);
  });
});

test("the stroke of 240 g and a tenth of cushion on 63.5 mm is 110 mm", () => {
  // By hand [C]: 0.264 kg / 760 kg/m³ = 347.4 cm³ over 31.67 cm².
  const stroke = shotStroke({ mass: 0.24, cushion: 0.1, meltDensity: 760, screwDiameter: 0.0635 });
  expect(stroke).toBeCloseTo(347.37e-6 / 31.669e-4, 5);
});

describe("the output of the screw", () => {
  const channel = fc.record({
    diameter: fc.double({ min: 0.04, max: 0.15, noNaN: true }),
    depth: fc.double({ min: 0.002, max: 0.01, noNaN: true }),
    helixAngle: fc.double({ min: 12, max: 25, noNaN: true }),
    length: fc.double({ min: 0.2, max: 2, noNaN: true }),
  });

  test("rises with speed and falls with pressure; the back flow rises with the cube of the depth", () => {
    fc.assert(
      fc.property(channel, (some) => {
        const run = { speed: 1, pressure: 1e6, viscosity: 1000 };
        const output = screwOutput(some, run);
        expect(screwOutput(some, { ...run, speed: 1.1 })).toBeGreaterThan(output);
        expect(screwOutput(some, { ...run, pressure: 1.1e6 })).toBeLessThan(output);
        expect(backFlow({ ...some, depth: 2 * some.depth }, 1e6, 1000) / backFlow(some, 1e6, 1000)).toBeCloseTo(8, 9);
      }),
    );
  });
});

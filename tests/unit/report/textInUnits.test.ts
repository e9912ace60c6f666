// Levers and the picture in US customary units; the factors are exact by definition: NIST SP 811 (2008), appendix B.8 [M].
import { describe, expect, it } from "vitest";
import { mass, massOf, temperature } from "#report/scene/sceneQuantities.ts";
import { textInUnits } from "#report/words/textInUnits.ts";

describe("a text with quantities of a scenario", () => {
  it.each([
    // 32 g: 32 / 28.349523125 = 1.12876 oz.
    ["32 g", "1.129 oz"],
    ["31.04 g, −3 %", "1.095 oz, −3 %"],
    // 360 kg/h: 360 / 0.45359237 = 793.664 lb/h; 8 kg/h: 17.637.
    ["normal 360 kg/h, 8 kg/h", "normal 793.7 lb/h, 17.64 lb/h"],
    // 190 °C: 374 °F; a difference of 10 °C: 18 °F.
    ["180 °C, −10 °C", "356 °F, −18 °F"],
    // 2 mm: 2 / 25.4 = 0.0787402 in.
    ["2 mm", "0.07874 in"],
    // 7 bar: 7e5 / 6894.757 = 101.526 psi.
    ["7 bar", "101.5 psi"],
    // What both systems share stays letter by letter.
    ["7 s, −0.5 s", "7 s, −0.5 s"],
    ["gamma 0.85 s, 0.2 s", "gamma 0.85 s, 0.2 s"],
    ["4", "4"],
    ["1.35 per kg", "1.35 per kg"],
    ["measured values", "measured values"],
    // A file in US units needs no change.
    ["1.5 oz", "1.5 oz"],
  ])("%s is %s", (si, us) => {
    expect(textInUnits(si, "si")).toBe(si);
    expect(textInUnits(si, "us")).toBe(us);
  });
});

describe("the quantities of the picture", () => {
  it("have the unit of the whole, with one decimal more in ounces and pounds", () => {
    expect(massOf(63, 109, "si")).toBe("63 of 109 g");
    // 63 g: 2.2222 oz; 109 g: 3.8449 oz.
    expect(massOf(63, 109, "us")).toBe("2.22 of 3.84 oz");
    // 453.59237 g is a pound: 500 g are 1.10231 lb, 250 g 0.551156 lb.
    expect(massOf(250, 500, "us")).toBe("0.55 of 1.10 lb");
    expect([mass(9.96, "si"), mass(1234, "si")]).toEqual(["10.0 g", "1,234 g"]);
    expect([temperature(124.4, "si"), temperature(124.4, "us")]).toEqual(["124 °C", "256 °F"]);
  });
});

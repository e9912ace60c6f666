// Holds quantities to the definitions of their units, and mistakes in quantities to their codes and remedies.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { inSi, isQuantity, parseQuantity, quantityPattern } from "#foundation/quantity.ts";
import { allUnits, spellingsOf } from "#foundation/unit.ts";

const kinds = Object.keys(dimensions) as Dimension[];

function si(text: string, dimension: Dimension): number {
  const reading = parseQuantity(text, dimension);
  if (!isQuantity(reading)) throw new Error(`${text}: ${reading.message}`);
  return reading.value;
}

describe("a quantity in SI units is read as the nearest double of its SI value", () => {
  it.each<[string, Dimension, number]>([
    ["7.5 s", "time", 7.5],
    ["7.5s", "time", 7.5],
    ["  8 h ", "time", 28_800],
    ["2 d", "time", 172_800],
    [".5 min", "time", 30],
    ["0.9 mm", "length", 0.0009],
    ["42 g", "mass", 0.042],
    ["0.40 kg", "mass", 0.4],
    ["7 bar", "pressure", 700_000],
    ["60 kN", "force", 60_000],
    ["20 %", "share", 0.2],
    ["2e4 Pa s", "viscosity", 20_000],
    ["5 dm³/(s bar)", "conductance", 5e-8],
    ["65 °C", "temperature", 338.15],
    ["-10 °C", "temperature", 263.15],
    ["5 °C", "temperatureDifference", 5],
  ])("%s", (text, dimension, value) => {
    expect(si(text, dimension)).toBe(value);
  });
});

// NIST SP 811 (2008), appendix B.8: the factors that the table marks as exact [M].
describe("US customary units that are exact by definition agree with NIST SP 811 to the last digit", () => {
  it.each<[string, Dimension, number]>([
    ["1 in", "length", 0.0254],
    ["1 ft", "length", 0.3048],
    ["1 in²", "area", 6.4516e-4],
    ["1 lb", "mass", 0.45359237],
    ["1 BTU/lb", "specificEnergy", 2326],
    ["1 BTU/(lb °F)", "specificHeat", 4186.8],
    ["1 kWh/kg", "specificEnergy", 3.6e6],
    ["32 °F", "temperature", 273.15],
    ["212 °F", "temperature", 373.15],
    ["1.8 °F", "temperatureDifference", 1],
  ])("%s", (text, dimension, value) => {
    expect(Math.abs(si(text, dimension) / value - 1)).toBeLessThan(1e-15);
  });
});

// NIST SP 811 (2008), appendix B.8: factors printed with seven digits [M].
describe("US customary units agree with the seven printed digits of NIST SP 811", () => {
  it.each<[string, Dimension, number]>([
    ["1 mil", "length", 2.54e-5],
    ["1 in³", "volume", 1.638706e-5],
    ["1 gal", "volume", 3.785412e-3],
    ["1 fl oz", "volume", 2.957353e-5],
    ["1 oz", "mass", 2.834952e-2],
    ["1 lb/h", "rate", 1.259979e-4],
    ["1 lbf", "force", 4.448222],
    ["1 tonf", "force", 8.896443e3],
    ["1 psi", "pressure", 6.894757e3],
    ["1 hp", "power", 7.456999e2],
    ["1 lb/ft³", "density", 16.01846],
    ["1 lbf/in", "lineLoad", 175.1268],
  ])("%s", (text, dimension, value) => {
    expect(Math.abs(si(text, dimension) / value - 1)).toBeLessThan(5e-7);
  });
});

describe("a wrong quantity has a code and a remedy", () => {
  it.each<[string | number, Dimension, string, string]>([
    [7.5, "time", "unit-missing", "7.5 s"],
    ["7.5", "time", "unit-missing", "7.5 s"],
    [0, "time", "unit-missing", "0 s"],
    [0.2, "share", "unit-missing", "20 %"],
    ["7,5 s", "time", "decimal-comma", "7.5 s"],
    ["1,200 kg/h", "rate", "thousands-separator", "1200 kg/h"],
    ["1,200 kg/h", "rate", "thousands-separator", "1.200 kg/h"],
    ["1 200 kg/h", "rate", "thousands-separator", "1200 kg/h"],
    ["1'200 kg/h", "rate", "thousands-separator", "1200 kg/h"],
    ["1.5.2 s", "time", "not-a-number", "7.5 s"],
    ["1:30", "time", "not-a-number", "90 s"],
    ["1/2 in", "length", "not-a-number", "0.9 mm"],
    ["", "time", "not-a-number", "7.5 s"],
    ["soon", "time", "not-a-number", "7.5 s"],
    ["NaN s", "time", "not-a-number", "7.5 s"],
    [Number.NaN, "time", "not-a-number", "plain number"],
    [Infinity, "time", "not-a-number", "plain number"],
    ["1e400 s", "time", "too-large", "exponent"],
    ["1e-400 s", "time", "too-small", "exponent"],
    ["-3 s", "time", "negative", "0 or more"],
    ["−3 s", "time", "negative", "0 or more"],
    ["−3 °C", "temperature", "not-a-number", "-3 °C"],
    ["-300 °C", "temperature", "out-of-range", "sign"],
    ["7.5 kg", "time", "unit-mismatch", "min"],
    ["7.5 secs", "time", "unit-unknown", "7.5 sec"],
    ["110 KG/H", "rate", "unit-unknown", "110 kg/h"],
    ["3 furlongs", "length", "unit-unknown", "mm"],
    ["1 min 30 s", "time", "unit-unknown", "s, ms, min"],
  ])("%s as %s is %s", (text, dimension, code, remedy) => {
    const reading = parseQuantity(text, dimension);
    expect(reading).toMatchObject({ code });
    expect(isQuantity(reading) ? "" : reading.remedy).toContain(remedy);
  });
});

describe("the table of units", () => {
  it("has no two units of a dimension with the same spelling", () => {
    for (const dimension of kinds) {
      const spellings = spellingsOf(dimension);
      expect(new Set(spellings).size).toBe(spellings.length);
    }
  });

  it("reads the example of every dimension", () => {
    for (const dimension of kinds)
      expect(isQuantity(parseQuantity(dimensions[dimension].example, dimension))).toBe(true);
  });

  it("matches the pattern in every spelling of a unit", () => {
    for (const unit of allUnits()) {
      const pattern = new RegExp(quantityPattern(unit.dimension), "u");
      for (const spelling of [unit.symbol, ...unit.aliases]) expect(`3.5 ${spelling}`).toMatch(pattern);
      expect(`3,5 ${unit.symbol}`).not.toMatch(pattern);
    }
  });
});

describe("writing a quantity", () => {
  it.each<[number, Dimension, "si" | "us", string]>([
    [0.0009, "length", "si", "0.9 mm"],
    [7.5, "time", "si", "7.5 s"],
    [28_800, "time", "us", "8 h"],
    [0.042, "mass", "si", "42 g"],
    [338.15, "temperature", "si", "65 °C"],
    [0.45359237, "mass", "us", "1 lb"],
    [0, "share", "si", "0 %"],
  ])("%d (%s, %s) is %s", (value, dimension, system, text) => {
    expect(formatQuantity(value, dimension, { system })).toBe(text);
  });

  it("has the given number of digits", () => {
    expect(formatQuantity(1 / 3, "time", { digits: 3 })).toBe("0.333 s");
  });

  it("gives a text that is read back as the same value, up to the last digits, in every dimension and both systems", () => {
    const value = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(
        value,
        fc.constantFrom(...kinds),
        fc.constantFrom("si" as const, "us" as const),
        (number, dimension, system) => {
          const back = si(formatQuantity(number, dimension, { system }), dimension);
          // A temperature scale with another zero adds a rounding error of the size of that zero.
          const size = dimension === "temperature" ? number + 600 : number;
          expect(Math.abs(back - number)).toBeLessThanOrEqual(size * 4 * Number.EPSILON);
        },
      ),
    );
  });

  it("is the inverse of reading for every unit", () => {
    const amount = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...allUnits()), amount, (unit, number) => {
        expect(si(`${number} ${unit.symbol}`, unit.dimension)).toBe(inSi(number, unit));
      }),
    );
  });
});

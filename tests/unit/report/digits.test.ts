// Holds printed numbers to the digits that their intervals support.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { grouped, percent, percentsThatAddUp, plainNumber, seconds, withInterval } from "#report/words/digits.ts";

describe("a number with its interval", () => {
  // GUM (JCGM 100:2008), 7.2.6: at most two digits of an uncertainty, and the value to the same place [M].
  it.each([
    [1182.7563, 0.3421, "1,182.8 ± 0.3"],
    [1182.7563, 3.421, "1,183 ± 3"],
    [1182.7563, 34.21, "1,180 ± 30"],
    [1182.7563, 342.1, "1,200 ± 300"],
    [6.08721, 0.00163, "6.0872 ± 0.0016"],
    [0.5, 0.0952, "0.50 ± 0.10"],
    [99.96, 0.96, "100.0 ± 1.0"],
    [-1.5, 0.2, "-1.5 ± 0.2"],
    [0, 0.04, "0.00 ± 0.04"],
  ])("%d ± %d is printed as %s", (mean, halfWidth, words) => {
    expect(withInterval({ mean, halfWidth })).toBe(words);
  });

  it("has four digits without an interval, and with an interval of 0", () => {
    expect(withInterval({ mean: 1182.7563, halfWidth: null })).toBe("1,183");
    expect(withInterval({ mean: 6.525, halfWidth: 0 })).toBe("6.525");
    // A rounding error is no interval.
    expect(withInterval({ mean: 6.3, halfWidth: 1e-15 })).toBe("6.3");
  });

  it("scales value and interval by the same factor", () => {
    expect(withInterval({ mean: 0.6354, halfWidth: 0.0006 }, 100)).toBe("63.54 ± 0.06");
  });
});

describe("numbers without an interval", () => {
  it.each([
    [0, "0 %"],
    [0.0004, "0.0 %"],
    [0.0456, "4.6 %"],
    [0.16, "16 %"],
    [0.9821, "98.2 %"],
    [0.99999, "100 %"],
    [1, "100 %"],
  ])("print the share %d as %s", (share, words) => {
    expect(percent(share)).toBe(words);
  });

  it("have at most four digits", () => {
    expect(plainNumber(1.98754)).toBe("1.988");
    expect(seconds(0.9387)).toBe("0.94 s");
  });
});

describe("shares in a row", () => {
  it("add up to 100.0 %, each within 0.1 % of its value", () => {
    const weights = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(weights, (parts) => {
        const total = parts.reduce((sum, each) => sum + each, 0);
        fc.pre(total > 0);
        const shares = parts.map((part) => part / total);
        const shown = percentsThatAddUp(shares).map((text) => Math.round(Number.parseFloat(text) * 10));
        expect(shown.reduce((sum, each) => sum + each, 0)).toBe(1000);
        for (const [i, tenths] of shown.entries()) expect(Math.abs(tenths - shares[i]! * 1000)).toBeLessThan(1);
      }),
    );
  });
});

describe("a comma between thousands", () => {
  it.each([
    ["999.5", "999.5"],
    ["1000", "1,000"],
    ["-1234567.891", "-1,234,567.891"],
    ["0.1234567", "0.1234567"],
    ["1e+21", "1e+21"],
  ])("%s is written %s", (number, words) => {
    expect(grouped(number)).toBe(words);
  });
});

// Numbers, durations and decimal marks as logs write them; all values by hand.
import { describe, expect, it } from "vitest";
import { decimalMark, durationOf, numberOf, secondsOf } from "#analysis/log/logNumbers.ts";

describe("the decimal mark", () => {
  it.each<[string, readonly string[], string, string]>([
    ["a point without any mark", ["7", "8"], ";", "."],
    ["a point without values", [], ";", "."],
    ["a point where it is the last mark", ["7", "7.5"], ";", "."],
    ["a comma before other than three digits", ["7,5", "1,500"], ",", ","],
    ["a comma before three digits where cells are separated by something else", ["7,500"], ";", ","],
    ["a point where commas separate cells and may separate thousands", ["7,500", "1,250"], ",", "."],
    ["a comma behind points", ["7,5", "1.234,5"], ";", ","],
    ["a point behind commas", ["7.5", "1,234.5"], ";", "."],
    ["the later mark of a value with both", ["1.234", "1.234,5"], ";", ","],
    ["a point where no value has both", ["1.5", "1,5"], ";", "."],
    ["a comma before a unit", ["7,5 s"], ",", ","],
  ])("is %s", (_, samples, delimiter, mark) => {
    expect(decimalMark(samples, delimiter)).toBe(mark);
  });
});

describe("a number", () => {
  it.each<[string, "." | ",", number | undefined]>([
    ["7.5", ".", 7.5],
    ["7,5", ",", 7.5],
    ["7.", ".", 7],
    [".5", ".", 0.5],
    ["-7.5e-1", ".", -0.75],
    ["+7", ",", 7],
    ["1,234,567.5", ".", 1_234_567.5],
    ["1.234,5", ",", 1234.5],
    ["1'234.5", ".", 1234.5],
    ["1’234", ".", 1234],
    ["1 234,5", ",", 1234.5],
    ["12,34.5", ".", undefined],
    ["1,23", ".", undefined],
    ["7.5", ",", undefined],
    ["1e400", ".", undefined],
    ["7.5.1", ".", undefined],
    ["seven", ".", undefined],
    ["", ".", undefined],
  ])("%j with the mark %j is %s", (text, mark, value) => {
    expect(numberOf(text, mark)).toBe(value);
  });
});

describe("a duration", () => {
  it.each<[string, "." | ",", number, number | undefined]>([
    ["7.5", ".", 1, 7.5],
    ["7.5", ".", 60, 450],
    ["7,5 s", ",", 60, 7.5],
    ["500 ms", ".", 1, 0.5],
    ["2min", ".", 1, 120],
    ["2:03", ".", 1, 123],
    ["2:03,5", ",", 1, 123.5],
    ["100:07", ".", 60, 6007],
    ["1:02:03.5", ".", 1, 3723.5],
    ["-0:07", ".", 1, -7],
    ["-1:00:07", ".", 1, -3607],
    ["2 weeks", ".", 1, undefined],
    ["seven s", ".", 1, undefined],
    ["1:02:03:04", ".", 1, undefined],
  ])("%j with the mark %j and a unit of %d s is %s s", (text, mark, unit, value) => {
    const found = durationOf(text, mark, unit);
    if (value === undefined) expect(found).toBeUndefined();
    else expect(found).toBeCloseTo(value, 12);
  });

  it("has units of English and German logs", () => {
    const units = ["us", "µs", "MS", "msec", "s", "Sek", "Sekunden", "min", "Minuten", "h", "Stunden"];
    expect(units.map(secondsOf)).toEqual([1e-6, 1e-6, 1e-3, 1e-3, 1, 1, 1, 60, 60, 3600, 3600]);
    expect(secondsOf("parts")).toBeUndefined();
  });
});

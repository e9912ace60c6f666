// Holds the terminal's timing chart to the closed form of the cell and to the width of the terminal.
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { timingLines } from "#report/answers/timingLines.ts";
import { fixedCell } from "../../support/fixedCell.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";

// The cell as a timed event graph, computed independently of this project [C]: recharge 4.0, drop 1.8, valve shift 0.25, mold time
// after the drop 11.0 s; 13.05 s a shot with one station.
const station = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 };
const cellOf = (count: number) => fixedCell({ stations: Array.from({ length: count }, () => station), shift: 0.25 });
const lineOf = (lines: readonly string[], start: string) => lines.find((line) => line.startsWith(start)) ?? "";
const lettersIn = (line: string, letter: string) => line.slice(14).split(letter).length - 1;

describe("the timing chart of the terminal", () => {
  it("gives each state columns in proportion to its time", () => {
    const lines = timingLines(idealCycle(cellOf(1)), 14 + 1305);
    expect(lines[0]).toBe("One period, 13.05 s for 1 shot:");
    expect(lettersIn(lineOf(lines, "screw"), "R")).toBe(400);
    expect(lettersIn(lineOf(lines, "screw"), "F")).toBe(180);
    expect(lettersIn(lineOf(lines, "screw"), "S")).toBe(50);
    expect(lettersIn(lineOf(lines, "screw"), ".")).toBe(1305 - 630);
    expect(lettersIn(lineOf(lines, "station 01"), "K")).toBe(940);
  });

  it("marks the circuit that sets the pace: the station's or the screw's", () => {
    const below = (count: number, start: string) => {
      const lines = timingLines(idealCycle(cellOf(count)));
      return lines[lines.findIndex((line) => line.startsWith(start)) + 1] ?? "";
    };
    expect(below(1, "screw")).toMatch(/^valve/);
    expect(below(1, "station 01")).toMatch(/^ +\^{50}/);
    expect(below(3, "screw")).toMatch(/^ +\^+/);
  });

  it.each(["one-station", "two-station", "two-molds", "one-operator", "three-station"])(
    "has for %s only lines within the width, in ASCII characters",
    (name) => {
      for (const width of [60, 80, 132]) {
        const lines = timingLines(idealCycle(scenarioOf(shippedText(name), name)), width);
        expect(lines.filter((line) => line.length > width)).toEqual([]);
        expect(lines.join("\n")).toMatch(/^[\n -~]+$/);
      }
    },
  );

  it("shows the first of sixteen stations and the number of the others", () => {
    const lines = timingLines(idealCycle(cellOf(16)));
    expect(lines).toContain("  and 10 more rows");
    expect(lines.length).toBeLessThan(24);
  });
});

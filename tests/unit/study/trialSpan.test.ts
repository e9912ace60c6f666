// How long the beginning of a run is that serves as a trial of the whole.
import { describe, expect, it } from "vitest";
import { trialSpan } from "#analysis/replication/trialSpan.ts";
import { fixedCell } from "../../support/fixedCell.ts";

const station = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 };
const cellOf = (length: number) => fixedCell({ stations: [station], shift: 0.25, length });

describe("a trial", () => {
  // By hand: a turn of the only mold takes 0.25 + 1.8 + 0.6 + 9.4 + 1 = 13.05 s, and the screw 4 + 1.8 + 0.5 s.
  it("lasts so many turns of all stations, at most the run", () => {
    const [one, ten] = [trialSpan(cellOf(1e6), 1), trialSpan(cellOf(1e6), 10)];
    expect(ten).toBeCloseTo(10 * one, 6);
    expect(one).toBeGreaterThanOrEqual(13.05);
    expect(trialSpan(cellOf(40), 10)).toBe(40);
  });

  it("lasts a week where there is a calendar, which has its nights and days off", () => {
    const calendar = {
      begins: "2026-11-30 06:00",
      clockChanges: [],
      off: [],
      operators: [],
      shifts: [],
      breaks: "run on",
    } as const;
    expect(trialSpan({ ...cellOf(1e7), calendar }, 1)).toBe(604_800);
  });
});

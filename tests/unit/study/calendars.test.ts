// Totals, days and the comparison with the real cell, by hand.
import { describe, expect, it } from "vitest";
import { calendarStudy } from "#analysis/study/calendarStudy.ts";
import { measuredChecks } from "#analysis/study/measuredChecks.ts";
import { onShiftShare, productMeasures, totals } from "#analysis/study/totals.ts";
import type { CalendarSpec, Scenario } from "#scenario/scenario.ts";
import { answerMade } from "../../support/madeAnswers.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { always } from "../../support/takeawayCell.ts";
import { measuresMade } from "./madeStudy.ts";

const hour = 3600;
const stretch = (from: number, until: number) => ({ from: from * hour, until: until * hour });
/** Ten hours from a Thursday 06:00 on: two work shifts that overlap, with a break, and two hours off. */
const calendar: CalendarSpec = {
  begins: "2026-11-26 06:00",
  clockChanges: [],
  off: [{ ...stretch(6, 8), why: "off shift" }],
  operators: [],
  shifts: [
    { start: "06:00", end: "10:00", breaks: [], stretches: [stretch(0, 4)], pauses: [stretch(3, 3.5)] },
    {
      start: "09:00",
      end: "12:00",
      breaks: [],
      stretches: [stretch(3, 6), stretch(8, 20)],
      pauses: [stretch(3.25, 4)],
    },
  ],
  breaks: "run on",
};
const scenario: Scenario = { ...oneStation, run: { ...oneStation.run, length: 10 * hour, warmup: 0 } };
const planned: Scenario = { ...scenario, calendar };

describe("the parts of a run with a calendar", () => {
  it("are those of all hours, for the cell and each product", () => {
    const measures = measuresMade({
      "good parts per hour": [10, 20, null],
      "good parts: a": [4, 8, 1],
      "reject share": [0, 0, 0],
    });
    expect(
      totals(planned, measures).map(({ product, parts, single }) => [product, parts.mean, single === null]),
    ).toEqual([
      [null, 150, false],
      ["a", 130 / 3, false],
    ]);
    expect(totals(planned, measuresMade({ "good parts per hour": [10] }))[0]?.single).toBeNull();
    expect(totals(scenario, measures)).toEqual([]);
    expect(totals(planned, [])).toEqual([]);
    const warm = { ...planned, run: { ...planned.run, warmup: 5 * hour } };
    expect(totals(warm, measures)[0]?.parts.mean).toBe(75);
  });

  it("are counted for each product where there are several", () => {
    const [station] = oneStation.stations;
    const stations = ["a", "b", "a"].map((product, i) => ({ ...station!, name: `side ${i}`, product }));
    const made = [3, 4, 5].map((value, i) => ({
      resource: `side ${i}`,
      measure: "good parts per hour",
      unit: "1/h",
      value,
    }));
    const other = { resource: "side 0", measure: "parts per hour", unit: "1/h", value: 99 };
    const found = productMeasures({ ...scenario, stations }, [{ measures: [...made, other] }, { measures: [] }]);
    expect(found.map(({ measures }) => measures.map(({ measure, value }) => [measure, value]))).toEqual([
      [
        ["good parts: a", 8],
        ["good parts: b", 4],
      ],
      [
        ["good parts: a", 0],
        ["good parts: b", 0],
      ],
    ]);
    expect(productMeasures(scenario, [{ measures: made }])).toEqual([]);
  });
});

describe("the days of a calendar", () => {
  // 20,783 days after 1970-01-01 is Thursday, 2026-11-26 (GNU date).
  const day = (number: number, from: number, until: number, good: number) => ({
    day: number,
    ...stretch(from, until),
    seconds: [good, 1, 2, 3, 4, 5],
    good,
  });
  const answers = [10, 20].map((good, i) =>
    answerMade(i + 1, {}, { days: [day(20_783, 0, 5, good), day(20_784, 5, 10, 3 * good)], quarters: [] }),
  );

  it("have the times of their plan and of the runs", () => {
    const found = calendarStudy(planned, answers);
    // By hand: on shift from 0 to 6 and from 8 on; breaks from 3 to 4.
    expect(found?.days).toMatchObject([
      { date: "2026-11-26", weekday: "thu", seconds: 5 * hour, shiftSeconds: 5 * hour, breakSeconds: hour },
      { date: "2026-11-27", weekday: "fri", seconds: 5 * hour, shiftSeconds: 3 * hour, breakSeconds: 0 },
    ]);
    expect(found?.days[0]?.useSeconds).toEqual([15, 1, 2, 3, 4, 5]);
    expect(found?.days.map(({ good }) => good.mean)).toEqual([15, 45]);
    expect(calendarStudy(planned, [])).toEqual({ days: [], quarters: [], changes: [] });
    expect(calendarStudy(scenario, answers)).toBeNull();
  });

  it("have the planned changes with their mean time and what they purge", () => {
    const changes: Scenario["changes"] = [
      { name: "new mold", kind: "mold", station: "station 01", at: 60, time: always(900) },
      { name: "to red", kind: "color", at: 90, time: always(60), purge: { residue: 0.01, screw: 2, manifold: 0.5 } },
    ];
    const found = calendarStudy({ ...scenario, changes }, answers);
    expect(found?.days).toEqual([]);
    expect(found?.changes[0]).toEqual({
      name: "new mold",
      kind: "mold",
      station: "station 01",
      at: 60,
      seconds: 900,
      purged: 0,
      residue: null,
    });
    expect(found?.changes[1]).toMatchObject({ name: "to red", at: 90, seconds: 60, residue: 0.01 });
    expect(found?.changes[1]?.purged).toBeGreaterThan(2.5);
    expect("station" in found!.changes[1]!).toBe(false);
  });
});

describe("the model against the real cell", () => {
  const measures = measuresMade({ "shots per hour": [100, 100], "good parts per hour": [190, 210] });
  const check = (measured: Scenario["measured"], more: Partial<Scenario> = {}) =>
    measuredChecks({ ...scenario, ...more, ...(measured ? { measured } : {}) }, measures).map(
      ({ quantity, verdict, difference }) => [quantity, verdict, Number(difference.toFixed(6))],
    );

  it("agrees within a hundredth", () => {
    expect(check({ shots: 100.9 / hour })).toEqual([["shots", "agrees", 0.009]]);
    expect(check({ shots: 102 / hour })).toEqual([["shots", "faster", 0.02]]);
    expect(check({ shots: 98 / hour })).toEqual([["shots", "slower", -0.02]]);
    expect(check(undefined)).toEqual([]);
    // A replication that makes nothing, and one that counts nothing, are no model.
    const some = measuresMade({ "shots per hour": [0, 100, null] });
    const [found] = measuredChecks({ ...scenario, measured: { shots: 1 / hour } }, some);
    expect(found).toMatchObject({ unit: "1/h", measured: 1, model: { count: 1, mean: 100 }, single: null });
    expect(check({ cycle: 36 })).toEqual([]);
  });

  it("agrees with a value that a single run may have", () => {
    // By hand: t(0.95, 1) = 6.3138 times 14.142 × √1.5 is 109 around 200.
    expect(check({ parts: 300 / hour })).toEqual([["parts", "agrees", 0.5]]);
    expect(check({ parts: 320 / hour })).toEqual([["parts", "faster", 0.6]]);
    expect(check({ parts: 80 / hour })).toEqual([["parts", "slower", -0.6]]);
  });

  it("counts hours on shift", () => {
    expect(onShiftShare(planned)).toBe(0.8);
    expect(onShiftShare(scenario)).toBe(1);
    // By hand: 100 shots an hour of the run are 125 an hour on shift.
    expect(check({ shots: 125 / hour }, { calendar })).toEqual([["shots", "agrees", 0]]);
  });

  it("takes the mean cycle of the stations", () => {
    const cycles = (...all: readonly (readonly (number | undefined)[])[]) => {
      const stations = ["a", "b"].map((name) => ({ ...oneStation.stations[0]!, name }));
      const rows = all.flatMap((values, i) =>
        measuresMade({ "cycle time": values.map((value) => value ?? null) })
          .filter(({ resource }) => resource === "cell")
          .map((row) => ({ ...row, resource: stations[i]!.name })),
      );
      return measuredChecks({ ...scenario, stations, measured: { cycle: 13 } }, rows)[0];
    };
    // By hand: 13 in the first replication, 16 in the second, which has no cycle of the second station.
    expect(cycles([12, 16], [14, undefined])?.model).toMatchObject({ count: 2, mean: 14.5 });
    expect(cycles([10, 10], [10, 10])).toMatchObject({
      unit: "s",
      verdict: "slower",
      difference: expect.closeTo(0.3, 12),
    });
    expect(cycles([20, 20], [20, 20])?.verdict).toBe("faster");
  });
});

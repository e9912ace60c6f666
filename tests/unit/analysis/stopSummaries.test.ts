// Holds the table of stops to values calculated by hand from given answers and from runs with known stops.
import { describe, expect, it } from "vitest";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { stopSummaries } from "#analysis/study/stopSummaries.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const stops = `stops:
  - { name: jam, resource: station 1, start: fresh, clock: calendar, between: 2 h, repair: 30 min, step: finish }
  - { name: fire, resource: valve, start: fresh, clock: calendar, between: 900 h, repair: 1 h, step: finish }
`;
const scenario = scenarioOf(cellText(1, stops), "run.length=10 h", "run.warmup=0 s");

describe("stops over the replications", () => {
  it("are counted at their start, and the times between them are pooled", () => {
    const answers = [
      [
        {
          resource: "station 1",
          stop: "jam",
          count: 3,
          ended: 2,
          seconds: 5400,
          endedSeconds: 4500,
          repairs: 2,
          waitSeconds: 900,
        },
      ],
      [
        {
          resource: "station 1",
          stop: "jam",
          count: 1,
          ended: 1,
          seconds: 1800,
          endedSeconds: 1800,
          repairs: 1,
          waitSeconds: 180,
        },
      ],
      [],
    ].map((each) => ({ stops: each }));
    const [jam, fire] = stopSummaries(scenario, answers);
    expect(jam?.count.mean).toBeCloseTo(4 / 3, 12);
    expect(jam?.hours.mean).toBeCloseTo(2 / 3, 12);
    // 30 h observed, 2 h of them stopped, 4 stops.
    expect(jam?.meanBetween).toBeCloseTo(7, 12);
    // 1.75 h for the three that ended.
    expect(jam?.meanRepair).toBeCloseTo(1.75 / 3, 12);
    // 0.3 h for the three whose repair has begun.
    expect(jam?.meanWait).toBeCloseTo(0.1, 12);
    expect(fire).toMatchObject({ stop: "fire", meanBetween: null, meanRepair: null, meanWait: null });
    expect(fire?.count.mean).toBe(0);
  });

  // 2 h, then 0.5 h: 2 to 2.5, 4.5 to 5, 7 to 7.5, and the fourth from 9.5 h on to 10 h.
  it("agree with the calculation by hand for a run of 10 h", () => {
    const [jam] = stopSummaries(scenario, [replicationRunner(scenario)({ replication: 1, scale: null })]);
    expect(jam?.count.mean).toBe(4);
    expect(jam?.hours.mean).toBeCloseTo(2, 9);
    expect(jam?.meanBetween).toBeCloseTo(2, 9);
    expect(jam?.meanRepair).toBeCloseTo(0.5, 9);
  });

  // Off shift from 8 h on. The stop at 9 h waits 3 h for the shift at 12 h, or not at all with an operator on call or without one.
  it.each([
    ["by: operator", "an operator on shift", 3],
    ["by: operator, shift: any", "an operator, off shift the one on call", 0],
    ["by: itself, shift: in", "a shift", 3],
    ["by: itself", null, 0],
  ])("give what the repair waits for, and how long: %s", (repair, waitsFor, hours) => {
    const shifts = `shifts: [{ start: "00:00", end: "08:00" }, { start: "12:00", end: "20:00" }]`;
    const text = `calendar: { from: 2026-03-23, ${shifts} }
crew: { operators: 1 }
stops: [{ name: jam, resource: valve, start: fresh, clock: calendar, between: 9 h, repair: 1 h, step: finish, ${repair} }]`;
    const cell = scenarioOf(cellText(1, text), "run.length=15 h", "run.warmup=0 s");
    const [jam] = stopSummaries(cell, [replicationRunner(cell)({ replication: 1, scale: null })]);
    expect(jam).toMatchObject({ waitsFor, meanWait: hours });
    expect(jam?.meanRepair).toBeCloseTo(hours + 1, 9);
  });

  // The only station is stopped from 1 h to 11 h. The run goes on until then to find what binds, and the valve stops again.
  it("are counted up to the end of the run, although the run goes on to find what binds its last wait", () => {
    const text = `stops:
  - { name: long, resource: station 1, start: fresh, clock: calendar, between: 1 h, repair: 10 h, step: finish }
  - { name: short, resource: valve, start: fresh, clock: calendar, between: 4.5 h, repair: 30 min, step: finish }`;
    const cell = scenarioOf(cellText(1, text), "run.length=6 h", "run.warmup=0 s");
    const found = stopSummaries(cell, [replicationRunner(cell)({ replication: 1, scale: null })]);
    expect(found.map(({ count, hours }) => [count.mean, hours.mean])).toEqual([
      [1, 5],
      [1, 0.5],
    ]);
  });

  it("wait only for an operator without a calendar", () => {
    const text = `crew: { operators: 1 }
stops:
  - { name: one, resource: valve, start: fresh, clock: calendar, between: 3 h, repair: 1 h, by: operator, step: finish }
  - { name: two, resource: station 1, start: fresh, clock: calendar, between: 3.5 h, repair: 1 h, by: operator, step: finish }`;
    const cell = scenarioOf(cellText(1, text), "run.length=6 h", "run.warmup=0 s");
    const found = stopSummaries(cell, [replicationRunner(cell)({ replication: 1, scale: null })]);
    expect(found.map(({ waitsFor }) => waitsFor)).toEqual(["an operator", "an operator"]);
    // The second stop begins at 3.5 h, its repair at 4 h.
    expect(found.map(({ meanWait }) => meanWait)).toEqual([0, 0.5]);
  });
});

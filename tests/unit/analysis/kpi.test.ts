// Holds the indicators of ISO 22400-2 to an independently computed example, and those of cells to their ideal cycle.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { idealCycle, type IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { kpiSpecs, type KpiInput } from "#analysis/indicators/kpi.ts";
import { cellRunTime, kpiRows } from "#analysis/indicators/kpiRows.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { timeElements } from "#analysis/indicators/timeElements.ts";
import { elementOf, type StateElement } from "#cell/words/elementWords.ts";
import type { StateKind } from "#cell/words/stateNames.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { fixedCell } from "../../support/fixedCell.ts";

const valueOf = (name: string, input: KpiInput): number | undefined =>
  kpiSpecs.find((spec) => spec.name === name)?.value(input);

// Formulas of ISO 22400-2:2014 [R, in the open ontology and the OPC annexes]; illustrative inputs, values computed from the
// formulas independently of this project [C].
describe("the indicators of the example", () => {
  const times: readonly (readonly [StateElement, number])[] = [
    ["AUST", 1500],
    ["ADET", 1900],
    ["ADOT", 900],
    ["APT", 24_500],
    ["outside PBT", 57_600],
  ];
  const elements = timeElements(times.map(([element, seconds]) => ({ element, seconds })));
  const input = { ...elements, PRI: 3.2, PQ: 7400, GQ: 7230 };

  it.each([
    ["availability", ".85069"],
    ["effectiveness", ".96653"],
    ["quality ratio", ".97703"],
    ["OEE index", ".80333"],
    ["utilization efficiency", ".87814"],
    ["allocation efficiency", ".96875"],
    ["technical efficiency", ".92803"],
    ["setup ratio", ".05769"],
  ])("%s is %s", (name, printed) => {
    expect(valueOf(name, input)?.toFixed(5)).toBe(`0${printed}`);
  });

  it("planned busy time is 28,800 s without the time off shift, busy time 27,900 s, and 7,400 items make 925 an hour", () => {
    expect(elements.PBT).toBe(28_800);
    expect(elements.AUBT).toBe(27_900);
    expect(valueOf("throughput rate", input)).toBeCloseTo(925, 9);
  });
});

describe("a state", () => {
  it.each<[string, StateKind, StateElement]>([
    ["cooling", "working", "APT"],
    ["awaiting melt", "waiting", "ADOT"],
    ["awaiting takeaway", "waiting", "ADOT"],
    ["stopped", "stopped", "ADET"],
    ["being cleared", "working", "ADET"],
    ["changeover", "set-up", "AUST"],
    ["heating", "set-up", "AUST"],
    ["purging", "set-up", "AUST"],
    ["awaiting heat-up", "set-up", "AUST"],
    ["awaiting purge", "set-up", "AUST"],
    ["screw stopped", "waiting", "ADOT"],
    ["no operator free", "waiting", "ADOT"],
    ["off shift", "off", "outside PBT"],
    ["on break", "off", "ADOT"],
    ["extruding to regrind", "working", "ADOT"],
    ["clearing", "working", "ADET"],
    ["repairing", "working", "ADET"],
  ])("%s (%s) counts as %s", (state, kind, element) => {
    expect(elementOf(state, kind)).toBe(element);
  });
});

function rowsOf(scenario: Scenario): (resource: string, kpi: string) => number {
  const rows = kpiRows(scenario, [replicationRunner(scenario)({ replication: 1, scale: null })], idealCycle(scenario));
  return (resource, kpi) => rows.find((row) => row.resource === resource && row.kpi === kpi)?.value.mean ?? Number.NaN;
}

/** Warm-up and observed time are whole periods, so that no shot is counted in part. */
function overWholePeriods(scenario: Scenario, skipped: number, observed: number): Scenario {
  const period = idealCycle(scenario).periodTicks / TICKS_PER_SECOND;
  return { ...scenario, run: { ...scenario.run, warmup: skipped * period, length: (skipped + observed) * period } };
}

const tenths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((each) => each / 10);

describe("a cell that keeps its ideal cycle", () => {
  it("has an availability, an effectiveness and an OEE of 1, for any critical circuit", () => {
    const station = fc.record({
      recharge: tenths(5, 120),
      drop: tenths(5, 30),
      close: tenths(3, 15),
      cool: tenths(20, 200),
      remove: tenths(2, 60),
    });
    const cell = fc.record({ station, count: fc.integer({ min: 1, max: 4 }), shift: tenths(1, 6) });
    fc.assert(
      fc.property(cell, ({ station: each, count, shift }) => {
        const stations = Array.from({ length: count }, () => each);
        const scenario = overWholePeriods(fixedCell({ stations, shift, dispatch: "alternate" }), 60, 12 * count);
        const of = rowsOf(scenario);
        for (const kpi of ["availability", "effectiveness", "OEE index"]) {
          expect(Math.abs(of("cell", kpi) - 1)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  // Circuits derived by hand [C]: 13.05 s of a station, 6.3 s of the screw; three stations wait for the screw.
  it("counts a station's wait for the screw as loss: 13.05 s of work in 3 × 6.3 s", () => {
    const of = rowsOf(overWholePeriods(scenarioOf(cellText(3), "valve.dispatch=alternate"), 60, 90));
    expect(of("station 1", "availability")).toBeCloseTo(13.05 / 18.9, 9);
    expect(of("station 1", "effectiveness")).toBeCloseTo(1, 9);
    expect(of("station 1", "planned run time per item")).toBeCloseTo(13.05 / 2, 9);
    expect(of("cell", "planned run time per item")).toBeCloseTo(6.3 / 2, 9);
    expect(of("cell", "availability")).toBe(1);
  });

  it("counts the parts of different molds by the shots of a period: 4 parts in two shots", () => {
    const uneven = scenarioOf(cellText(2), "valve.dispatch=alternate");
    const stations = uneven.stations.map((each, k) => ({ ...each, cavities: k === 0 ? 1 : 3 }));
    const of = rowsOf(overWholePeriods({ ...uneven, stations }, 40, 20));
    expect(of("cell", "effectiveness")).toBeCloseTo(1, 9);
    // A turn of 13.05 s gives one shot of each: 4 parts.
    expect(of("cell", "planned run time per item")).toBeCloseTo(13.05 / 4, 9);
  });
});

describe("other kinds of melt delivery", () => {
  // Fixed times over whole periods: the working time of a station is its circuit, for every kind of melt delivery.
  it.each([
    "delivery={ kind: accumulator-head, recharge: 4 s, drop: 1.8 s }",
    "delivery={ kind: accumulator-head, accumulator: common, plasticatingRate: 110 kg/h, drop: 1.8 s, shotCapacity: 200 g }",
  ])("give cell and stations an effectiveness of 1: %s", (delivery) => {
    const of = rowsOf(overWholePeriods(scenarioOf(cellText(3), delivery, "valve.dispatch=alternate"), 60, 90));
    for (const resource of ["cell", "station 1", "station 3"]) {
      expect(Math.abs(of(resource, "effectiveness") - 1), resource).toBeLessThan(1e-9);
    }
  });
});

describe("crews, servers and recharge rules that set the pace", () => {
  const steady = (stations: number, ...set: readonly string[]) =>
    rowsOf(overWholePeriods(scenarioOf(cellText(stations), ...set), 100, 1000));

  it.each([
    [4, ["stations.steps.remove={ time: 5 s, by: operator }", "crew={ operators: 1 }"]],
    [2, ["takeaway={ trim: { time: 5 s, buffer: 4 } }"]],
    [3, ["delivery.rechargeStarts=mold-closed", "valve.dispatch=alternate"]],
  ])("give the cell an availability and an OEE of 1: %d stations, %j", (stations, set) => {
    const of = steady(stations, ...set);
    for (const kpi of ["availability", "effectiveness", "OEE index"]) {
      expect(Math.abs(of("cell", kpi) - 1), kpi).toBeLessThan(1e-9);
    }
  });

  // A trimmer of 5 s a part sets the pace. Nine of ten parts reach it and are good, so the molds make 10/9 as many.
  it("raise the effectiveness above 1 by the rejects before a slow server, but not the OEE", () => {
    const of = steady(2, "takeaway={ trim: { time: 5 s, buffer: 4 } }", "quality={ rejects: 10 % }");
    expect(of("cell", "OEE index")).toBeLessThanOrEqual(1 + 1e-9);
    expect(of("cell", "OEE index")).toBeGreaterThan(0.999);
    expect(of("cell", "effectiveness") * of("cell", "quality ratio")).toBeCloseTo(of("cell", "OEE index"), 9);
    expect(of("cell", "effectiveness")).toBeCloseTo(1 / 0.9, 1);
  });

  // The trimmer refuses parts after it has trimmed them: no further part is made, and a tenth is lost.
  it("reduce only the cell's OEE by the parts that a slow server refuses", () => {
    const of = steady(2, "takeaway={ trim: { time: 5 s, buffer: 4, rejects: 10 % } }");
    expect(of("cell", "effectiveness")).toBeCloseTo(1, 9);
    expect(of("cell", "OEE index")).toBeCloseTo(0.9, 1);
    expect(of("station 1", "quality ratio")).toBe(1);
  });
});

describe("a cell on shifts", () => {
  const shift = `calendar: { from: 2026-03-23, shifts: [{ start: "06:00", end: "14:00" }] }\n`;
  const plannedHours = (more: string, ...set: readonly string[]) =>
    rowsOf(scenarioOf(cellText(1, shift + more), "run.length=24 h", "run.warmup=auto", ...set))(
      "cell",
      "planned busy time",
    ) / 3600;

  // By the calendar, 8 of 24 hours are planned, for any state of the cell.
  it.each([
    ["a calendar only", ""],
    [
      "a stop that lasts into the night",
      "stops: [{ name: jam, resource: station 1, start: fresh, clock: calendar, between: 13 h, repair: 4 h, by: operator, step: finish }]\ncrew: { operators: 1 }\n",
    ],
    ["servers that are starved in the night", "takeaway: { trim: { time: 1 s, buffer: 4 } }\n"],
    ["a start-up", "startUp: { afterOff: 4 h, heatUp: 30 min, purge: 2 kg }\n"],
  ])("has 8 hours of planned busy time: %s", (_, more) => {
    expect(plannedHours(more)).toBe(8);
  });

  it.each([
    ["run on", 8],
    ["stop", 7.5],
  ])("has planned busy time in breaks that do not stop it: %s", (breaks, hours) => {
    const withBreaks = `calendar: { from: 2026-03-23, breaks: ${breaks}, shifts: [{ start: "06:00", end: "14:00", breaks: [{ at: "09:30", time: 30 min }] }] }\ncrew: { operators: 1 }`;
    const of = rowsOf(scenarioOf(cellText(1, withBreaks), "run.length=24 h", "run.warmup=auto"));
    for (const unit of ["cell", "station 1"]) expect(of(unit, "planned busy time")).toBe(hours * 3600);
  });

  it("counts planned time only within the observed time", () => {
    expect(plannedHours("", "run.warmup=8 h")).toBe(6);
    expect(plannedHours("", "run.length=10 h")).toBe(4);
  });
});

/*
 * Calculated by hand [C]. Cycles of 14 s: valve shift 1 s, drop 2, close 1, blow 1, cool 6, vent 1, open 1, removal 1; recharge
 * 4 s. On shift from 0 to 60 s and from 600 s on; 300 s observed.
 */
describe("a work shift of a minute", () => {
  const shifts = (crew = ""): string =>
    `calendar: { from: 2026-03-23, at: "06:00", shifts: [{ start: "06:00", end: "06:01"${crew} }, { start: "06:10", end: "06:20" }] }\n`;
  const minute = (more: string, crew = "") => {
    const text = `${cellText(1)}\n${shifts(crew)}${more}`;
    const steps =
      "{ close: 1 s, blow: 1 s, cool: 6 s, vent: 1 s, open: 1 s, remove: { time: 1 s }, clear: { time: 3 s } }";
    const cell = scenarioOf(
      text,
      "delivery.drop=2 s",
      "valve.shift=1 s",
      `stations.steps=${steps}`,
      "run.length=300 s",
      "run.warmup=0 s",
    );
    const of = rowsOf(cell);
    return (unit: string) =>
      ["planned busy time", "actual production time", "actual unit set-up time", "actual unit delay time"]
        .concat("actual unit down time", "overtime", "produced quantity")
        .map((name) => Math.round(of(unit, name) * 1e6) / 1e6);
  };

  // Four cycles end at 56 s; a fifth would end at 70 s.
  it("loses the last 4 s, in which no cycle fits", () => {
    const of = minute("");
    expect(of("cell")).toEqual([60, 56, 0, 0, 4, 0, 8]);
    expect(of("station 1")).toEqual([60, 56, 0, 0, 4, 0, 8]);
  });

  // The mold opens from 54 s on, is stopped from 54.5 to 74.5 s, opens for another 0.5 s; removal takes 1 s.
  it("has the end of a stopped cycle as overtime, and counts its parts", () => {
    const stop =
      "{ name: jam, resource: station 1, start: fresh, clock: calendar, between: 54.5 s, repair: 20 s, step: hold }";
    const of = minute(`stops: [${stop}]`);
    for (const unit of ["cell", "station 1"]) expect(of(unit), unit).toEqual([60, 54.5, 0, 5.5, 0, 1.5, 8]);
  });

  it("reports an effectiveness above 1 without a limit: 7 s × 8 / 54.5 s", () => {
    const stop =
      "{ name: jam, resource: station 1, start: fresh, clock: calendar, between: 54.5 s, repair: 20 s, step: hold }";
    const cell = scenarioOf(
      `${cellText(1)}\n${shifts()}stops: [${stop}]`,
      "delivery.drop=2 s",
      "valve.shift=1 s",
      "stations.steps={ close: 1 s, blow: 1 s, cool: 6 s, vent: 1 s, open: 1 s, remove: { time: 1 s }, clear: { time: 3 s } }",
      "run.length=300 s",
      "run.warmup=0 s",
    );
    expect(rowsOf(cell)("station 1", "effectiveness")).toBeCloseTo((7 * 8) / 54.5, 9);
    expect(rowsOf(cell)("station 1", "availability")).toBeCloseTo(54.5 / 60, 9);
  });

  // The cycle under way ends at 14 s, the changeover at 44 s, one more cycle of 14 s at 58 s. One of two operators is on shift.
  it("has a change of mold as set-up, with part of the crew off shift", () => {
    const change = "changes: [{ name: new mold, kind: mold, station: station 1, after: 10 s, time: 30 s }]";
    const of = minute(`${change}\ncrew: { operators: 2 }`, ", operators: 1");
    for (const unit of ["cell", "station 1"]) expect(of(unit), unit).toEqual([60, 28, 30, 0, 2, 0, 4]);
  });

  // Set-up from 56 s, when the fourth cycle ends, to 86 s.
  it("has a change as set-up on shift, and as overtime after the shift", () => {
    const change = "changes: [{ name: new mold, kind: mold, station: station 1, after: 45 s, time: 30 s }]";
    for (const unit of ["cell", "station 1"]) {
      expect(minute(change)(unit), unit).toEqual([60, 56, 4, 0, 0, 26, 8]);
    }
  });
});

it("gives no overtime without a calendar", () => {
  expect(rowsOf(scenarioOf(cellText(1)))("cell", "overtime")).toBeNaN();
});

describe("a cell with stops", () => {
  // The only station stops after each 600 s for 60 s. At most 60 of 660 s are delay, less the rest of a cycle or a recharge.
  it("has the stop of its only station as delay, and time elements that add up to the observed time", () => {
    const stop =
      "{ name: jam, resource: station 1, start: fresh, clock: calendar, between: 600 s, repair: 60 s, step: finish }";
    const scenario = scenarioOf(cellText(1, `stops: [${stop}]`), "run.length=110 h", "run.warmup=0 s");
    const of = rowsOf(scenario);
    const delay = of("cell", "actual unit delay time");
    const stoppedShare = delay / (110 * 3600);
    expect(stoppedShare).toBeLessThan(60 / 660);
    expect(stoppedShare).toBeGreaterThan(45 / 660);
    expect(of("cell", "planned busy time")).toBe(110 * 3600);
    expect(of("cell", "effectiveness")).toBeLessThanOrEqual(1);
    expect(of("cell", "effectiveness")).toBeGreaterThan(0.95);
    expect(of("cell", "technical efficiency")).toBeCloseTo(1 - stoppedShare, 9);
  });
});

describe("the ideal run time of a part", () => {
  const station = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 };
  const [small, large] = [2, 4].map((cavities, i) => ({
    ...fixedCell({ stations: [station], shift: 0 }).stations[0]!,
    name: `${i}`,
    cavities,
  }));
  const cell = { ...fixedCell({ stations: [station], shift: 0 }), stations: [small!, large!] };
  const shot = (name: string, number: number) => ({ station: name, shot: number });
  const ideal = (schedule: readonly ReturnType<typeof shot>[]) =>
    cellRunTime(cell, {
      ...idealCycle(cell),
      secondsPerShot: 6,
      schedule: schedule as unknown as IdealCycle["schedule"],
    });

  it("is the ideal time of a shot over the mean number of parts of the shots of a period", () => {
    // By hand: two shots of 2 parts and one of 4 are 8 parts in 18 s; rows of one shot count once, and the screw's own rows not.
    expect(ideal([shot("0", 1), shot("0", 1), shot("0", 2), shot("1", 3), shot("", 3)])).toBeCloseTo(18 / 8, 12);
  });

  it("takes all molds alike where no order repeats", () => {
    expect(ideal([])).toBe(2);
  });
});

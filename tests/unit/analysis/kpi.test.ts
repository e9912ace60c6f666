// The indicators of ISO 22400-2 against the numbers of checks.md section 7, and those of whole cells against their ideal cycle.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { kpiSpecs, type KpiInput } from "#analysis/indicators/kpi.ts";
import { kpiRows } from "#analysis/indicators/kpiRows.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { timeElements } from "#analysis/indicators/timeElements.ts";
import { elementOf, type StateElement } from "#cell/words/elementWords.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { fixedCell } from "../../support/fixedCell.ts";

const valueOf = (name: string, input: KpiInput): number | undefined =>
  kpiSpecs.find((spec) => spec.name === name)?.value(input);

// ISO 22400-2:2014 [R, open ontology and OPC annexes]; the example is illustrative, its values computed independently [C].
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
  it.each<[string, string, StateElement]>([
    ["cooling", "working", "APT"],
    ["awaiting melt", "waiting", "ADOT"],
    ["awaiting takeaway", "waiting", "ADOT"],
    ["stopped", "stopped", "ADET"],
    ["being cleared", "working", "ADET"],
    ["changeover", "stopped", "AUST"],
    ["heating", "working", "AUST"],
    ["purging", "working", "AUST"],
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

/** So many whole periods are left out, and so many observed, that no shot is counted in part. */
function overWholePeriods(scenario: Scenario, skipped: number, observed: number): Scenario {
  const period = idealCycle(scenario).periodTicks / TICKS_PER_SECOND;
  return { ...scenario, run: { ...scenario.run, warmup: skipped * period, length: (skipped + observed) * period } };
}

const tenths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((each) => each / 10);

describe("a cell that keeps its ideal cycle", () => {
  it("has an availability, an effectiveness and an OEE of 1, never more, whatever binds it", () => {
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

  // cell.md: a turn of the station takes 13.05 s, of the screw 6.3 s a shot; three stations wait for the screw.
  it("shows a station's wait for the screw as its down time: 3 × 6.3 s for 13.05 s of work", () => {
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
  // Fixed times over whole periods: what a station does while it works is its turn, whatever brings the melt.
  it.each([
    "delivery={ kind: accumulator-head, recharge: 4 s, drop: 1.8 s }",
    "delivery={ kind: accumulator-head, accumulator: common, plasticatingRate: 110 kg/h, drop: 1.8 s, shotCapacity: 200 g }",
  ])("keep cell and stations at an effectiveness of 1: %s", (delivery) => {
    const of = rowsOf(overWholePeriods(scenarioOf(cellText(3), delivery, "valve.dispatch=alternate"), 60, 90));
    for (const resource of ["cell", "station 1", "station 3"]) {
      expect(Math.abs(of(resource, "effectiveness") - 1), resource).toBeLessThan(1e-9);
    }
  });
});

describe("other things that set the pace", () => {
  const steady = (stations: number, ...set: readonly string[]) =>
    rowsOf(overWholePeriods(scenarioOf(cellText(stations), ...set), 100, 1000));

  it.each([
    [4, ["stations.steps.remove={ time: 5 s, by: operator }", "crew={ operators: 1 }"]],
    [2, ["takeaway={ trim: { time: 5 s, buffer: 4 } }"]],
    [3, ["delivery.rechargeStarts=mold-closed", "valve.dispatch=alternate"]],
  ])("leave the cell at an availability and an OEE of 1: %d stations, %j", (stations, set) => {
    const of = steady(stations, ...set);
    for (const kpi of ["availability", "effectiveness", "OEE index"]) {
      expect(Math.abs(of("cell", kpi) - 1), kpi).toBeLessThan(1e-9);
    }
  });

  // A trimmer of 5 s a part sets the pace; of ten parts nine reach it, so that the molds make 10/9 as many. All that it trims is good.
  it("let effectiveness pass 1 by the rejects that a slow server never sees, but not OEE", () => {
    const of = steady(2, "takeaway={ trim: { time: 5 s, buffer: 4 } }", "quality={ rejects: 10 % }");
    expect(of("cell", "OEE index")).toBeLessThanOrEqual(1 + 1e-9);
    expect(of("cell", "OEE index")).toBeGreaterThan(0.999);
    expect(of("cell", "effectiveness") * of("cell", "quality ratio")).toBeCloseTo(of("cell", "OEE index"), 9);
    expect(of("cell", "effectiveness")).toBeCloseTo(1 / 0.9, 1);
  });

  // All that the trimmer refuses it has trimmed first: no part more is made, and a tenth of them is lost.
  it("take what a slow server refuses off the OEE of the cell alone", () => {
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

  // Arithmetic of the calendar: 8 of 24 hours, whatever the cell does meanwhile.
  it.each([
    ["nothing else", ""],
    [
      "a mold that stands in the night with the stop of the day",
      "stops: [{ name: jam, resource: station 1, clock: calendar, between: 13 h, repair: 4 h, by: operator, step: finish }]\ncrew: { operators: 1 }\n",
    ],
    ["servers that starve in the night", "takeaway: { trim: { time: 1 s, buffer: 4 } }\n"],
    ["a start", "startUp: { afterOff: 4 h, heatUp: 30 min, purge: 2 kg }\n"],
  ])("is planned to be busy for its 8 hours: %s", (_, more) => {
    expect(plannedHours(more)).toBe(8);
  });

  it.each([
    ["run on", 8],
    ["stop", 7.5],
  ])("is planned for its breaks as well where they do not stop it: %s", (breaks, hours) => {
    const rested = `calendar: { from: 2026-03-23, breaks: ${breaks}, shifts: [{ start: "06:00", end: "14:00", breaks: [{ at: "09:30", time: 30 min }] }] }\ncrew: { operators: 1 }`;
    const of = rowsOf(scenarioOf(cellText(1, rested), "run.length=24 h", "run.warmup=auto"));
    for (const unit of ["cell", "station 1"]) expect(of(unit, "planned busy time")).toBe(hours * 3600);
  });

  it("counts what of the plan lies within the observed time", () => {
    expect(plannedHours("", "run.warmup=8 h")).toBe(6);
    expect(plannedHours("", "run.length=10 h")).toBe(4);
  });
});

/*
 * Cycles of 14 s from the first second on: shift 1 s, drop 2, close 1, blow 1, cool 6, vent 1, open 1, removal 1; recharge 4 s. On shift from 0 to 60 s and from
 * 600 s on; 300 s observed. Worked out by hand.
 */
describe("a shift of a minute", () => {
  const shifts = (people = ""): string =>
    `calendar: { from: 2026-03-23, at: "06:00", shifts: [{ start: "06:00", end: "06:01"${people} }, { start: "06:10", end: "06:20" }] }\n`;
  const minute = (more: string, people = "") => {
    const text = `${cellText(1)}\n${shifts(people)}${more}`;
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
  it("loses the 4 s in which no cycle fits any more", () => {
    const of = minute("");
    expect(of("cell")).toEqual([60, 56, 0, 0, 4, 0, 8]);
    expect(of("station 1")).toEqual([60, 56, 0, 0, 4, 0, 8]);
  });

  // The mold opens from 54 s on, stands from 54.5 to 74.5 s, then opens for another 0.5 s and is emptied in 1 s.
  it("has the end of a stopped cycle as overtime, and its parts with the others: 7 s × 8 / 54.5 s", () => {
    const stop = "{ name: jam, resource: station 1, clock: calendar, between: 54.5 s, repair: 20 s, step: hold }";
    const of = minute(`stops: [${stop}]`);
    for (const unit of ["cell", "station 1"]) expect(of(unit), unit).toEqual([60, 54.5, 0, 5.5, 0, 1.5, 8]);
  });

  it("shows an effectiveness above 1 as it is", () => {
    const stop = "{ name: jam, resource: station 1, clock: calendar, between: 54.5 s, repair: 20 s, step: hold }";
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

  // The cycle under way ends at 14 s; the mold is changed until 44 s; one more cycle of 14 s ends at 58 s. Of two people one is there.
  it("has a change of mold as set-up, though somebody of the crew is off shift meanwhile", () => {
    const change = "changes: [{ name: new mold, kind: mold, station: station 1, after: 10 s, time: 30 s }]";
    const of = minute(`${change}\ncrew: { operators: 2 }`, ", operators: 1");
    for (const unit of ["cell", "station 1"]) expect(of(unit), unit).toEqual([60, 28, 30, 0, 2, 0, 4]);
  });

  // Set-up from 56 s, when the fourth cycle ends, to 86 s.
  it("has a change that lasts beyond the shift as set-up within it, as overtime after it", () => {
    const change = "changes: [{ name: new mold, kind: mold, station: station 1, after: 45 s, time: 30 s }]";
    for (const unit of ["cell", "station 1"]) {
      expect(minute(change)(unit), unit).toEqual([60, 56, 4, 0, 0, 26, 8]);
    }
  });
});

it("knows no overtime where nothing is planned", () => {
  expect(rowsOf(scenarioOf(cellText(1)))("cell", "overtime")).toBeNaN();
});

describe("a cell with stops", () => {
  // One station that fails after 600 s of the calendar for 60 s: nobody else works for long, so 60 of 660 s are delay, but
  // for what the screw still does (a recharge of at most 4 s after a stop in the drop's wake).
  it("stands still as a whole for the stop of its only station, and its time elements are its observed time", () => {
    const stop = "{ name: jam, resource: station 1, clock: calendar, between: 600 s, repair: 60 s, step: finish }";
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

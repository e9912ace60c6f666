// The indicators of ISO 22400-2 against the numbers of checks.md section 7, and those of whole cells against their ideal cycle.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/idealCycle.ts";
import { kpiSpecs, type KpiInput } from "#analysis/kpi.ts";
import { kpiRows } from "#analysis/kpiRows.ts";
import { replicationRunner } from "#analysis/runReplication.ts";
import { timeElements } from "#analysis/timeElements.ts";
import { elementOf, type StateElement } from "#cell/elementWords.ts";
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
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
      { numRuns: 60 },
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

  // What is left of the shift when no cycle of 13.05 s fits in any more is off shift.
  it("is planned to be busy for its 8 hours of 24, less than a cycle short", () => {
    expect(plannedHours("")).toBeLessThanOrEqual(8);
    expect(plannedHours("")).toBeGreaterThan(8 - 13.05 / 3600);
  });

  it("is planned for no night in which a mold still stands with the stop of the day, but for the cycle that then ends", () => {
    const stop =
      "{ name: jam, resource: station 1, clock: calendar, between: 13 h, repair: 4 h, by: operator, step: finish }";
    const hours = plannedHours(`stops: [${stop}]\ncrew: { operators: 1 }\n`);
    expect(hours).toBeLessThanOrEqual(8 + 13.05 / 3600);
    expect(hours).toBeGreaterThan(8 - 13.05 / 3600);
  });

  it("is planned for no night in which the servers after the molds starve", () => {
    expect(plannedHours("takeaway: { trim: { time: 1 s, buffer: 4 } }\n")).toBeLessThanOrEqual(8 + 5 / 3600);
  });
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

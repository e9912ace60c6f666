// Holds the timeline of the timing chart to the closed form of the cell and to consistency rules.
import { describe, expect, it } from "vitest";
import { firstShots } from "#analysis/study/firstShots.ts";
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import { fixedCell } from "../../support/fixedCell.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";

const names = ["one-station", "two-station", "small-screw", "two-molds", "one-operator", "three-station"];

function timelineOf(scenario: Scenario): TimelineRecord {
  const { timeline } = firstShots(scenario);
  if (!timeline) throw new Error("the cell makes shots");
  return timeline;
}

/** Gaps and overlaps between spans. */
function gaps(spans: readonly { readonly start: number; readonly end: number }[], seconds: number): readonly string[] {
  const edges = [0, ...spans.flatMap(({ start, end }) => [start, end]), seconds];
  return edges.flatMap((edge, i) =>
    i % 2 === 0 && Math.abs(edge - (edges[i + 1] ?? NaN)) > 1e-9 ? [`${edge} to ${edges[i + 1]}`] : [],
  );
}

describe.each(names)("the timeline of %s", (name) => {
  const timeline = timelineOf(scenarioOf(shippedText(name), name, ["run.warmup=1 min"]));

  it("has every resource in exactly one state at any time", () => {
    for (const resource of timeline.resources) {
      const own = timeline.intervals.filter((interval) => interval.resource === resource);
      expect([resource, gaps(own, timeline.seconds)]).toEqual([resource, []]);
    }
  });

  it("has a critical path without gap or overlap, through working states only", () => {
    expect(gaps(timeline.chain, timeline.seconds)).toEqual([]);
    for (const { resource, start, end } of timeline.chain) {
      const state = timeline.intervals.find((each) => each.resource === resource && each.end > (start + end) / 2);
      expect(state?.kind).toBe("working");
    }
  });

  it("is reproducible", () => {
    expect(timelineOf(scenarioOf(shippedText(name), name, ["run.warmup=1 min"]))).toEqual(timeline);
  });
});

// The cell as a timed event graph, computed independently of this project [C]: recharge 4.0, drop 1.8, valve shift 0.25,
// close 0.6, mold time after the drop 11.0 s.
const station = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 };
const cellOf = (count: number): Scenario =>
  fixedCell({ stations: Array.from({ length: count }, () => station), shift: 0.25 });

describe("the timeline of a cell of fixed times", () => {
  it.each([
    [1, 13.05],
    [2, 6.525],
    [3, 6.3],
    [4, 6.3],
  ])("has for %i stations a mean of %d s a shot (r + d + 2v or (v + d + m)/M)", (count, period) => {
    const { intervals } = timelineOf(cellOf(count));
    const drops = intervals.filter(({ resource, state }) => resource === "plasticator" && state === "delivering");
    // The period is taken over turns of all stations; within a turn the intervals may differ.
    const turns = drops.slice(count).map(({ end }, i) => end - drops[i]!.end);
    expect(turns.length).toBeGreaterThan(0);
    expect(turns.at(-1)! / count).toBeCloseTo(period, 9);
  });

  it("has the screw's circuit as critical path for three stations: recharge 4.0 of 6.3 s, valve 0.5, drop 1.8", () => {
    const { seconds, chain } = timelineOf(cellOf(3));
    const share = (matches: (step: string) => boolean): number =>
      chain.filter(({ step }) => matches(step)).reduce((sum, { start, end }) => sum + end - start, 0) / seconds;
    expect(share((step) => step === "recharge")).toBeCloseTo(4 / 6.3, 9);
    expect(share((step) => step.startsWith("shift"))).toBeCloseTo(0.5 / 6.3, 9);
    expect(share((step) => step === "drop")).toBeCloseTo(1.8 / 6.3, 9);
  });

  it("ends with the run, and is undefined for a run without shots", () => {
    const short = fixedCell({ stations: [station], shift: 0.25, length: 40 });
    const { from, seconds } = timelineOf(short);
    expect(from + seconds).toBeLessThanOrEqual(40);
    const never = fixedCell({ stations: [{ ...station, drop: 1e6 }], shift: 0.25 });
    expect(firstShots(never).timeline).toBeUndefined();
  });
});

describe("the stretch of a timeline", () => {
  const drops = ({ intervals }: TimelineRecord, name: string): number =>
    intervals.filter(({ resource, state, isCut }) => resource === name && state === "parison drop" && !isCut).length;

  it.each(["one-station", "two-station", "three-station", "one-operator-four-molds", "small-screw"])(
    "of %s has a whole cycle of every station: two drops that it does not cut",
    (name) => {
      const scenario = scenarioOf(shippedText(name), name, ["run.warmup=1 min"]);
      const timeline = timelineOf(scenario);
      for (const { name: own } of scenario.stations) expect(drops(timeline, own)).toBeGreaterThan(1);
    },
  );

  it("has a whole cycle of each of sixteen stations", () => {
    const many = cellOf(16);
    const timeline = timelineOf(many);
    for (const { name } of many.stations) expect(drops(timeline, name)).toBeGreaterThan(1);
  });

  it("waits for a whole cooling of a station that is five times slower than the other", () => {
    const { intervals } = timelineOf(
      fixedCell({ stations: [station, { ...station, name: "slow", cool: 63 }], shift: 0.25 }),
    );
    const whole = intervals.filter(
      ({ resource, state, isCut }) => resource === "slow" && state === "cooling" && !isCut,
    );
    expect(whole).toHaveLength(1);
  });

  it("marks what its edges cut, and only that: a cut interval is at an edge, the others have the time of their step", () => {
    const { intervals, seconds } = timelineOf(cellOf(2));
    for (const { start, end, isCut, state } of intervals) {
      if (isCut) expect(start === 0 || end === seconds).toBe(true);
      if (state === "cooling" && !isCut) expect(end - start).toBeCloseTo(9.4, 9);
    }
    expect(intervals.some(({ isCut, state }) => isCut && state === "cooling")).toBe(true);
  });

  it("separates consecutive parisons of continuous extrusion: one for each shot", () => {
    const { intervals, chain } = timelineOf(
      scenarioOf(shippedText("bottle-continuous"), "bottle", ["run.warmup=1 min"]),
    );
    const parisons = intervals.filter(({ state, isCut }) => state === "extruding a parison" && !isCut);
    const lengths = parisons.map(({ start, end }) => end - start);
    expect(parisons.length).toBeGreaterThan(2);
    expect(Math.max(...lengths)).toBeLessThan(1.5 * Math.min(...lengths));
    expect(chain.length).toBeGreaterThan(0);
  });
});

describe("the timeline around a stop", () => {
  it("shows a whole stop with cycles before and after it, without gap or overlap", () => {
    const scenario = scenarioOf(shippedText("stops-and-repairs"), "stops", ["run.length=40 h"]);
    const { stop } = firstShots(scenario);
    const stopped = stop?.intervals.filter(({ kind, isCut }) => kind === "stopped" && !isCut) ?? [];
    expect(stopped.length).toBeGreaterThan(0);
    expect(stopped[0]!.start).toBeGreaterThan(5);
    expect(stop!.seconds - stopped.at(-1)!.end).toBeGreaterThan(5);
    for (const resource of stop!.resources) {
      const own = stop!.intervals.filter((interval) => interval.resource === resource);
      expect([resource, gaps(own, stop!.seconds)]).toEqual([resource, []]);
    }
    expect(gaps(stop!.chain, stop!.seconds)).toEqual([]);
  });

  it("needs two shots after the stop: the first ends the picture, the second the critical path", () => {
    const clear: StopSpec = {
      name: "clear",
      resource: "station 01",
      comes: { by: "cycles", cycles: 40 },
      start: "fresh",
      repair: { kind: "fixed", value: 20 },
      by: "itself",
      shift: "any",
      step: "finish",
    };
    const shownUntil = (length: number): number | undefined => {
      const cell = { ...fixedCell({ stations: [station], shift: 0.25, length }), stops: [clear] };
      const { stop } = firstShots(cell);
      return stop && stop.from + stop.seconds;
    };
    // Cycles of 13.05 s: the picture is there 13.05 s after its own end, not before.
    const end = shownUntil(3600)!;
    expect(end).toBeGreaterThan(40 * 13.05);
    expect(shownUntil(end + 13)).toBeUndefined();
    expect(shownUntil(end + 13.1)).toBeCloseTo(end, 9);
  });

  it("is absent where nothing stops", () => {
    expect(firstShots(scenarioOf(shippedText("two-station"), "two", ["run.warmup=1 min"])).stop).toBeUndefined();
  });
});

// Holds ideal cycle and simulated period of accumulators and continuous extrusion to closed forms at fixed times, in ticks.
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { matchScrew } from "#analysis/ideal/matchScrew.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { AccumulatorHeadSpec, ContinuousSpec, DeliverySpec, Scenario } from "#scenario/scenario.ts";
import { allShotTicks, fixedCell, type FixedStation } from "../../support/fixedCell.ts";

/** Whole tenths of a second, in seconds. */
const tenths = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: least, max: most }).map((n) => n / 10);
const ticks = (seconds: number): number => Math.round(seconds * 1e6);

interface Cell {
  readonly station: FixedStation;
  readonly shift: number;
  readonly count: number;
  readonly start: "running" | "cold";
}

const cells = (travel: boolean): fc.Arbitrary<Cell> =>
  fc
    .tuple(
      tenths(10, 80),
      tenths(5, 40),
      tenths(2, 15),
      tenths(10, 150),
      tenths(2, 20),
      tenths(0, 10),
      fc.integer({ min: 1, max: 4 }),
    )
    .chain(([recharge, drop, close, cool, remove, shift, count]) =>
      fc
        .tuple(tenths(2, 15), tenths(1, 5), tenths(2, 15), fc.constantFrom("running" as const, "cold" as const))
        .map(([i, u, o, start]) => ({
          station: {
            recharge,
            drop: travel ? 0 : drop,
            close,
            cool,
            remove,
            ...(travel ? { travel: [i, u, o] as const } : {}),
          },
          shift,
          count,
          start,
        })),
    );

function scenarioOf({ station, shift, count, start }: Cell, delivery: DeliverySpec, length = 3600): Scenario {
  return fixedCell({ stations: Array.from({ length: count }, () => station), shift, start, delivery, length });
}

/** Ticks of the last `shots` shots of a run. */
function simulated(scenario: Scenario, shots: number): number {
  const all = allShotTicks(runCell(planCell(scenario), { replication: 1 }));
  return all.at(-1)! - all.at(-1 - shots)!;
}

/**
 * Ideal cycle and run both take `seconds` a shot. The closed forms are circuits of the timed event graph, verified against
 * 20,000 runs of an independent event-queue program [C].
 */
function expectPeriod(scenario: Scenario, seconds: number, stations: number): void {
  const ideal = idealCycle(scenario);
  expect(ideal.secondsPerShot).toBeCloseTo(seconds, 9);
  // Whole turns of all stations take whole ticks.
  const shots = 12 * stations;
  expect(simulated(scenario, shots)).toBe(ticks(seconds * shots));
}

const molding = ({ close, cool, remove }: FixedStation): number => close + cool + remove;

describe("accumulator heads, a chamber for each station", () => {
  const heads: AccumulatorHeadSpec = { kind: "accumulator-head", accumulator: "per-station" };

  it("give random cells the period max{ r + v, (d + m)/M, (r + d)/M }", () => {
    fc.assert(
      fc.property(cells(false), (cell) => {
        const { recharge: r, drop: d } = cell.station;
        const [v, m, M] = [cell.shift, molding(cell.station), cell.count];
        expectPeriod(scenarioOf(cell, heads), Math.max(r + v, (d + m) / M, (r + d) / M), M);
      }),
      { seed: 61 },
    );
  });
});

describe("one accumulator before the valve", () => {
  it("gives random cells the period max{ r + max(0, v − (A − S)/Q), d + 2v, (v + d + m)/M }, in whole ticks", () => {
    fc.assert(
      fc.property(cells(false), fc.integer({ min: 0, max: 2500 }), (cell, grams) => {
        const shot = 2 * (42 + 12);
        const common: DeliverySpec = {
          kind: "accumulator-head",
          accumulator: "common",
          shotCapacity: (shot + (grams * shot) / 1000) / 1000,
        };
        const { recharge: r, drop: d } = cell.station;
        const [v, m, M] = [cell.shift, molding(cell.station), cell.count];
        // The reserve drains each shot by the difference of two circuits; cells that drain for hours are left out.
        const pace = Math.max(d + 2 * v, (v + d + m) / M);
        fc.pre(r >= d && Math.abs(r - pace) > 0.15 && Math.abs(r + v - pace) > 0.15);
        const ahead = Math.floor((ticks(r) * Math.min(grams, 1000)) / 1000) / 1e6;
        const reserve = grams >= 1000 ? r : ahead;
        expectPeriod(scenarioOf(cell, common, 7200), Math.max(r + Math.max(0, v - reserve), pace), M);
      }),
      { seed: 62 },
    );
  });
});

describe("continuous extrusion", () => {
  const fixedRate: ContinuousSpec = { kind: "continuous", rate: "fixed", removal: "mold", dieZone: "exclusive" };
  const closedForm = ({ station, count }: Cell): number => {
    const [i, u, o] = station.travel!;
    const zone = i + station.close + u + o;
    return Math.max(station.recharge, zone, (zone + station.cool + station.remove) / count);
  };

  it("gives random cells the period max{ P, i + k + u + o, (i + k + u + o + b)/M }", () => {
    fc.assert(
      fc.property(cells(true), (cell) => expectPeriod(scenarioOf(cell, fixedRate), closedForm(cell), cell.count)),
      { seed: 63 },
    );
  });

  it("sends rate × (period − P) to regrind, and nothing with a matched screw", () => {
    fc.assert(
      fc.property(cells(true), (cell) => {
        const regrindShare = (delivery: ContinuousSpec): number => {
          const scenario = matchScrew(scenarioOf({ ...cell, start: "running" }, delivery, 36_000));
          const record = runCell(planCell(scenario), { replication: 1, warmup: 1800 });
          const state = record.stateTimes.find((each) => each.state === "extruding to regrind");
          return state!.ticks / (record.untilTick - record.fromTick);
        };
        const period = closedForm(cell);
        expect(regrindShare(fixedRate)).toBeCloseTo((period - cell.station.recharge) / period, 2);
        expect(regrindShare({ ...fixedRate, rate: "matched" })).toBeCloseTo(0, 2);
      }),
      { seed: 64 },
    );
  });

  it("loses no melt: parts, flash, excess and the parison under way add up to rate × time, to the milligram", () => {
    fc.assert(
      fc.property(cells(true), (cell) => {
        const scenario = scenarioOf({ ...cell, start: "running" }, fixedRate, 1800);
        const record = runCell(planCell(scenario), { replication: 1 });
        // Every parison is a shot of 2 × (42 + 12) g. One is still growing at the end of the run, and a mold may hold one not yet cut.
        const shot = 108_000;
        const perTick = shot / ticks(cell.station.recharge);
        const growing = record.stateTimes.find(({ state }) => state === "extruding a parison")!.ticks;
        const excess = record.excessMilligrams!;
        expect(Math.abs(growing * perTick + excess - perTick * ticks(1800))).toBeLessThanOrEqual(1);
        const shots = record.stations.reduce((sum, station) => sum + station.shots, 0);
        // The parison that hangs at the start was extruded before the run.
        const underWay = growing * perTick - (shots - 1) * shot;
        expect(underWay).toBeGreaterThanOrEqual(-1);
        expect(underWay).toBeLessThanOrEqual(2 * shot + 1);
      }),
      { seed: 66 },
    );
  });

  it("has no removal in the mold's circuit when a pin carries the parts away, and waits for a slow mask", () => {
    fc.assert(
      fc.property(cells(true), (cell) => {
        const { station, count } = cell;
        const [i, u, o] = station.travel!;
        const zone = i + station.close + u + o;
        const period = Math.max(station.recharge, zone, (zone + station.cool) / count, station.remove / count);
        expectPeriod(scenarioOf(cell, { ...fixedRate, removal: "pin" }), period, count);
      }),
      { seed: 65 },
    );
  });
});

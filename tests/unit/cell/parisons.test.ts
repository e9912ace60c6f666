// Holds hang time, sag and time at heat of the parisons of a run to closed forms, to L = λW and to the event log.
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { shotSpreads, type ShotSpread } from "#analysis/study/shotSpread.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { runStudy } from "#analysis/study/study.ts";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import { MeltPassage } from "#cell/records/meltPassage.ts";
import { ParisonSample } from "#cell/run/parisonSample.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { eachShot, shotRecords, type ShotRecord } from "#cell/records/shotRecord.ts";
import { materials } from "#physics/materials/materials.ts";
import { ownMaterial } from "#physics/materials/ownMaterial.ts";
import { spreadCells, spreadWarnings } from "#report/tables/spreadWords.ts";
import type { ExtraStepSpec, ProcessSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { allShotTicks, fixedCell } from "../../support/fixedCell.ts";

const values = { "product.parisonLength": 0.3, "product.sagLimit": 0.02, "delivery.holdUp": 1 };
// Illustrative inputs of the sags computed below: 760 kg/m³, 2e4 Pa s.
const material = ownMaterial(materials.get("HDPE")!, { meltDensity: 760, zeroShearViscosity: 2e4, timeAtHeat: 40 });
const process: ProcessSpec = { material, values, deliveryKind: "reciprocating-screw" };
const wait: ExtraStepSpec = { name: "wait", after: "drop", time: { kind: "fixed", value: 0.1 } };

// The cell as a timed event graph, computed independently of this project [C]: recharge 4.0, drop 1.8, valve shift 0.25,
// close 0.6, mold time after the drop 11.0 s; two stations 6.525 s a shot.
const times = { recharge: 4, drop: 1.8, close: 0.6, cool: 9.4, remove: 1 };

function cellOf(change: Partial<StationSpec> = {}, length = 3600): Scenario {
  const cell = fixedCell({ stations: [times, times], shift: 0.25, length });
  return { ...cell, stations: cell.stations.map((station) => ({ ...station, process, ...change })) };
}

const varying: Partial<StationSpec> = {
  close: { kind: "uniform", min: 0.5, max: 0.9 },
  drop: { by: "time", time: { kind: "uniform", min: 1.6, max: 2 } },
  cool: { kind: "gamma", mean: 9, sd: 2 },
  extra: [wait],
};

function shotsOf(scenario: Scenario): readonly ShotRecord[] {
  return shotRecords(eventRecorder(scenario)(1), scenario);
}

function spreadsOf(scenario: Scenario): readonly ShotSpread[] {
  return shotSpreads(scenario, [replicationRunner(scenario)({ replication: 1, scale: null })]);
}

const rising = (numbers: Iterable<number>): readonly number[] => [...numbers].toSorted((one, other) => one - other);

describe("the melt in the machine", () => {
  it("has an age equal to the time in which its hold-up leaves", () => {
    // By hand [C]: 100 g every 10 s from a hold-up of 250 g take 25 s.
    const passage = new MeltPassage(250);
    const ages = [10, 20, 30, 40, 50].map((seconds) => passage.deliver(seconds, 100));
    expect(ages).toEqual([null, null, 25, 25, 25]);
  });

  it("ages during a pause of the screw", () => {
    const passage = new MeltPassage(200);
    // By hand [C]: 200 g are two shots. A pause of 60 s before the fourth shot counts for it and the fifth, not for the sixth.
    const ages = [10, 20, 30, 100, 110, 120].map((seconds) => passage.deliver(seconds, 100));
    expect(ages).toEqual([null, 20, 20, 80, 80, 20]);
  });

  it("weights different shots by their mass", () => {
    const passage = new MeltPassage(150);
    // By hand [C]: 50 g have left at 10 s, 250 g at 20 s, so 100 g at 12.5 s; 300 g have left at 30 s, and 150 g at 15 s.
    expect([passage.deliver(10, 50), passage.deliver(20, 200), passage.deliver(30, 50)]).toEqual([null, 7.5, 15]);
  });

  // Little, A proof for the queuing formula L = λW, Operations Research 9 (1961) 383 [M]: hold-up = throughput × mean age.
  it("has the mean age of L = λW for any spacing of the shots", () => {
    const gap = fc.double({ min: 1, max: 30, noNaN: true });
    fc.assert(
      fc.property(fc.array(gap, { minLength: 20, maxLength: 20 }), fc.integer({ min: 1, max: 12 }), (gaps, inside) => {
        const passage = new MeltPassage(inside * 100);
        let now = 0;
        let sum = 0;
        const turns = 600;
        for (let shot = 0; shot < turns * 20; shot++) {
          now += gaps[shot % 20]!;
          const age = passage.deliver(now, 100);
          if (shot >= (turns - 100) * 20) sum += age!;
        }
        const turn = gaps.reduce((total, each) => total + each, 0);
        expect(sum / 2000).toBeCloseTo((inside * turn) / 20, 6);
      }),
    );
  });
});

describe("a sample of parisons", () => {
  const sampleOf = (count: number, hang: (shot: number) => number) => {
    const sample = new ParisonSample("left");
    for (let shot = 0; shot < count; shot++) sample.add(1, hang(shot), null);
    return sample.record();
  };

  it("contains all parisons of a short run", () => {
    expect(sampleOf(1000, (shot) => shot).hangs).toEqual(Float64Array.from({ length: 1000 }, (_, shot) => shot));
  });

  it("contains a representative part of many periodic parisons, and the longest hang time", () => {
    for (const period of [2, 3, 4, 8, 16]) {
      const { hangs, parisons, longestHang, mostSagging } = sampleOf(100_000, (shot) =>
        shot === 77_777 ? 99 : shot % period === 0 ? 1 : 0,
      );
      expect(parisons).toBe(100_000);
      expect(hangs.length).toBeGreaterThan(400);
      expect(hangs.length).toBeLessThanOrEqual(1024);
      const share = hangs.filter((hang) => hang === 1).length / hangs.length;
      // Four standard deviations of a binomial share.
      const spread = 4 * Math.sqrt(((1 / period) * (1 - 1 / period)) / hangs.length);
      expect(Math.abs(share - 1 / period), `every ${period}th`).toBeLessThan(spread);
      expect([longestHang, mostSagging]).toEqual([99, { drop: 1, hang: 99 }]);
    }
  });

  it("contains early and late parisons with equal probability", () => {
    const { hangs } = sampleOf(100_000, (shot) => shot / 100_000);
    // A uniform distribution has mean 1/2 and standard deviation 1/√12; the limit is four standard deviations of the mean.
    const mean = hangs.reduce((sum, hang) => sum + hang, 0) / hangs.length;
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 / Math.sqrt(12 * hangs.length));
  });
});

describe("the shots of a run", () => {
  it("hang from the end of the drop to the closed mold, and have the closed forms of sag and time at heat", () => {
    const shot = shotsOf(cellOf({ extra: [wait] }, 1800)).at(-5)!;
    // 0.1 s of the extra step and 0.6 s of close.
    expect(shot.hang).toBeCloseTo(0.7, 9);
    // Delivered in 1.8 s and held for 0.7 s: 2.492 % at g = 9.81 m/s² [C], so 2.491 % at 9.80665.
    expect(shot.sag).toBeCloseTo(0.02492 * (9.80665 / 9.81), 5);
    // A hold-up of 1 kg is 9.26 shots of 2 × 54 g, one every (0.25 + 1.8 + 0.1 + 11)/2 s on average. Within a turn the intervals
    // differ, which changes the time by less than one shot.
    expect(Math.abs(shot.timeAtHeat! - (1 / 0.108) * 6.575)).toBeLessThan(6.575);
  });

  it("have no time at heat in the first hold-up, and no hang time before the mold has closed", () => {
    const shots = shotsOf(cellOf({}, 302));
    expect(shots.slice(0, 9).map(({ timeAtHeat }) => timeAtHeat)).toEqual(Array.from({ length: 9 }, () => null));
    expect(shots[10]!.timeAtHeat).toBeGreaterThan(0);
    const open = shots.filter(({ starts }) => !starts.has("blow"));
    for (const { hang, sag } of open) expect([hang, sag]).toEqual([null, null]);
    expect(shotsOf(cellOf({ process: { ...process, values: {} } }, 600)).at(-9)).toMatchObject({
      sag: null,
      timeAtHeat: null,
    });
  });

  it.each([0, 700])("agree with the event log, after a warm-up of %i s", (warmup) => {
    const scenario = cellOf(varying);
    const run = { ...scenario.run, warmup };
    const record = runCell(planCell({ ...scenario, run }), {
      replication: 1,
      keepsShots: false,
      watchesParisons: true,
    });
    const shots = shotsOf(scenario);
    for (const { station, parisons, hangs, drops, timesAtHeat, longestHang } of record.parisons) {
      const own = shots.filter((shot) => {
        const closed = (shot.starts.get("close") ?? 0) + (shot.hang ?? 0) - 0.1;
        return shot.station === station && shot.hang !== null && closed > warmup;
      });
      expect(parisons).toBe(own.length);
      const close = (numbers: Float64Array, wanted: readonly number[]): void => {
        expect(numbers.length).toBe(wanted.length);
        rising(numbers).forEach((number, i) => expect(number).toBeCloseTo(rising(wanted)[i]!, 5));
      };
      close(
        hangs,
        own.map(({ hang }) => hang!),
      );
      close(
        drops,
        own.map(({ starts }) => starts.get("wait")! - starts.get("drop")!),
      );
      close(
        timesAtHeat,
        own.flatMap(({ timeAtHeat }) => timeAtHeat ?? []),
      );
      expect(longestHang).toBeCloseTo(Math.max(...own.map(({ hang }) => hang!)), 5);
    }
  });

  it("are only those on which the mold closed, when stops scrap drops and closes", () => {
    const scenario = cellOf({ ...varying, clear: { time: { kind: "fixed", value: 20 }, by: "machine" } }, 36_000);
    const stops = [
      {
        name: "jam",
        resource: "station 01",
        comes: { by: "working", between: { kind: "exponential", mean: 60 } },
        start: "fresh",
        repair: { kind: "fixed", value: 5 },
        by: "itself",
        shift: "any",
        step: "scrap",
      },
    ] as const;
    const stopped = { ...scenario, stops };
    const record = runCell(planCell(stopped), { replication: 1, watchesParisons: true });
    const [left] = record.stations;
    expect(left!.lostShots).toBeGreaterThan(10);
    const shots = shotsOf(stopped);
    for (const { station, parisons, drops, longestHang } of record.parisons) {
      const own = shots.filter((shot) => shot.station === station && shot.hang !== null);
      expect(parisons).toBe(own.length);
      expect(longestHang).toBeCloseTo(Math.max(...own.map(({ hang }) => hang!)), 5);
      // By hand [C]: 0.1 s of the extra step and a close of at most 0.9 s. A scrapped drop or close has no hang time.
      expect(longestHang).toBeLessThanOrEqual(1);
      expect(Math.max(...drops)).toBeLessThanOrEqual(2);
    }
  });

  it("do not change when the parisons are recorded", () => {
    const plan = planCell(cellOf(varying));
    const watched = runCell(plan, { replication: 1, watchesParisons: true });
    expect({ ...watched, parisons: [] }).toEqual(runCell(plan, { replication: 1 }));
    expect(watched.parisons.map(({ parisons }) => parisons > 200)).toEqual([true, true]);
    expect(
      runCell(planCell(cellOf({ process: undefined as never })), { replication: 1, watchesParisons: true }).parisons,
    ).toEqual([]);
  });
});

describe("the spread from shot to shot", () => {
  const scenario = cellOf(varying, 200_000);
  const spreads = spreadsOf(scenario);
  const of = (quantity: ShotSpread["quantity"]) => spreads.find((each) => each.quantity === quantity)!;

  it("has the quantiles of the distribution: hang is 0.1 s and a uniform close from 0.5 to 0.9 s", () => {
    const { mean, quantiles, max, limit, beyond } = of("hang time");
    // By hand [C], quantiles of a uniform distribution: 0.6 + 0.4 p. About 900 of 30,000 shots are in the sample.
    expect(mean).toBeCloseTo(0.8, 1);
    expect(Math.abs(quantiles.p05 - 0.62)).toBeLessThan(0.02);
    expect(Math.abs(quantiles.p95 - 0.98)).toBeLessThan(0.02);
    expect(max).toBeGreaterThan(0.9995);
    expect([limit, beyond]).toEqual([null, 0]);
  });

  it("has the mean time at heat of L = λW", () => {
    const answer = replicationRunner(scenario)({ replication: 1, scale: null });
    const perHour = answer.measures.find(({ measure }) => measure === "melt per hour")!.value;
    expect(of("time at heat").mean / (3600 / perHour)).toBeCloseTo(1, 2);
  });

  it("gives the share of shots beyond a limit, and no remedy when all are within", () => {
    const middle = of("sag").quantiles.p50;
    const limited = (limit: number): ShotSpread => {
      const own = { ...process, values: { ...values, "product.sagLimit": limit } };
      return spreadsOf(cellOf({ ...varying, process: own }, 200_000)).find(({ quantity }) => quantity === "sag")!;
    };
    expect(Math.abs(limited(middle).beyond - 0.5)).toBeLessThan(0.01);
    expect(limited(1)).toMatchObject({ beyond: 0, remedy: "" });
    // Only the largest sag is above the limit. The sample may not contain it, but the warning counts it.
    const { max } = of("sag");
    const rare = limited(max * 0.99999);
    expect(rare.beyond).toBeGreaterThan(0);
    expect(rare.beyond).toBeLessThan(0.003);
    expect(spreadWarnings([rare])[0]).toMatch(/^sag, station 01: above .* in 0\.1 % of the shots/u);
  });

  it("is in the window's table with its limit in every row, and gives one warning for equal stations", () => {
    const rows = spreadCells(of("sag"));
    expect(rows.map(([quantity]) => quantity)).toEqual(
      ["mean", "p05", "p50", "p95", "max"].map((word) => `sag of the run, ${word}`),
    );
    expect(rows.map(([, , , , limit]) => limit)).toEqual([0.02, 0.02, 0.02, 0.02, 0.02]);
    expect(rows.at(-1)![5]).toBe("above");
    const warnings = spreadWarnings(spreads);
    expect(warnings.map((line) => line.split(":")[0])).toEqual([
      "sag, station 01 and station 02",
      "time at heat, station 01 and station 02",
    ]);
  });

  it("is that of a representative part of very many shots, and the longest of all", () => {
    const brief = cellOf({}, 60);
    const answer = replicationRunner(brief)({ replication: 1, scale: null });
    const [record] = answer.parisons;
    const count = 200;
    // Evenly from 0 to 1 over all replications.
    const answers = Array.from({ length: count }, (_, i) => {
      const hangs = Float64Array.from({ length: 1024 }, (_value, shot) => (i + shot / 1024) / count);
      const sampled = { ...record!, hangs, drops: hangs, longestHang: i === 77 ? 99 : 1 };
      return { ...answer, parisons: [sampled] };
    });
    const hang = shotSpreads(brief, answers).find(({ quantity }) => quantity === "hang time")!;
    // A uniform distribution has mean 1/2 and standard deviation 1/√12; four standard deviations of the mean of 65,536.
    expect(Math.abs(hang.mean - 0.5)).toBeLessThan(0.0046);
    expect(Math.abs(hang.quantiles.p05 - 0.05)).toBeLessThan(0.004);
    expect(Math.abs(hang.quantiles.p95 - 0.95)).toBeLessThan(0.004);
    expect(hang.max).toBe(99);
  });

  it("is part of a study, over all its replications", () => {
    const short = cellOf(varying, 1800);
    const outcome = runStudy({ ...short, run: { ...short.run, replications: 3 } });
    if (outcome.kind !== "found") throw new Error("stuck");
    expect(outcome.study.spreads.map(({ station, quantity }) => `${station} ${quantity}`)).toEqual(
      ["station 01", "station 02"].flatMap((name) =>
        ["hang time", "sag", "time at heat"].map((each) => `${name} ${each}`),
      ),
    );
  });
});

describe("a parison of continuous extrusion", () => {
  it("has a drop time from the previous catch to its own, tail included, and a hang time until the mold has closed", () => {
    // Closed form: max{ P 4, 0.5 + 0.6 + 0.2 + 0.5, (1.8 + 9.4 + 1)/2 } = 6.1 s from catch to catch on average, so that the drops
    // of both stations together take 12.2 s, none less than P; the close takes 0.6 s.
    const station = { ...times, drop: 0, travel: [0.5, 0.2, 0.5] as const };
    const cell = fixedCell({
      stations: [station, station],
      shift: 0,
      delivery: { kind: "continuous", rate: "fixed", removal: "mold", dieZone: "exclusive" },
    });
    const watched = { ...cell, stations: cell.stations.map((each) => ({ ...each, process })) };
    const plan = planCell({ ...watched, run: { ...watched.run, warmup: 600 } });
    const { parisons } = runCell(plan, { replication: 1, watchesParisons: true });
    expect(parisons.length).toBe(2);
    for (const { drops, hangs, parisons: count } of parisons) {
      expect(count).toBeGreaterThan(200);
      for (const drop of drops) expect(drop).toBeCloseTo(drops[0]!, 9);
      for (const hang of hangs) expect(hang).toBeCloseTo(0.6, 9);
    }
    const [left, right] = parisons.map(({ drops }) => drops[0]!);
    expect(left! + right!).toBeCloseTo(12.2, 9);
    expect(Math.min(left!, right!)).toBeGreaterThan(4 - 1e-9);
    // Without a warm-up all parisons count but the first, whose growth began before the run.
    const { parisons: all, stations } = runCell(planCell(watched), { replication: 1, watchesParisons: true });
    const closed = allShotTicks({ stations }).length;
    expect(closed - all.reduce((sum, { parisons: each }) => sum + each, 0)).toBe(1);
    expect(Math.max(...all.flatMap(({ drops }) => [...drops]))).toBeLessThan(12.2);
  });
});

test("where some parisons break, the sag is without end in mean, upper quantile and maximum, and empty in tables", () => {
  // By hand: K L = 760 · 9.81 · 0.3 / (3 · 2e4) = 0.0373 1/s, so a parison breaks after 26.8 s at the latest, here more than half.
  const scenario = cellOf({ close: { kind: "uniform", min: 0.5, max: 60 } });
  const sags = spreadsOf(scenario).filter(({ quantity }) => quantity === "sag");
  expect(sags).toHaveLength(2);
  for (const sag of sags) {
    expect([sag.mean, sag.quantiles.p95, sag.max]).toEqual([Infinity, Infinity, Infinity]);
    expect(sag.quantiles.p05).toBeLessThan(0.2);
    expect(sag.beyond).toBeGreaterThan(0.5);
    const rows = spreadCells(sag);
    expect(rows.map(([, value]) => value === null)).toEqual([true, false, expect.any(Boolean), true, true]);
    expect(rows.map(([, , , , , verdict]) => verdict).filter((verdict) => verdict === "above").length).toBeGreaterThan(
      3,
    );
  }
  expect(spreadWarnings(sags).join(" ")).toContain("more than 5 % of the shots without end");
});

test("a shot is given as soon as nothing more can happen to it, so that few are held in a long run", () => {
  const scenario = cellOf(varying, 20_000);
  const begun = new Set<string>();
  function* counted() {
    for (const event of eventRecorder(scenario)(1)) {
      const { owner, kind, station, shot } = event;
      if (owner === "station" && kind === "working" && shot !== null) begun.add(`${shot} ${station}`);
      yield event;
    }
  }
  let given = 0;
  let mostHeld = 0;
  for (const _ of eachShot(counted(), scenario)) mostHeld = Math.max(mostHeld, begun.size - ++given);
  expect(given).toBe(begun.size);
  expect(given).toBeGreaterThan(2000);
  // Four of each station, and one more while it is given.
  expect(mostHeld).toBeLessThanOrEqual(2 * 4 + 1);
});

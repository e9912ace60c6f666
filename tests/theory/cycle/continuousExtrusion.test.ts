// Holds continuous extrusion to closed forms, to the conservation of mass, and to the definition of a matched screw.
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { boundCircuits } from "#analysis/ideal/boundCircuits.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { matchScrew } from "#analysis/ideal/matchScrew.ts";
import { massBalance } from "#analysis/replication/massBalance.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { ContinuousSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { caseCount } from "../../support/caseCount.ts";
import { dieZones } from "../../support/equalStations.ts";
import { allShotTicks, fixedCell } from "../../support/fixedCell.ts";
import { randomScenario } from "../../support/randomScenario.ts";
import { massMilligrams, simulatedSteps, until } from "../../support/recursionComparison.ts";

const fixedRate: ContinuousSpec = { kind: "continuous", rate: "fixed", removal: "mold", dieZone: "exclusive" };
const matched: ContinuousSpec = { ...fixedRate, rate: "matched" };

/** Ticks: parison P, travel in i, close k, cut u, travel out o, cooling b, removal e. */
interface Times {
  readonly P: number;
  readonly i: number;
  readonly k: number;
  readonly u: number;
  readonly o: number;
  readonly b: number;
  readonly e: number;
}

const upTo = (max: number): fc.Arbitrary<number> => fc.integer({ min: 0, max });
const times: fc.Arbitrary<Times> = fc.record({
  P: fc.integer({ min: 500_000, max: 12_000_000 }),
  i: upTo(1_500_000),
  k: upTo(1_500_000),
  u: upTo(500_000),
  o: upTo(1_500_000),
  b: fc.integer({ min: 1_000_000, max: 25_000_000 }),
  e: fc.oneof(upTo(2_000_000), upTo(20_000_000)),
});
const sizes = fc.integer({ min: 1, max: 3 });
const zoneOf = ({ i, k, u, o }: Times): number => i + k + u + o;

type DieZone = ContinuousSpec["dieZone"];

/** The die's time for a mold: in a shared die zone the next one travels in while it travels out. */
const dieOf = (dieZone: DieZone, { i, k, u, o }: Times, next = i): number =>
  dieZone === "shared" ? k + u + Math.max(o, next) : k + u + o + next;

interface Layout {
  readonly delivery: ContinuousSpec;
  readonly dispatch?: "first-ready" | "alternate";
  readonly operators?: number;
  /** Ticks. */
  readonly warmup?: number;
  readonly length?: number;
}

function cellOf(stations: readonly Times[], layout: Layout): Scenario {
  const { delivery, dispatch = "first-ready", operators = 0, warmup = 0, length = 3600e6 } = layout;
  const by = operators > 0 ? "operator" : "machine";
  const cell = fixedCell({
    stations: stations.map(({ P, i, k, u, o, b, e }) => ({
      recharge: P / 1e6,
      drop: 0,
      close: k / 1e6,
      cool: b / 1e6,
      remove: e / 1e6,
      by,
      travel: [i / 1e6, u / 1e6, o / 1e6],
    })),
    shift: 0,
    dispatch,
    operators,
    length: length / 1e6,
    delivery,
  });
  return { ...cell, run: { ...cell.run, warmup: warmup / 1e6 } };
}

const alike = (drawn: Times, M: number): readonly Times[] => Array.from({ length: M }, () => drawn);

function tailTicks(record: CellRecord): number {
  return record.stateTimes.find(({ state }) => state === "extruding to regrind")!.ticks;
}

/** Ticks of the last `turns` turns of `M` shots. */
function turnTicks(record: CellRecord, M: number, turns: number): number {
  const shots = allShotTicks(record);
  return shots.at(-1)! - shots.at(-1 - turns * M)!;
}

describe("equal molds, in ticks", () => {
  // Period max{ P, Z, (i+k+u+o+b+e)/M }, with the die zone Z = i+k+u+o where it is exclusive and k+u+max{ i, o } where it is shared:
  // circuits of the timed event graph [C]. The exclusive one was verified against 20,000 runs of an independent event-queue program.
  test("graph and run have the closed form's period, and the tail is period − P", () => {
    fc.assert(
      fc.property(times, sizes, dieZones, (drawn, M, dieZone) => {
        const delivery = { ...fixedRate, dieZone };
        const turn = Math.max(M * drawn.P, M * dieOf(dieZone, drawn), zoneOf(drawn) + drawn.b + drawn.e);
        const ideal = idealCycle(cellOf(alike(drawn, M), { delivery }));
        expect(ideal.periodTicks * M).toBe(turn * ideal.shotsPerPeriod);
        const [settled, turns] = [30 * turn, 10];
        const span = { delivery, warmup: settled, length: settled + turns * turn };
        const record = runCell(planCell(cellOf(alike(drawn, M), span)), { replication: 1 });
        expect(turnTicks(record, M, turns - 1)).toBe((turns - 1) * turn);
        const tail = turns * (turn - M * drawn.P);
        expect(tailTicks(record)).toBe(tail);
        expect(record.excessMilligrams).toBe(Math.round((tail * 108_000) / drawn.P));
      }),
      { seed: 20261201 },
    );
  });

  // A crew of O operators adds the circuit removal/min(O, M); derived with the others [C].
  it("have the crew's period when that is the longest", () => {
    fc.assert(
      fc.property(times, sizes, fc.integer({ min: 1, max: 2 }), dieZones, (drawn, M, operators, dieZone) => {
        const crew = (drawn.e * M) / Math.min(operators, M);
        const turn = Math.max(M * drawn.P, M * dieOf(dieZone, drawn), zoneOf(drawn) + drawn.b + drawn.e, crew);
        const delivery = { ...fixedRate, dieZone };
        const { secondsPerShot } = idealCycle(cellOf(alike(drawn, M), { delivery, operators }));
        expect(secondsPerShot * M).toBeCloseTo(turn / 1e6, 9);
      }),
      { seed: 20261202 },
    );
  });

  it("have no removal in the mold's circuit when a pin carries the parts to a mask", () => {
    fc.assert(
      fc.property(times, sizes, upTo(9_000_000), dieZones, (drawn, M, strip, dieZone) => {
        const others = Math.max(M * drawn.P, M * dieOf(dieZone, drawn), zoneOf(drawn) + drawn.b);
        const mask = drawn.e + strip;
        const turn = Math.max(others, mask);
        // A mask only slightly slower than the rest uses up the slack of the molds over more turns than are run.
        fc.pre(mask <= others || mask - others > turn / 45);
        const cell = cellOf(alike(drawn, M), {
          delivery: { ...fixedRate, dieZone, removal: "pin" },
          length: 60 * turn,
        });
        const time: Distribution = { kind: "fixed", value: strip / 1e6 };
        const extra = [{ name: "tail strip", after: "remove", time }];
        const masked = { ...cell, stations: cell.stations.map((station) => ({ ...station, extra })) };
        const ideal = idealCycle(masked);
        expect(ideal.periodTicks * M).toBe(turn * ideal.shotsPerPeriod);
        const record = runCell(planCell(masked), { replication: 1 });
        expect(turnTicks(record, M, 10)).toBe(10 * turn);
        const states = record.stateTimes
          .filter(({ ticks }) => ticks > 0)
          .map(({ resource, state }) => `${resource}: ${state}`);
        if (strip > 0) expect(states).toContain("mask of station 01: tail strip");
        expect(states).not.toContain("station 01: removal");
      }),
      { seed: 20261203 },
    );
  });
});

// Below every period: P, the die's least time for a mold, and all molds without waits. With equal molds it is the closed form [C].
test("equal molds reach their bound, and no run of different molds goes below it", () => {
  fc.assert(
    fc.property(fc.array(times, { minLength: 2, maxLength: 3 }), dieZones, (drawn, dieZone) => {
      const delivery = { ...fixedRate, dieZone };
      const [first] = drawn;
      const bounds = boundCircuits(cellOf(alike(first!, 2), { delivery }));
      const [bound] = bounds;
      const die = bounds.find(({ name }) => name === "die zone")!.secondsPerShot * 1e6;
      expect(die).toBeCloseTo(dieOf(dieZone, first!), 3);
      const zone = zoneOf(first!);
      const period = Math.max(first!.P, dieOf(dieZone, first!), (zone + first!.b + first!.e) / 2);
      expect(bound!.secondsPerShot * 1e6).toBeCloseTo(period, 3);
      const length = 60 * drawn.reduce((sum, each) => sum + each.P + zoneOf(each) + each.b + each.e, 0);
      const shots = allShotTicks(runCell(planCell(cellOf(drawn, { delivery, length })), { replication: 1 }));
      const [least] = boundCircuits(cellOf(drawn, { delivery }));
      // Over a whole run the first and last turn may be out of step with the bound.
      const turns = shots.length - 1 - 2 * drawn.length;
      expect(shots.at(-1)! - shots[0]!).toBeGreaterThanOrEqual(turns * least!.secondsPerShot * 1e6 - 1);
    }),
    { seed: 20261208 },
  );
});

/**
 * Derived by hand [C]. In a rotation mold n + 1 begins to close when two conditions hold. Its parison has grown to full length
 * since mold n began to close. Mold n has closed, cut and traveled out, and mold n + 1 has traveled in, after the travel out or
 * beside it.
 */
test("different molds in rotation, each with its own parison, have the closed form's period", () => {
  fc.assert(
    fc.property(fc.array(times, { minLength: 1, maxLength: 4 }), dieZones, (drawn, dieZone) => {
      const after = (n: number): Times => drawn[(n + 1) % drawn.length]!;
      const die = drawn.reduce((sum, each, n) => sum + Math.max(after(n).P, dieOf(dieZone, each, after(n).i)), 0);
      const molds = drawn.map((each) => zoneOf(each) + each.b + each.e);
      const [slowest = 0, next = 0] = molds.toSorted((one, other) => other - one);
      const turn = Math.max(die, slowest);
      // A mold only slightly slower than the next uses up the slack of that one over more turns than are run.
      fc.pre(turn - die <= 60 * (turn - next));
      const cell = cellOf(drawn, { delivery: { ...fixedRate, dieZone }, dispatch: "alternate", length: 80 * turn });
      const ideal = idealCycle(cell);
      expect(ideal.periodTicks * drawn.length).toBe(turn * ideal.shotsPerPeriod);
      expect(turnTicks(runCell(planCell(cell), { replication: 1 }), drawn.length, 10)).toBe(10 * turn);
    }),
    { seed: 20261204 },
  );
});

describe("a matched screw", () => {
  it("keeps the period of the cell at full rate, and sends at most two ticks a shot to regrind", () => {
    fc.assert(
      fc.property(
        times,
        sizes,
        fc.constantFrom("mold" as const, "pin" as const),
        upTo(2),
        dieZones,
        (drawn, M, removal, crewSize, dieZone) => {
          const operators = removal === "pin" ? 0 : crewSize;
          const layout = { delivery: { ...matched, removal, dieZone }, operators };
          const full = idealCycle(cellOf(alike(drawn, M), layout));
          const [warmup, shots] = [60 * full.secondsPerShot * 1e6, 24];
          const length = Math.ceil(warmup + shots * full.secondsPerShot * 1e6);
          const cell = matchScrew(cellOf(alike(drawn, M), { ...layout, warmup: Math.floor(warmup), length }));
          const ideal = idealCycle(cell);
          expect(ideal.periodTicks * full.shotsPerPeriod).toBe(full.periodTicks * ideal.shotsPerPeriod);
          expect(tailTicks(runCell(planCell(cell), { replication: 1 }))).toBeLessThanOrEqual(2 * shots);
        },
      ),
      { seed: 20261205 },
    );
  });

  it("stays between its slowest rate and its full rate", () => {
    fc.assert(
      fc.property(times, sizes, fc.double({ min: 0.1, max: 1, noNaN: true }), dieZones, (drawn, M, share, dieZone) => {
        const slowestRate = (share * 0.108) / (drawn.P / 1e6);
        const cell = matchScrew(cellOf(alike(drawn, M), { delivery: { ...matched, slowestRate, dieZone } }));
        const pace = Math.max(drawn.P, dieOf(dieZone, drawn), (zoneOf(drawn) + drawn.b + drawn.e) / M);
        const parison = Math.min(Math.max(drawn.P, Math.ceil(pace) - 1), drawn.P / share);
        const { program } = planCell(cell);
        const row = program.rows.find(({ name }) => name === "parison")!;
        expect(row.draw!.samplers[0]!.meanTicks).toBeCloseTo(parison, 3);
      }),
      { seed: 20261206 },
    );
  });
});

// Conservation of mass: the die delivers rate × time, whatever the draws of the molds.
test("loses no melt with drawn times: parts, flash, excess and melt under way add up to rate × time, to the milligram", () => {
  const cells = fc
    .tuple(
      randomScenario({
        mostStations: 4,
        length: until / 1e6,
        extraAfter: ["travel in", "close", "cut", "travel out", "cool", "remove"],
      }),
      fc.integer({ min: 400_000, max: 9_000_000 }),
      fc.constantFrom("mold" as const, "pin" as const),
    )
    .map(([drawn, P, removal]) => variedCell(drawn, P, removal));
  let tails = 0;
  fc.assert(
    fc.property(cells, ({ scenario, P }) => {
      const record = runCell(planCell(scenario), { replication: 3 });
      const shot = massMilligrams(scenario.stations[0]!);
      const rate = shot / P;
      // The starts of the parisons, read from the steps of the same run.
      const begun = simulatedSteps(planCell(scenario))
        .filter(({ step }) => step === "parison")
        .map(({ start }) => start);
      const caught = begun.length - (scenario.run.start === "cold" ? 1 : 0);
      const tail = begun.reduce(
        (sum, start, n) => sum + Math.max(0, (begun[n + 1] ?? until) - start - P),
        begun[0] ?? until,
      );
      expect(Math.abs(record.excessMilligrams! - rate * tail)).toBeLessThanOrEqual(0.5);
      const growing = begun.length === 0 ? 0 : rate * Math.min(P, until - begun.at(-1)!);
      const { parts, flash, excess, inMolds } = massBalance(record)!;
      const cut = record.stations.reduce((sum, { shots }) => sum + shots, 0);
      const notYetCut = (caught - cut) * shot;
      // A running start has a full parison at the die; a cold start has none.
      const before = scenario.run.start === "running" ? shot : 0;
      const hanging = scenario.run.start === "running" && begun.length === 0 ? shot : growing;
      expect(
        Math.abs(parts + flash + inMolds + notYetCut + hanging + excess - before - rate * until),
      ).toBeLessThanOrEqual(1);
      tails += tail > 0 ? 1 : 0;
    }),
    { seed: 20261207 },
  );
  expect(tails).toBeGreaterThan(caseCount / 4);
});

function variedCell(
  drawn: Scenario,
  P: number,
  removal: "mold" | "pin",
): { readonly scenario: Scenario; readonly P: number } {
  const [first] = drawn.stations;
  const { cavities, partMass, flashMass } = first!;
  const stations = drawn.stations.map((station): StationSpec => ({
    ...station,
    cavities,
    partMass: partMass!,
    flashMass: flashMass!,
    recharge: { by: "time", time: { kind: "fixed", value: P / 1e6 } },
    drop: { by: "time", time: { kind: "fixed", value: 0 } },
    remove: removal === "pin" ? { ...station.remove, by: "machine" } : station.remove,
    travel: { in: station.close, cut: { kind: "fixed", value: 0.2 }, out: station.open },
  }));
  return { scenario: { ...drawn, stations, delivery: { ...fixedRate, removal } }, P };
}

// Holds the recursions of accumulator and continuous extrusion to the closed forms of the ideal cycle, in ticks.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { accumulatorRecursion } from "../../support/accumulatorRecursion.ts";
import { caseCount } from "../../support/caseCount.ts";
import { continuousRecursion } from "../../support/continuousRecursion.ts";
import {
  accumulatorOf,
  continuousOf,
  dieZones,
  fixedTimes,
  letters,
  starts,
  sum,
  type Ticks,
} from "../../support/equalStations.ts";
import type { Durations, StepInterval } from "../../support/shotRecursion.ts";

/** Equal stations, fixed times. */
interface EqualCell {
  readonly stations: number;
  readonly ticks: Ticks;
}

/** Circuits are often tied on the coarse grids, and never on the fine one. */
function equalCell(working: readonly string[], others: readonly string[]): fc.Arbitrary<EqualCell> {
  const grid = fc.oneof(
    fc.constantFrom(1, 7, 250_000).map((unit) => [unit, 12]),
    fc.constant([1, 9_000_000]),
  );
  return grid.chain(([unit, most]) => {
    const times = (least: number) => fc.integer({ min: least, max: most }).map((each) => each * unit);
    const named = (steps: readonly string[], least: number) =>
      Object.fromEntries(steps.map((step) => [step, times(least)]));
    const ticks: fc.Arbitrary<Ticks> = fc.record({ ...named(working, 1), ...named(others, 0) });
    return fc.record({ stations: fc.integer({ min: 1, max: letters.length }), ticks });
  });
}

const whole = 6;
const mostShots = 6000;

/**
 * Turns after which the transient is over: the slowest circuit has used up the lead of the others. `perTurn` are the ticks of
 * the circuits for one shot of every station. `lead` is an upper bound of any circuit's lead at the start.
 */
function settledAfter(perTurn: readonly number[], lead: number): number {
  const gaps = perTurn.map((each) => Math.max(...perTurn) - each).filter((gap) => gap > 0);
  return 10 + 4 * Math.ceil(lead / Math.min(Infinity, ...gaps));
}

interface Comparison {
  readonly stations: number;
  readonly perTurn: readonly number[];
  readonly lead: number;
  /** The step that occurs once in every shot. */
  readonly shot: string;
  readonly run: (until: number) => readonly StepInterval[];
}

/** T(n + K·M) − T(n) after the transient, and K times the period of a turn; undefined when the transient is too long to run. */
function wholePeriods({ stations, perTurn, lead, shot, run }: Comparison): { run: number; closed: number } | undefined {
  const settled = settledAfter(perTurn, lead) * stations;
  const last = settled + whole * stations;
  if (last > mostShots) return undefined;
  const turn = Math.max(...perTurn);
  const steps = run(lead * 2 + Math.ceil((last * turn) / stations) + turn * 3);
  const shots = steps.filter(({ step }) => step === shot).map(({ start }) => start);
  expect(shots.length).toBeGreaterThan(last);
  return { run: shots[last]! - shots[settled]!, closed: whole * turn };
}

/** Compares random cells; cells with a long transient are skipped and replaced. */
function expectEqual<Cell>(cells: fc.Arbitrary<Cell>, comparison: (cell: Cell) => Comparison): void {
  let compared = 0;
  fc.assert(
    fc.property(cells, (cell) => {
      const ticks = wholePeriods(comparison(cell));
      fc.pre(ticks !== undefined);
      expect(ticks.run).toBe(ticks.closed);
      compared += 1;
    }),
    { seed: 20261104 },
  );
  expect(compared).toBe(caseCount);
}

const times = (ticks: Ticks, ...steps: readonly string[]) => sum(steps.map((step) => ticks[step]!));

const accumulatorCells = equalCell(["recharge"], ["drop", "shift", "close", "cool", "remove"]);

const withShift = (ticks: Ticks): Durations =>
  fixedTimes({ ...ticks, "shift to port": ticks["shift"]!, "shift to neutral": ticks["shift"]! });

/** Circuits of the timed event graph, verified against 20,000 runs of an independent event-queue program [C]. */
describe("the recursion takes the closed form's ticks over whole periods", () => {
  test("chamber per station: max{ r + v, (d + m)/M, (r + d)/M }", () => {
    expectEqual(fc.tuple(accumulatorCells, starts), ([{ stations, ticks }, start]) => ({
      stations,
      perTurn: [
        stations * times(ticks, "recharge", "shift"),
        times(ticks, "drop", "close", "cool", "remove"),
        times(ticks, "recharge", "drop"),
      ],
      lead: stations * sum(Object.values(ticks)),
      shot: "drop",
      run: (until) => accumulatorRecursion(accumulatorOf(stations, start), withShift(ticks), until),
    }));
  });

  /** `reserve` is the time in which the screw fills what the chamber holds beyond one shot. */
  function commonComparison(
    { stations, ticks }: EqualCell,
    start: "running" | "cold",
    chamber: { shot: number; capacity: number },
    reserve: number,
  ): Comparison {
    const [r, v, d] = [times(ticks, "recharge"), times(ticks, "shift"), times(ticks, "drop")];
    return {
      stations,
      perTurn: [
        stations * (r + Math.max(0, v - reserve)),
        stations * r,
        stations * (d + 2 * v),
        v + d + times(ticks, "close", "cool", "remove"),
      ],
      lead: stations * sum(Object.values(ticks)) + reserve,
      shot: "drop",
      run: (until) => accumulatorRecursion(accumulatorOf(stations, start, chamber), withShift(ticks), until),
    };
  }

  test("one common chamber: max{ r + max(0, v − (A − S)/Q), d + 2v, (v + d + m)/M }", () => {
    const share = fc.double({ min: 0, max: 2, noNaN: true });
    expectEqual(
      fc.tuple(accumulatorCells, starts, share, fc.integer({ min: 1, max: 2 })),
      ([cell, start, part, rate]) => {
        // At a rate of whole milligrams per tick the reserve also takes whole ticks.
        const r = times(cell.ticks, "recharge");
        const reserve = Math.round(part * r);
        return commonComparison(cell, start, { shot: rate * r, capacity: rate * (r + reserve) }, reserve);
      },
    );
  });

  test("one common chamber of any mass: a shift waits for the first whole tick with a full shot", () => {
    const mass = fc.integer({ min: 1, max: 90_000 });
    expectEqual(fc.tuple(accumulatorCells, starts, mass, mass), ([cell, start, shot, beyond]) => {
      const reserve = Math.floor((beyond * times(cell.ticks, "recharge")) / shot);
      return commonComparison(cell, start, { shot, capacity: shot + beyond }, reserve);
    });
  });

  // The die zone Z is i + k + u + o where it is exclusive, and k + u + max{ i, o } where it is shared.
  test("continuous: max{ P, Z, (i + k + u + o + b)/M }, excess = period − P", () => {
    const cells = equalCell(["parison"], ["travel in", "close", "cut", "travel out", "cool", "remove"]);
    const fullAt = fc.constantFrom("start of close" as const, "start of cut" as const, "end of cut" as const);
    expectEqual(fc.tuple(cells, starts, fullAt, dieZones), ([{ stations, ticks }, start, at, dieZone]) => {
      const zone = times(ticks, "travel in", "close", "cut", "travel out");
      const shorterTravel = Math.min(times(ticks, "travel in"), times(ticks, "travel out"));
      const die = dieZone === "shared" ? zone - shorterTravel : zone;
      const perTurn = [stations * times(ticks, "parison"), stations * die, zone + times(ticks, "cool", "remove")];
      const cell = continuousOf(stations, start, at, dieZone);
      const run = (until: number) => continuousRecursion(cell, fixedTimes(ticks), until);
      const lead = stations * sum(Object.values(ticks));
      const comparison = { stations, perTurn, lead, shot: "cut", run };
      expectExcess(comparison, times(ticks, "parison"));
      return comparison;
    });
  });

  /** Over whole turns the excess is the time of the parisons beyond P. */
  function expectExcess({ stations, perTurn, lead, run }: Comparison, parison: number): void {
    const settled = settledAfter(perTurn, lead) * stations;
    if (settled > mostShots / 2) return;
    const turn = Math.max(...perTurn);
    const steps = run(lead * 2 + Math.ceil((settled * turn) / stations) + turn * 4);
    const grown = steps.filter(({ step }) => step === "parison").slice(settled, settled + stations);
    const excess = steps.filter(({ step, start }) => step === "excess" && grown.some(({ end }) => end === start));
    expect(sum(excess.map(({ start, end }) => end - start))).toBe(turn - stations * parison);
  }
});

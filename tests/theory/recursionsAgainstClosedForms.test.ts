// The second accounts of accumulator and continuous extruder against the closed forms of the ideal cycle, in ticks.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { accumulatorRecursion, type AccumulatorCell } from "../support/accumulatorRecursion.ts";
import { continuousRecursion, type ContinuousCell } from "../support/continuousRecursion.ts";
import type { Durations, StepInterval } from "../support/shotRecursion.ts";

type Ticks = Readonly<Record<string, number>>;

/** Equal stations, fixed times. */
interface EqualCell {
  readonly stations: number;
  readonly ticks: Ticks;
}

const letters = ["a", "b", "c", "d"];
const starts = fc.constantFrom("running" as const, "cold" as const);

const fixedTimes =
  (ticks: Ticks): Durations =>
  (_resource, step) =>
    ticks[step]!;

/** On a coarse grid circuits tie, on the fine one nothing does. */
function equalCell(working: readonly string[], others: readonly string[]): fc.Arbitrary<EqualCell> {
  const grid = fc.oneof(
    fc.constantFrom(1, 7, 250_000).map((unit) => [unit, 12]),
    fc.constant([1, 9_000_000]),
  );
  return grid.chain(([unit, most]) => {
    const times = (least: number) => fc.integer({ min: least, max: most! }).map((each) => each * unit!);
    const named = (steps: readonly string[], least: number) =>
      Object.fromEntries(steps.map((step) => [step, times(least)]));
    const ticks: fc.Arbitrary<Ticks> = fc.record({ ...named(working, 1), ...named(others, 0) });
    return fc.record({ stations: fc.integer({ min: 1, max: letters.length }), ticks });
  });
}

const whole = 6;
const mostShots = 6000;

/**
 * The transient lasts until the slowest circuit has used up what the others had in hand at the start. `perTurn` are the
 * circuits' ticks for a shot of every station, `inHand` is more than any circuit can have in hand.
 */
function settledAfter(perTurn: readonly number[], inHand: number): number {
  const gaps = perTurn.map((each) => Math.max(...perTurn) - each).filter((gap) => gap > 0);
  return 10 + 4 * Math.ceil(inHand / Math.min(Infinity, ...gaps));
}

interface Comparison {
  readonly stations: number;
  readonly perTurn: readonly number[];
  readonly inHand: number;
  /** The cell's step of which every shot has exactly one. */
  readonly shot: string;
  readonly run: (until: number) => readonly StepInterval[];
}

/** T(n + K·M) − T(n) after the transient, and K times the period of a turn; undefined where the transient is too long to run. */
function wholePeriods({
  stations,
  perTurn,
  inHand,
  shot,
  run,
}: Comparison): { run: number; closed: number } | undefined {
  const settled = settledAfter(perTurn, inHand) * stations;
  const last = settled + whole * stations;
  if (last > mostShots) return undefined;
  const turn = Math.max(...perTurn);
  const steps = run(inHand * 2 + Math.ceil((last * turn) / stations) + turn * 3);
  const shots = steps.filter(({ step }) => step === shot).map(({ start }) => start);
  expect(shots.length).toBeGreaterThan(last);
  return { run: shots[last]! - shots[settled]!, closed: whole * turn };
}

/** Runs the property on random cells until 1,200 have been compared, no matter how many were left out for their transient. */
function expectEqual<Cell>(cells: fc.Arbitrary<Cell>, comparison: (cell: Cell) => Comparison): void {
  let compared = 0;
  fc.assert(
    fc.property(cells, (cell) => {
      const ticks = wholePeriods(comparison(cell));
      fc.pre(ticks !== undefined);
      expect(ticks!.run).toBe(ticks!.closed);
      compared += 1;
    }),
    { seed: 20261104, numRuns: 1200 },
  );
  expect(compared).toBeGreaterThanOrEqual(1000);
}

const sum = (times: readonly number[]) => times.reduce((total, each) => total + each, 0);
const times = (ticks: Ticks, ...steps: readonly string[]) => sum(steps.map((step) => ticks[step]!));

function accumulatorOf(stations: number, start: "running" | "cold", common?: { shot: number; capacity: number }) {
  const moldSteps = ["close", "cool", "remove"];
  const each = letters.slice(0, stations).map((name) => ({ name, shot: common?.shot ?? 1, moldSteps }));
  const cell: AccumulatorCell =
    common === undefined
      ? { stations: each, start, accumulator: "per-station" }
      : { stations: each, start, accumulator: "common", capacity: common.capacity };
  return cell;
}

function continuousOf(stations: number, start: "running" | "cold", fullAt: ContinuousCell["fullAt"]): ContinuousCell {
  const steps = ["travel in", "close", "cut", "travel out", "cool", "remove"];
  return { stations: letters.slice(0, stations).map((name) => ({ name, steps })), start, fullAt };
}

const accumulatorCells = equalCell(["recharge"], ["drop", "shift", "close", "cool", "remove"]);

const withShift = (ticks: Ticks): Durations =>
  fixedTimes({ ...ticks, "shift to port": ticks["shift"]!, "shift to neutral": ticks["shift"]! });

/** Closed forms: the contract's, worked out from the event graph and checked there against runs of an event queue [C]. */
describe("over whole periods the recursion takes the closed form's ticks", { timeout: 120_000 }, () => {
  test("chamber per station: max{ r + v, (d + m)/M, (r + d)/M }", () => {
    expectEqual(fc.tuple(accumulatorCells, starts), ([{ stations, ticks }, start]) => ({
      stations,
      perTurn: [
        stations * times(ticks, "recharge", "shift"),
        times(ticks, "drop", "close", "cool", "remove"),
        times(ticks, "recharge", "drop"),
      ],
      inHand: stations * sum(Object.values(ticks)),
      shot: "drop",
      run: (until) => accumulatorRecursion(accumulatorOf(stations, start), withShift(ticks), until),
    }));
  });

  /** `spare` is the time in which the screw fills what the chamber holds beyond one shot. */
  function commonComparison(
    { stations, ticks }: EqualCell,
    start: "running" | "cold",
    chamber: { shot: number; capacity: number },
    spare: number,
  ): Comparison {
    const [r, v, d] = [times(ticks, "recharge"), times(ticks, "shift"), times(ticks, "drop")];
    return {
      stations,
      perTurn: [
        stations * (r + Math.max(0, v - spare)),
        stations * r,
        stations * (d + 2 * v),
        v + d + times(ticks, "close", "cool", "remove"),
      ],
      inHand: stations * sum(Object.values(ticks)) + spare,
      shot: "drop",
      run: (until) => accumulatorRecursion(accumulatorOf(stations, start, chamber), withShift(ticks), until),
    };
  }

  test("one common chamber: max{ r + max(0, v − (A − S)/Q), d + 2v, (v + d + m)/M }", () => {
    const share = fc.double({ min: 0, max: 2, noNaN: true });
    expectEqual(
      fc.tuple(accumulatorCells, starts, share, fc.integer({ min: 1, max: 2 })),
      ([cell, start, part, rate]) => {
        // A rate of whole milligrams per tick, so that the spare melt too takes whole ticks.
        const r = times(cell.ticks, "recharge");
        const spare = Math.round(part * r);
        return commonComparison(cell, start, { shot: rate * r, capacity: rate * (r + spare) }, spare);
      },
    );
  });

  test("one common chamber of any mass: a shift waits for the first whole tick with a full shot", () => {
    const mass = fc.integer({ min: 1, max: 90_000 });
    expectEqual(fc.tuple(accumulatorCells, starts, mass, mass), ([cell, start, shot, beyond]) => {
      const spare = Math.floor((beyond * times(cell.ticks, "recharge")) / shot);
      return commonComparison(cell, start, { shot, capacity: shot + beyond }, spare);
    });
  });

  test("continuous: max{ P, i + k + u + o, (i + k + u + o + b)/M }, excess = period − P", () => {
    const cells = equalCell(["parison"], ["travel in", "close", "cut", "travel out", "cool", "remove"]);
    const fullAt = fc.constantFrom("start of close" as const, "start of cut" as const, "end of cut" as const);
    expectEqual(fc.tuple(cells, starts, fullAt), ([{ stations, ticks }, start, at]) => {
      const die = times(ticks, "travel in", "close", "cut", "travel out");
      const perTurn = [stations * times(ticks, "parison"), stations * die, die + times(ticks, "cool", "remove")];
      const run = (until: number) => continuousRecursion(continuousOf(stations, start, at), fixedTimes(ticks), until);
      const inHand = stations * sum(Object.values(ticks));
      const comparison = { stations, perTurn, inHand, shot: "cut", run };
      expectExcess(comparison, times(ticks, "parison"));
      return comparison;
    });
  });

  /** Over whole turns the excess is what the parisons took beyond P. */
  function expectExcess({ stations, perTurn, inHand, run }: Comparison, parison: number): void {
    const settled = settledAfter(perTurn, inHand) * stations;
    if (settled > mostShots / 2) return;
    const turn = Math.max(...perTurn);
    const steps = run(inHand * 2 + Math.ceil((settled * turn) / stations) + turn * 4);
    const grown = steps.filter(({ step }) => step === "parison").slice(settled, settled + stations);
    const excess = steps.filter(({ step, start }) => step === "excess" && grown.some(({ end }) => end === start));
    expect(sum(excess.map(({ start, end }) => end - start))).toBe(turn - stations * parison);
  }
});

const written = (steps: readonly StepInterval[], resource: string): string =>
  steps
    .filter((each) => each.resource === resource)
    .map(({ step, station, start, end }) => `${step}${station === resource ? "" : ` ${station}`} ${start}-${end}`)
    .join(", ");

/** Arithmetic by hand from the contract [C]. */
describe("timelines worked out by hand", () => {
  test("a head with a chamber per station fills one while the other molds", () => {
    const ticks = { recharge: 4, "shift to port": 1, drop: 2, close: 1, cool: 3, remove: 1 };
    const steps = accumulatorRecursion(accumulatorOf(2, "running"), fixedTimes(ticks), 16);
    // Both full chambers drop at 0. The valve is at a before its drop has ended; a's mold is late for its next shot, b's is not.
    expect(written(steps, "valve")).toBe("shift to port a 0-1, shift to port b 6-7, shift to port a 11-12");
    expect(written(steps, "plasticator")).toBe("recharge a 2-6, recharge b 7-11, recharge a 12-16");
    expect(written(steps, "a")).toBe(
      "drop 0-2, close 2-3, cool 3-6, remove 6-7, drop 7-9, close 9-10, cool 10-13, remove 13-14",
    );
    expect(written(steps, "b")).toBe("drop 0-2, close 2-3, cool 3-6, remove 6-7, drop 11-13, close 13-14, cool 14-17");
  });

  test("from cold every head waits for its fill, in the order of stations", () => {
    const ticks = { recharge: 4, "shift to port": 1, drop: 2, close: 1, cool: 3, remove: 1 };
    const steps = accumulatorRecursion(accumulatorOf(2, "cold"), fixedTimes(ticks), 12);
    expect(written(steps, "plasticator")).toBe("recharge a 1-5, recharge b 6-10, recharge a 11-15");
    expect(written(steps, "a")).toBe("drop 5-7, close 7-8, cool 8-11, remove 11-12");
    expect(written(steps, "b")).toBe("drop 10-12");
  });

  const common = {
    recharge: 8,
    "shift to port": 3,
    "shift to neutral": 3,
    drop: 2,
    close: 2,
    cool: 6,
    remove: 2,
  };

  test("a common chamber fills during the drop and stands full for a tick while the valve shifts", () => {
    // 1 mg a tick into 10 mg: after a's drop 4 are left at 5, a shot of 8 is there at 9, all is full from 11 to the drop at 12.
    const cell = accumulatorOf(2, "running", { shot: 8, capacity: 10 });
    const steps = accumulatorRecursion(cell, fixedTimes(common), 21);
    expect(written(steps, "valve")).toBe(
      "shift to port a 0-3, shift to neutral a 5-8, shift to port b 9-12, shift to neutral b 14-17, shift to port a 18-21",
    );
    expect(written(steps, "plasticator")).toBe("recharge a 3-11, recharge b 12-20");
    expect(written(steps, "a")).toBe("drop 3-5, close 5-7, cool 7-13, remove 13-15");
    expect(written(steps, "b")).toBe("drop 12-14, close 14-16, cool 16-22");
  });

  test("from cold a common chamber gives its first shot before it is full", () => {
    const cell = accumulatorOf(1, "cold", { shot: 8, capacity: 10 });
    const steps = accumulatorRecursion(cell, fixedTimes(common), 24);
    expect(written(steps, "plasticator")).toBe("recharge  0-10, recharge a 11-19");
    expect(written(steps, "valve")).toBe("shift to port a 8-11, shift to neutral a 13-16, shift to port a 23-26");
  });

  test("a larger and a smaller shot: both wait for the larger, each takes its own", () => {
    const stations = ["a", "b"].map((name, k) => ({ name, shot: [8, 4][k]!, moldSteps: ["close"] }));
    const cell: AccumulatorCell = { stations, start: "running", accumulator: "common", capacity: 8 };
    const ticks: Ticks = { ...common, "shift to port": 1, "shift to neutral": 1 };
    const durations: Durations = (_resource, step, _n, station) =>
      step === "recharge" ? [8, 4][station]! : ticks[step]!;
    const steps = accumulatorRecursion(cell, durations, 16);
    expect(written(steps, "valve")).toBe(
      "shift to port a 0-1, shift to neutral a 3-4, shift to port b 9-10, shift to neutral b 12-13, shift to port a 14-15",
    );
    expect(written(steps, "plasticator")).toBe("recharge a 1-9, recharge b 10-14, recharge a 15-23");
  });

  const travel = { "travel in": 1, close: 1, cut: 1, "travel out": 1, cool: 5, remove: 1 };

  test("continuous: two molds wait in turn under the die", () => {
    const cell = continuousOf(2, "running", "end of cut");
    const steps = continuousRecursion(cell, fixedTimes({ ...travel, parison: 6 }), 16);
    expect(written(steps, "plasticator")).toBe("excess a 0-3, parison b 3-9, parison a 9-15, parison b 15-21");
    expect(written(steps, "a")).toBe(
      "travel in 0-1, close 1-2, cut 2-3, travel out 3-4, cool 4-9, remove 9-10, travel in 10-11, close 13-14, cut 14-15, travel out 15-16",
    );
    expect(written(steps, "b")).toBe("travel in 4-5, close 7-8, cut 8-9, travel out 9-10, cool 10-15, remove 15-16");
  });

  test("continuous: one mold is late and every tail is four ticks too long", () => {
    const cell = continuousOf(1, "cold", "end of cut");
    const steps = continuousRecursion(cell, fixedTimes({ ...travel, parison: 6 }), 27);
    expect(written(steps, "plasticator")).toBe(
      "parison a 0-6, parison a 6-12, excess a 12-16, parison a 16-22, excess a 22-26, parison a 26-32",
    );
  });
});

const ownLetters = fc.record({
  stations: fc.integer({ min: 1, max: letters.length }),
  start: starts,
  grid: fc.constantFrom(1, 1_000_000),
  luck: fc.infiniteStream(fc.integer({ min: 0, max: 12 })),
});

/** Other ticks for every occurrence, of one kind of unit. */
function drawn(luck: Iterator<number>, grid: number): Durations {
  const known = new Map<string, number>();
  return (resource, step, n, station) => {
    const key = `${resource}|${step}|${n}|${station}`;
    // A recharge of more ticks than any drop: the rate stays below the delivery rate.
    if (!known.has(key)) known.set(key, ((luck.next().value as number) + (step === "recharge" ? 13 : 1)) * grid);
    return known.get(key)!;
  };
}

function expectOneAfterAnother(steps: readonly StepInterval[]): void {
  const ends = new Map<string, number>();
  for (const { resource, start, end } of steps) {
    expect(start).toBeGreaterThanOrEqual(ends.get(resource) ?? 0);
    ends.set(resource, end);
  }
}

/** What stands in the common chamber at a tick, from the steps alone: what the screw put in less what drops took out. */
function levelAt(steps: readonly StepInterval[], cell: AccumulatorCell & { capacity: number }, tick: number): number {
  const shotOf = (station: string) => cell.stations.find(({ name }) => name === station)?.shot ?? cell.capacity;
  const done = ({ start, end }: StepInterval) => Math.min(1, Math.max(0, (tick - start) / (end - start)));
  const moved = steps.map((each) => {
    const sign = each.step === "recharge" ? 1 : each.step === "drop" ? -1 : 0;
    return sign === 0 ? 0 : sign * done(each) * shotOf(each.station);
  });
  return sum(moved) + (cell.start === "running" ? cell.capacity : 0);
}

describe("different stations with drawn times keep the contract's conditions", { timeout: 60_000 }, () => {
  test("a head is not filled while it delivers, and heads are filled in the order of their drops", () => {
    fc.assert(
      fc.property(ownLetters, ({ stations, start, grid, luck }) => {
        const steps = accumulatorRecursion(accumulatorOf(stations, start), drawn(luck, grid), 300 * grid);
        expectOneAfterAnother(steps);
        const atChamber = steps.filter(({ step }) => step === "drop" || step === "recharge");
        expectOneAfterAnother(atChamber.map((each) => ({ ...each, resource: each.station })));
        const served = (step: string) => steps.filter((each) => each.step === step).map(({ station }) => station);
        const fills = served("recharge").slice(start === "cold" ? stations : 0);
        const drops = served("drop");
        expect(fills).toEqual(drops.slice(0, fills.length));
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  test("a common chamber never runs over or dry, and a shift begins in the very tick in which its last need is met", () => {
    fc.assert(
      fc.property(
        ownLetters,
        fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 5, maxLength: 5 }),
        (own, masses) => {
          const shots = masses.slice(0, own.stations);
          const largest = Math.max(...shots);
          // The rest of a cold start's first charge is rounded to a tick, which `levelAt` cannot know, unless it is a shot.
          const spare = own.start === "cold" ? largest : masses[4]!;
          const base = accumulatorOf(own.stations, own.start, { shot: 1, capacity: largest + spare });
          const each = base.stations.map((station, k) => ({ ...station, shot: shots[k]! }));
          const cell = { ...base, stations: each } as AccumulatorCell & { capacity: number };
          const all = accumulatorRecursion(cell, drawn(own.luck, own.grid), 300 * own.grid);
          expectOneAfterAnother(all);
          for (const { step, start, end } of all) {
            if (start > 200 * own.grid) continue; // what the end of the run cut off must not be missed
            for (const level of [start, end].map((tick) => levelAt(all, cell, tick))) {
              expect(level).toBeGreaterThan(-1e-6);
              expect(level).toBeLessThan(cell.capacity + 1e-6);
            }
            if (step !== "shift to port") continue;
            expect(levelAt(all, cell, start)).toBeGreaterThan(largest - 1e-6);
            const otherNeedMetNow =
              start === 0 || all.some((other) => other.end === start && other.resource !== "plasticator");
            if (!otherNeedMetNow) expect(levelAt(all, cell, start - 1)).toBeLessThan(largest);
          }
        },
      ),
      { seed: 8, numRuns: 300 },
    );
  });

  test("continuous: a parison is never short, the die holds one mold, the screw never stands", () => {
    fc.assert(
      fc.property(ownLetters, ({ stations, start, grid, luck }) => {
        const cell = continuousOf(stations, start, "end of cut");
        const steps = continuousRecursion(cell, drawn(luck, grid), 300 * grid);
        expectOneAfterAnother(steps);
        const atDie = steps.filter(({ step }) => ["travel in", "close", "cut", "travel out"].includes(step));
        expectOneAfterAnother(atDie.map((each) => ({ ...each, resource: "die" })));
        const screw = steps.filter(({ resource }) => resource === "plasticator");
        expect(screw.slice(1).map((each) => each.start)).toEqual(screw.slice(0, -1).map((each) => each.end));
        const cuts = steps.filter(({ step }) => step === "cut").map(({ end }) => end);
        const full = screw.filter(({ step }) => step === "parison").map(({ end }) => end);
        if (start === "running") full.unshift(0);
        for (const [n, cut] of cuts.entries()) expect(cut).toBeGreaterThanOrEqual(full[n]!);
      }),
      { seed: 9, numRuns: 300 },
    );
  });
});

// Holds a cell of fixed times to the closed forms of its ideal cycle; whole periods are compared in ticks.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { Simulation } from "#engine/run/simulation.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { caseCount } from "../../support/caseCount.ts";
import { fixedCell } from "../../support/fixedCell.ts";

/** Ticks: recharge r, drop d, valve shift v, close c, blow to open b, removal e. */
interface Times {
  readonly r: number;
  readonly d: number;
  readonly v: number;
  readonly c: number;
  readonly b: number;
  readonly e: number;
}

interface Layout {
  readonly dispatch: "first-ready" | "alternate";
  readonly rechargeStarts: "valve-neutral" | "mold-closed";
  readonly operators: number;
}

const fixed = (ticks: number): Distribution => ({ kind: "fixed", value: ticks / 1e6 });

function stationOf(name: string, { r, d, c, b, e }: Times, operators: number): StationSpec {
  return {
    name,
    cavities: 2,
    product: "bottle",
    partMass: 0.03,
    flashMass: 0.01,
    drop: { by: "time", time: fixed(d) },
    recharge: { by: "time", time: fixed(r) },
    close: fixed(c),
    blow: fixed(0),
    cool: fixed(b),
    vent: fixed(0),
    open: fixed(0),
    remove: { time: fixed(e), by: operators > 0 ? "operator" : "machine" },
    extra: [],
    priority: 1,
  };
}

function cellOf(stations: readonly Times[], { dispatch, rechargeStarts, operators }: Layout): Scenario {
  return {
    name: "fixed",
    title: "",
    delivery: { kind: "reciprocating-screw", rechargeStarts, shotFor: "served" },
    valve: { shift: fixed(stations[0]!.v), dispatch },
    stations: stations.map((times, k) => stationOf(`station ${k + 1}`, times, operators)),
    operators,
    run: { length: 1, replications: 1, seed: "fixed", warmup: 0, start: "running" },
  };
}

/** Ticks at which the shots of the cell are delivered, at least `shots` of them. */
function shotTicks(scenario: Scenario, shots: number): number[] {
  const plan = planCell(scenario);
  const simulation = new Simulation(plan.program, { seed: "fixed", replication: 0 }, plan.marked);
  for (let until = 1e9; simulation.marks.ticks.length < shots; until += 1e9) {
    simulation.runUntil(until);
    expect(simulation.standstill).toBeUndefined();
  }
  return simulation.marks.ticks;
}

const turns = 12;

/** Ticks of `turns` turns of all stations after the transient; `turns` is a multiple of every crew's size. */
function turnTicks(scenario: Scenario): number {
  const stations = scenario.stations.length;
  const settled = 100 * stations;
  const ticks = shotTicks(scenario, settled + turns * stations + 1);
  return ticks[settled + turns * stations]! - ticks[settled]!;
}

/**
 * What one turn of M equal stations takes for the screw, for each mold and for the crew: circuits of the timed event graph,
 * verified against 20,000 runs of an independent event-queue program [C].
 */
function circuits({ r, d, v, c, b, e }: Times, M: number, { rechargeStarts, operators }: Layout) {
  const screw = rechargeStarts === "valve-neutral" ? r + d + 2 * v : v + d + Math.max(v, c) + r;
  const crew = operators === 0 ? 0 : e / Math.min(operators, M);
  return { screw: M * screw, mold: v + d + c + b + e, crew: M * crew };
}

const tick = fc.integer({ min: 1, max: 9_000_000 });
const times: fc.Arbitrary<Times> = fc.record({
  r: tick,
  d: fc.integer({ min: 1, max: 3_000_000 }),
  v: fc.integer({ min: 0, max: 500_000 }),
  c: fc.integer({ min: 0, max: 1_500_000 }),
  b: fc.integer({ min: 0, max: 30_000_000 }),
  e: tick,
});
const dispatches = ["first-ready", "alternate"] as const;
const recharges = ["valve-neutral", "mold-closed"] as const;
const layouts = dispatches.flatMap((dispatch) => recharges.map((rechargeStarts) => ({ dispatch, rechargeStarts })));

describe.each(layouts)("equal stations, $dispatch, $rechargeStarts", (layout) => {
  test("a turn of 1 to 8 stations takes the closed form's ticks", () => {
    fc.assert(
      fc.property(times, fc.integer({ min: 1, max: 8 }), fc.integer({ min: 0, max: 3 }), (drawn, M, operators) => {
        const stations = Array.from({ length: M }, () => drawn);
        const { screw, mold, crew } = circuits(drawn, M, { ...layout, operators });
        const turn = Math.max(screw, mold, crew);
        // A crew only slightly slower than the screw uses up the slack of the molds over more turns than are run.
        fc.pre(crew <= screw || crew - screw > turn / 90);
        // The period of a crew of two or three is a fraction of a tick a shot; 12 turns take whole ticks.
        expect(turnTicks(cellOf(stations, { ...layout, operators }))).toBe(Math.round(turns * turn));
      }),
      { seed: 20260731 },
    );
  });

  // The cell as a timed event graph: seconds per shot of 1 to 4 stations, computed independently of this project [C].
  const references = [
    { starts: "valve-neutral", v: 0.25e6, seconds: [13.05, 6.525, 6.3, 6.3] },
    { starts: "mold-closed", v: 0.25e6, seconds: [13.05, 6.65, 6.65, 6.65] },
    { starts: "valve-neutral", v: 0.5e6, seconds: [13.3, 6.8, 6.8, 6.8] },
  ].filter(({ starts }) => starts === layout.rechargeStarts);
  test.each(references)(
    "1 to 4 stations take the independently computed seconds per shot, valve shift $v ticks",
    ({ v, seconds }) => {
      seconds.forEach((each, k) => {
        const stations = Array.from({ length: k + 1 }, () => ({ r: 4e6, d: 1.8e6, v, c: 0.6e6, b: 9.6e6, e: 0.8e6 }));
        const expected = Math.round(each * 1e6 * (k + 1) * turns);
        expect(turnTicks(cellOf(stations, { ...layout, operators: 0 }))).toBe(expected);
      });
    },
  );
});

test.each(recharges)("a turn of different stations in rotation takes the closed form's ticks, %s", (rechargeStarts) => {
  fc.assert(
    fc.property(fc.array(times, { minLength: 1, maxLength: 8 }), (drawn) => {
      const { v } = drawn[0]!;
      const back = (c: number): number => (rechargeStarts === "valve-neutral" ? v : Math.max(v, c));
      const screw = drawn.reduce((total, { r, d, c }) => total + v + d + back(c) + r, 0);
      const molds = drawn.map(({ d, c, b, e }) => v + d + c + b + e);
      const scenario = cellOf(drawn, { dispatch: "alternate", rechargeStarts, operators: 0 });
      expect(turnTicks(scenario)).toBe(turns * Math.max(screw, ...molds));
    }),
    { seed: 20260741 },
  );
});

// By hand: the screw sets the pace, so from one drop to the next it shifts back, recharges, shifts and drops: 2 v + r + d.
test.each(["served", "next"] as const)("a charge is as long as that of the station %s", (shotFor) => {
  const molds = { v: 0.25e6, c: 0.2e6, b: 1e6, e: 0.3e6 };
  const drawn: readonly Times[] = [
    { ...molds, r: 5e6, d: 1e6 },
    { ...molds, r: 7e6, d: 2e6 },
    { ...molds, r: 11e6, d: 3e6 },
  ];
  const base = cellOf(drawn, { dispatch: "alternate", rechargeStarts: "valve-neutral", operators: 0 });
  const scenario: Scenario = {
    ...base,
    delivery: { kind: "reciprocating-screw", rechargeStarts: "valve-neutral", shotFor },
  };
  const ticks = shotTicks(scenario, 12);
  // The third drop and the ninth are those of the third station.
  const found = ticks.slice(3, 9).map((each, i) => each - ticks[i + 2]!);
  const expected = drawn.map(({ d }, k) => 0.5e6 + d + (shotFor === "next" ? drawn[k] : drawn.at(k - 1))!.r);
  expect(found).toEqual([...expected, ...expected]);
  // Of a cold start: the first charge is the one of the largest shot, or the one for the first station.
  const heaviest = scenario.stations.map((station, k) => ({ ...station, partMass: 0.03 + 0.01 * k }));
  const [first] = shotTicks({ ...scenario, stations: heaviest, run: { ...scenario.run, start: "cold" } }, 1);
  expect(first).toBe((shotFor === "next" ? 5e6 : 11e6) + 0.25e6 + 1e6);
});

/** Ticks of each step on the critical path of the first `shots` shots, and the tick of the last shot. */
function chainBefore(scenario: Scenario, shots: number): { end: number; counts: ReadonlyMap<string, number> } {
  const plan = planCell(scenario);
  const end = shotTicks(scenario, shots)[shots - 1]!;
  const simulation = new Simulation(plan.program, { seed: "fixed", replication: 0 }, plan.marked);
  simulation.runUntil(end);
  const last = plan.program.counters[simulation.marks.counters[shots - 1]!]!.replace("shots ", "");
  const [chain] = simulation.chainsOf([plan.program.table.processes.findIndex((process) => process.name === last)]);
  const counts = new Map<string, number>();
  plan.program.activities.forEach(({ resource, step }, i) => {
    const name = step.startsWith("shift to") ? "valve shift" : `${resource} ${step}`;
    counts.set(name, (counts.get(name) ?? 0) + chain!.ticks[i]!);
  });
  return { end, counts };
}

test("one tick more of a step lengthens the run by one tick for each time that the step is on the critical path", () => {
  const shots = 40;
  let moved = 0;
  fc.assert(
    fc.property(
      fc.array(times, { minLength: 1, maxLength: 5 }),
      fc.constantFrom(...recharges),
      fc.constantFrom(0, 1),
      (drawn, rechargeStarts, operators) => {
        const { r, v } = drawn[0]!;
        const base = drawn.map((each) => ({ ...each, r, v: v + 1 }));
        const layout = { dispatch: "alternate", rechargeStarts, operators } as const;
        const { end, counts } = chainBefore(cellOf(base, layout), shots);
        const lengthened = (change: (times: Times, k: number) => Times): number =>
          shotTicks(cellOf(base.map(change), layout), shots)[shots - 1]! - end;
        const occurrences = (name: string, ticks: number): number => (ticks === 0 ? 0 : counts.get(name)! / ticks);
        expect(lengthened((each) => ({ ...each, r: each.r + 1 }))).toBe(occurrences("plasticator recharge", r));
        expect(lengthened((each) => ({ ...each, v: each.v + 1 }))).toBe(occurrences("valve shift", v + 1));
        base.forEach(({ d, c, b, e }, k) => {
          const own = { d: ["drop", d], c: ["close", c], b: ["cool", b], e: ["remove", e] } as const;
          for (const [key, [step, ticks]] of Object.entries(own)) {
            if (ticks === 0) continue;
            const longer = lengthened((each, at) => (at === k ? { ...each, [key]: ticks + 1 } : each));
            expect([step, k, longer]).toEqual([step, k, occurrences(`station ${k + 1} ${step}`, ticks)]);
            moved += longer;
          }
        });
      },
    ),
    { seed: 20260742 },
  );
  expect(moved).toBeGreaterThan(10 * caseCount);
});

// Rule of the model: the latest completion that a start needs binds it; among equals the order is plasticator, valve, crew,
// own step, name.
test("when several completions are latest, the plasticator's binds and the start is flagged as tied", () => {
  // r + d + 2v = v + d + m = 6.3 s: screw and mold are ready at the same tick at every shot.
  const one = { recharge: 4, drop: 1.8, close: 0.6, cool: 2.85, remove: 0.8 };
  const cell = fixedCell({ stations: [one], shift: 0.25, length: 630 });
  const { chain } = runCell(planCell(cell), { replication: 1 });
  const sumOf = (step: string, part: "ticks" | "tiedTicks"): number => {
    const own = chain.filter((each) => each.step === step);
    expect(own).not.toEqual([]);
    return own.reduce((sum, each) => sum + each[part], 0);
  };
  expect(sumOf("recharge", "ticks")).toBe(100 * 4e6);
  expect(sumOf("cool", "ticks")).toBe(0);
  expect(sumOf("shift to port", "tiedTicks")).toBe(99 * 0.25e6);
});

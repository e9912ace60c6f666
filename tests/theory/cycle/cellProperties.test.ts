// Properties of every cell: mass is conserved, each tick is counted once, and the order of stations in the file has no effect.
import * as fc from "fast-check";
import { permutationsHeap } from "simple-statistics";
import { expect, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { partsOf, rechargesCounter, shotsOf } from "#cell/words/cycleNames.ts";
import { runCell } from "#cell/run/runCell.ts";
import { Simulation } from "#engine/run/simulation.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { caseCount } from "../../support/caseCount.ts";
import { everywhere, randomScenario } from "../../support/randomScenario.ts";

const anyCell = randomScenario({ ...everywhere, mostStations: 6, length: 600 });
const withWarmup = fc
  .tuple(anyCell, fc.constantFrom(0, 0, 97.3))
  .map(([scenario, warmup]): Scenario => ({ ...scenario, run: { ...scenario.run, warmup } }));
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

test("the state times of every resource add up to the observed time in ticks, in states that exist", () => {
  fc.assert(
    fc.property(withWarmup, (scenario) => {
      const record = runCell(planCell(scenario), { replication: 0 });
      const resources = new Set(record.stateTimes.map((each) => each.resource));
      for (const resource of resources) {
        const ticks = record.stateTimes.filter((each) => each.resource === resource).map((each) => each.ticks);
        expect([resource, sum(ticks)]).toEqual([resource, record.untilTick - record.fromTick]);
        expect(Math.min(...ticks)).toBeGreaterThanOrEqual(0);
      }
    }),
    { seed: 20260721 },
  );
});

test("the critical path of every station covers the observed time in ticks, without gap or overlap", () => {
  fc.assert(
    fc.property(withWarmup, (scenario) => {
      const record = runCell(planCell(scenario), { replication: 0 });
      scenario.stations.forEach((station, k) => {
        const ticks = record.chain.map((share) => share.ticksByStation[k]!);
        expect([station.name, sum(ticks)]).toEqual([station.name, record.untilTick - record.fromTick]);
        expect(Math.min(...ticks)).toBeGreaterThanOrEqual(0);
      });
    }),
    { seed: 20260722 },
  );
});

test("every shot is in exactly one place: on the screw, in one mold, or removed as parts", () => {
  fc.assert(
    fc.property(anyCell, fc.integer({ min: 0, max: 600_000_000 }), (scenario, until) => {
      const { program } = planCell(scenario);
      const simulation = new Simulation(program, { seed: "mass", replication: 1 });
      simulation.runUntil(until);
      const count = (name: string): number => simulation.counts[program.counters.indexOf(name)]!;
      const shots = scenario.stations.map((station) => count(shotsOf(station.name)));
      const onScrew = count(rechargesCounter) + (scenario.run.start === "running" ? 1 : 0) - sum(shots);
      expect([0, 1]).toContain(onScrew);
      scenario.stations.forEach((station, k) => {
        expect([0, 1]).toContain(shots[k]! - count(partsOf(station.name)) / station.cavities);
      });
    }),
    { seed: 20260723 },
  );
});

test("a chain that is folded often gives the same shares as one that is never folded", () => {
  let folds = 0;
  fc.assert(
    fc.property(anyCell, fc.constantFrom(40, 97, 500), (scenario, foldAt) => {
      const plan = planCell(scenario);
      const [often, never] = [foldAt, 1e9].map((nodes) => {
        const simulation = new Simulation(plan.program, { seed: "fold", replication: 2, foldAt: nodes });
        simulation.runUntil(100_000_000);
        simulation.restartObservation();
        simulation.runUntil(600_000_000);
        folds += simulation.chain.last < foldAt ? 1 : 0;
        return simulation
          .chainsOf(plan.stationProcess)
          .map((chain) => [Array.from(chain.ticks), Array.from(chain.tied)]);
      });
      expect(often).toEqual(never);
    }),
    { seed: 20260724 },
  );
  expect(folds).toBeGreaterThan(caseCount / 2);
});

/** A scenario of different stations, listed in the order given. */
function listed(names: readonly string[], dispatch: string): string {
  const seconds: Readonly<Record<string, number>> = { left: 7.1, middle: 9.2, right: 6.3, rear: 11.4 };
  const stations = names.map(
    (name) => `  - name: ${name}
    cavities: ${name.length}
    steps:
      close: 0.6 s
      blow: 0.5 s
      cool: { normal: [${seconds[name]} s, 0.4 s] }
      vent: 0.5 s
      open: 0.6 s
      remove: { time: 0.8 s, by: ${name === "rear" ? "operator" : "machine"} }
`,
  );
  return `format: 1
product: { partMass: 42 g }
delivery: { kind: reciprocating-screw, recharge: 2.1 s, drop: 1.2 s }
valve: { shift: 0.3 s, dispatch: ${dispatch} }
crew: { operators: 1 }
run: { length: 2 h, replications: 1, seed: order, warmup: 0 s }
stations:
${stations.join("")}`;
}

test.each(["first-ready", "longest-since-drop", "alternate"])(
  "stations listed in another order give the same record, %s",
  (dispatch) => {
    const recordOf = (names: readonly string[]): unknown => {
      const reading = readScenario(listed(names, dispatch), { name: "order", file: "order.yaml" });
      expect(reading.issues.filter((issue) => issue.severity === "error")).toEqual([]);
      return runCell(planCell(reading.scenario!), { replication: 0 });
    };
    const [first, ...others] = permutationsHeap(["left", "middle", "right", "rear"]).map(recordOf);
    expect(others).toHaveLength(23);
    for (const other of others) expect(other).toEqual(first);
  },
);

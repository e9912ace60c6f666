// Compares the cell's step table, run by the interpreter, with the independent shot recursion [C].
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { planCell, type CellPlan } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { EventLog } from "#engine/run/eventLog.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { caseCount } from "../../support/caseCount.ts";
import { randomScenario } from "../../support/randomScenario.ts";
import { operatorWaits, shotRecursion, type RecursionCell } from "../../support/recursions/shotRecursion.ts";
import {
  byStart,
  firstDifference,
  moldSteps,
  orderedMoldSteps,
  replication,
  sameDraws,
  simulatedSteps,
  until,
} from "../../support/recursions/recursionComparison.ts";

function recursionCell(scenario: Scenario): RecursionCell {
  return {
    stations: scenario.stations.map((station) => ({
      name: station.name,
      priority: station.priority,
      removal: station.remove.by,
      moldSteps: orderedMoldSteps(station),
    })),
    dispatch: scenario.valve.dispatch,
    rechargeStarts:
      scenario.delivery.kind === "reciprocating-screw" ? scenario.delivery.rechargeStarts : "valve-neutral",
    operators: scenario.operators,
    start: scenario.run.start,
  };
}

/** Step starts in the event log of an ordinary run, which keeps the critical path. */
function loggedStarts(plan: CellPlan): string[] {
  const log = new EventLog();
  new Simulation(plan.program, { seed: plan.scenario.run.seed, replication, log }).runUntil(until - 1);
  const { rows, activities, table } = plan.program;
  const starts = Array.from(log).flatMap((event) => {
    const activity = event.row === -1 ? undefined : activities[rows[event.row]!.activity];
    const own = table.resources[event.resource]!.name === table.processes[rows[event.row]?.process ?? 0]!.resource;
    const isStart = activity !== undefined && own && plan.program.states[event.state]!.kind === "working";
    return isStart ? [`${event.time} ${activity.resource} ${activity.step}`] : [];
  });
  return starts.toSorted();
}

test("every step of random cells starts and ends at the same tick in table and recursion", () => {
  const extraAfter = ["drop", ...moldSteps];
  let compared = 0;
  fc.assert(
    fc.property(randomScenario({ mostStations: 16, length: 90, extraAfter }), (scenario) => {
      const plan = planCell(scenario);
      const simulated = simulatedSteps(plan);
      const recursed = shotRecursion(recursionCell(scenario), sameDraws(scenario), until)
        .map(({ resource, step, start, end }) => ({ resource, step, start, end }))
        .toSorted(byStart);
      expect(firstDifference(simulated, recursed)).toBeUndefined();
      expect(loggedStarts(plan)).toEqual(
        simulated.map((each) => `${each.start} ${each.resource} ${each.step}`).toSorted(),
      );
      compared += simulated.length;
    }),
    { seed: 20260703 },
  );
  expect(compared).toBeGreaterThan(100 * caseCount);
});

/** Several operators may become free at one instant. */
function isOnGrid({ stations }: Scenario): boolean {
  return stations.every(
    ({ cool }) => cool.kind === "empirical" || (cool.kind === "fixed" && Number.isInteger(cool.value)),
  );
}

/** A removal without time frees its operator in the instant of the call; the recursion serves an operator once an instant. */
function takesTime({ stations }: Scenario): boolean {
  return stations.every(({ remove: { time } }) =>
    time.kind === "fixed" ? time.value > 0 : time.kind !== "empirical" || time.values.every((value) => value > 0),
  );
}

test("every wait for an operator lasts as long in the states as in the recursion: until one is free, and while they walk", () => {
  const extraAfter = ["drop", ...moldSteps];
  const end = 300e6;
  const anyCell = randomScenario({ mostStations: 6, length: end / 1e6, extraAfter });
  const observed = { free: 0, walk: 0 };
  fc.assert(
    fc.property(anyCell, fc.constantFrom(0.5, 1, 2.25), (random, seconds) => {
      fc.pre(!isOnGrid(random) || takesTime(random));
      const scenario = isOnGrid(random) ? { ...random, operators: 1 } : random;
      const walk = { kind: "fixed", value: seconds } as const;
      const record = runCell(planCell({ ...scenario, walk }), { replication });
      const cell = { ...recursionCell(scenario), walk: seconds * 1e6 };
      const waits = operatorWaits(cell, sameDraws(scenario), end);
      for (const { name, remove } of scenario.stations) {
        if (remove.by === "machine") continue;
        const ticksIn = (state: string): number =>
          record.stateTimes.find((each) => each.resource === name && each.state === state)!.ticks;
        const expected = { free: 0, walk: 0 };
        for (const { station, requested, granted, arrived } of waits) {
          if (station !== name) continue;
          expected.free += Math.min(granted, end) - requested;
          expected.walk += Math.min(arrived, end) - Math.min(granted, end);
        }
        expect([name, ticksIn("no operator free")]).toEqual([name, expected.free]);
        expect([name, ticksIn("operator on the way")]).toEqual([name, expected.walk]);
        observed.free += expected.free;
        observed.walk += expected.walk;
      }
    }),
    { seed: 20261128 },
  );
  // Both occur, or the comparison would prove nothing.
  expect(Math.min(observed.free, observed.walk)).toBeGreaterThan((caseCount * 1e6) / 2);
});

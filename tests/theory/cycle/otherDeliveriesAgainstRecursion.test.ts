// Compares accumulators and continuous extrusion, run by the interpreter, with independent recursions [C].
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { DeliverySpec, Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { accumulatorRecursion, type AccumulatorCell } from "../../support/accumulatorRecursion.ts";
import { dieZones } from "../../support/equalStations.ts";
import { caseCount } from "../../support/caseCount.ts";
import { continuousRecursion } from "../../support/continuousRecursion.ts";
import { randomScenario } from "../../support/randomScenario.ts";
import type { Durations, StepInterval } from "../../support/shotRecursion.ts";
import {
  byStart,
  firstDifference,
  massMilligrams,
  moldSteps,
  orderedMoldSteps,
  sameDraws,
  simulatedSteps,
  until,
} from "../../support/recursionComparison.ts";

/** Cells as the recursions model them: dispatch first-ready, every removal by machine. */
function random(delivery: DeliverySpec, extraAfter: readonly string[]): fc.Arbitrary<Scenario> {
  return randomScenario({ mostStations: 6, length: 90, extraAfter }).map((scenario) => ({
    ...scenario,
    delivery,
    valve: { ...scenario.valve, dispatch: "first-ready" },
    operators: 0,
    stations: scenario.stations.map((station) => ({ ...station, remove: { ...station.remove, by: "machine" } })),
  }));
}

/** Steps under the names of the cell's tables; steps that only a recursion has are left out. */
function named(steps: readonly StepInterval[], name: (step: string) => string | undefined) {
  return steps
    .flatMap(({ resource, step, start, end }) => {
      const known = name(step);
      return known === undefined ? [] : [{ resource, step: known, start, end }];
    })
    .toSorted(byStart);
}

const moldAfterDrop = (station: StationSpec): readonly string[] => [...orderedMoldSteps(station), "remove"];

/** Moves the extra steps after the removal to the end. */
function removalStepsLast(station: StationSpec, steps: readonly string[]): readonly string[] {
  const after = station.extra.filter(({ after: place }) => place === "remove").map(({ name }) => name);
  return [...steps.filter((step) => !after.includes(step)), ...after];
}

function accumulatorCell(
  scenario: Scenario,
  kind: { accumulator: "per-station" } | { accumulator: "common"; capacity: number },
) {
  const stations = scenario.stations.map((station) => ({
    name: station.name,
    shot: massMilligrams(station),
    moldSteps: removalStepsLast(station, moldAfterDrop(station)),
  }));
  return { stations, start: scenario.run.start, ...kind } satisfies AccumulatorCell;
}

const dropAndMold = ["drop", ...moldSteps];

test("random cells with a chamber in every head: every step is at the same tick in table and recursion", () => {
  const heads: DeliverySpec = { kind: "accumulator-head", accumulator: "per-station" };
  fc.assert(
    fc.property(random(heads, dropAndMold), (scenario) => {
      const draws = sameDraws(scenario);
      const asNamed: Durations = (resource, step, n, station) =>
        draws(resource, step === "shift to port" ? "shift to head" : step, n, station);
      const recursed = accumulatorRecursion(accumulatorCell(scenario, { accumulator: "per-station" }), asNamed, until);
      const expected = named(recursed, (step) => (step === "shift to port" ? "shift to head" : step));
      expect(firstDifference(simulatedSteps(planCell(scenario)), expected)).toBeUndefined();
    }),
    { seed: 20261125 },
  );
});

/** The mean in place of the distribution: the table makes a recharge of a common chamber in two steps, the recursion in one. */
function atFixed(time: TimeOrRate): TimeOrRate {
  const fixed = (distribution: Distribution): Distribution => ({
    kind: "fixed",
    value: "value" in distribution ? distribution.value : "mean" in distribution ? distribution.mean : 3,
  });
  return time.by === "time" ? { by: "time", time: fixed(time.time) } : { by: "rate", rate: fixed(time.rate) };
}

test("random cells with one chamber before the valve: every shot is at the same tick in table and recursion", () => {
  const cells = fc.tuple(
    random({ kind: "accumulator-head", accumulator: "common" }, dropAndMold),
    fc.integer({ min: 0, max: 2000 }),
  );
  let compared = 0;
  fc.assert(
    fc.property(cells, ([drawn, beyond]) => {
      const [first] = drawn.stations;
      // Equal shots, so that table and recursion measure the chamber in the same unit. No screw is faster than the ram.
      const stations = drawn.stations.map((station) => ({
        ...station,
        cavities: first!.cavities,
        partMass: first!.partMass!,
        flashMass: first!.flashMass!,
        recharge: atFixed(first!.recharge),
        drop: { by: "time", time: { kind: "fixed", value: 0.9 } } as const,
      }));
      const shot = massMilligrams(stations[0]!);
      const capacity = shot + Math.floor((shot * beyond) / 1000);
      const scenario: Scenario = {
        ...drawn,
        stations,
        delivery: { kind: "accumulator-head", accumulator: "common", shotCapacity: capacity / 1e6 },
        run: { ...drawn.run, start: "running" },
      };
      const cell = accumulatorCell(scenario, { accumulator: "common", capacity });
      const recursed = named(accumulatorRecursion(cell, sameDraws(scenario), until), (step) =>
        step === "recharge" ? undefined : step,
      );
      const simulated = simulatedSteps(planCell(scenario)).filter(({ resource }) => resource !== "plasticator");
      expect(firstDifference(simulated, recursed)).toBeUndefined();
      compared += simulated.length;
    }),
    { seed: 20261126 },
  );
  expect(compared).toBeGreaterThan(50 * caseCount);
});

const atTheDie = ["travel in", "close", "cut", "travel out"];

test("random cells of continuous extrusion: every step is at the same tick in table and recursion", () => {
  const delivery = { kind: "continuous", rate: "fixed", removal: "mold", dieZone: "exclusive" } as const;
  fc.assert(
    fc.property(random(delivery, ["blow", "cool", "vent", "open"]), dieZones, (drawn, dieZone) => {
      const [first] = drawn.stations;
      // The table assigns a parison to a mold before the mold closes on it. With equal shots the assignment has no effect.
      const stations = drawn.stations.map((station) => ({
        ...station,
        cavities: first!.cavities,
        partMass: first!.partMass!,
        flashMass: first!.flashMass!,
        recharge: first!.recharge,
        travel: { in: station.open, cut: station.vent, out: station.blow },
      }));
      const scenario: Scenario = { ...drawn, stations, delivery: { ...delivery, dieZone } };
      const cell = {
        dieZone,
        stations: stations.map((station) => {
          const mold = moldAfterDrop(station).filter((step) => step !== "close");
          return { name: station.name, steps: [...atTheDie, ...mold] };
        }),
        fullAt: "start of close" as const,
        start: scenario.run.start,
      };
      const recursed = named(continuousRecursion(cell, sameDraws(scenario), until), (step) =>
        step === "excess" ? undefined : step,
      );
      expect(firstDifference(simulatedSteps(planCell(scenario)), recursed)).toBeUndefined();
    }),
    { seed: 20261127 },
  );
});

// Accumulators and continuous extrusion, run by the interpreter, against second accounts written by one who had not seen the tables.
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { DeliverySpec, Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { accumulatorRecursion, type AccumulatorCell } from "../support/accumulatorRecursion.ts";
import { caseCount } from "../support/caseCount.ts";
import { continuousRecursion } from "../support/continuousRecursion.ts";
import { randomScenario } from "../support/randomScenario.ts";
import type { Durations, StepInterval } from "../support/shotRecursion.ts";
import {
  byStart,
  firstDifference,
  massMilligrams,
  moldSteps,
  orderedMoldSteps,
  sameDraws,
  simulatedSteps,
  until,
} from "../support/twoAccounts.ts";

/** First come, first served, and every removal by machine, which is what the second accounts know. */
function random(delivery: DeliverySpec, extraAfter: readonly string[]): fc.Arbitrary<Scenario> {
  return randomScenario({ mostStations: 6, length: 90, extraAfter }).map((scenario) => ({
    ...scenario,
    delivery,
    valve: { ...scenario.valve, dispatch: "first-ready" },
    operators: 0,
    stations: scenario.stations.map((station) => ({ ...station, remove: { ...station.remove, by: "machine" } })),
  }));
}

/** Steps as the cell's tables call them; what the second accounts lay besides is left out. */
function named(steps: readonly StepInterval[], name: (step: string) => string | undefined) {
  return steps
    .flatMap(({ resource, step, start, end }) => {
      const known = name(step);
      return known === undefined ? [] : [{ resource, step: known, start, end }];
    })
    .toSorted(byStart);
}

const moldAfterDrop = (station: StationSpec): readonly string[] => [...orderedMoldSteps(station), "remove"];

/** The removal's own steps come after it. */
function laid(station: StationSpec, steps: readonly string[]): readonly string[] {
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
    moldSteps: laid(station, moldAfterDrop(station)),
  }));
  return { stations, start: scenario.run.start, ...kind } satisfies AccumulatorCell;
}

const dropAndMold = ["drop", ...moldSteps];

test("random cells with a chamber in every head: every step in the same tick in both accounts", () => {
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

/** The mean in place of every law: a common chamber parts a recharge in two, and two draws are not one. */
function atFixed(time: TimeOrRate): TimeOrRate {
  const fixed = (law: Distribution): Distribution => ({
    kind: "fixed",
    value: "value" in law ? law.value : "mean" in law ? law.mean : 3,
  });
  return time.by === "time" ? { by: "time", time: fixed(time.time) } : { by: "rate", rate: fixed(time.rate) };
}

test("random cells with one chamber before the valve: every shot in the same tick in both accounts", () => {
  const cells = fc.tuple(
    random({ kind: "accumulator-head", accumulator: "common" }, dropAndMold),
    fc.integer({ min: 0, max: 2000 }),
  );
  let compared = 0;
  fc.assert(
    fc.property(cells, ([drawn, beyond]) => {
      const [first] = drawn.stations;
      // Equal shots, so that both accounts count the chamber in the same measure; no screw that outruns the ram.
      const stations = drawn.stations.map((station) => ({
        ...station,
        cavities: first!.cavities,
        partMass: first!.partMass,
        flashMass: first!.flashMass,
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

test("random cells of continuous extrusion: every step in the same tick in both accounts", () => {
  const delivery: DeliverySpec = { kind: "continuous", rate: "fixed", removal: "mold" };
  fc.assert(
    fc.property(random(delivery, ["blow", "cool", "vent", "open"]), (drawn) => {
      const [first] = drawn.stations;
      // Whose parison grows is settled before it is caught: equal shots, so that it does not matter.
      const stations = drawn.stations.map((station) => ({
        ...station,
        cavities: first!.cavities,
        partMass: first!.partMass,
        flashMass: first!.flashMass,
        recharge: first!.recharge,
        travel: { in: station.open, cut: station.vent, out: station.blow },
      }));
      const scenario: Scenario = { ...drawn, stations };
      const cell = {
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

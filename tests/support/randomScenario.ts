// Random scenarios of a reciprocating-screw cell, on a coarse grid with many ties or with fine times.
import * as fc from "fast-check";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { ExtraStepSpec, Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";

export interface RandomScenarioOptions {
  readonly mostStations: number;
  /** Seconds of one run. */
  readonly length: number;
  /** Steps after which an extra step may come. */
  readonly extraAfter: readonly string[];
}

const cycleSteps = ["drop", "close", "blow", "cool", "vent", "open", "remove"];

export const everywhere: RandomScenarioOptions = { mostStations: 4, length: 300, extraAfter: cycleSteps };

/** On a grid of whole seconds many completions coincide. A `least` above 0 keeps a circuit from a duration of 0. */
function coarse(least: number, most: number): fc.Arbitrary<Distribution> {
  const second = fc.integer({ min: least, max: most });
  return fc.oneof(
    second.map((value): Distribution => ({ kind: "fixed", value })),
    fc.array(second, { minLength: 2, maxLength: 4 }).map((values): Distribution => ({ kind: "empirical", values })),
  );
}

function fine(least: number, most: number): fc.Arbitrary<Distribution> {
  const bound = fc.double({ min: least, max: most, noNaN: true });
  return fc.oneof(
    fc
      .tuple(bound, bound)
      .map(([a, b]): Distribution => ({ kind: "uniform", min: Math.min(a, b), max: Math.max(a, b) })),
    bound.map((mean): Distribution => ({ kind: "gamma", mean: Math.max(mean, 0.01), sd: Math.max(mean, 0.01) / 2 })),
    bound.map((mean): Distribution => ({ kind: "normal", mean, sd: mean / 4 })),
    bound.map((value): Distribution => ({ kind: "fixed", value })),
  );
}

type Times = typeof coarse;

function timeOrRate(times: Times, least: number): fc.Arbitrary<TimeOrRate> {
  const measured = times(least, 4).map((time): TimeOrRate => ({ by: "time", time }));
  // With a rate the time depends on the mass, so that stations get different times from the same stream.
  const rated = fc.double({ min: 0.02, max: 0.09, noNaN: true }).map((mean): TimeOrRate => ({
    by: "rate",
    rate: { kind: "normal", mean, sd: mean / 5 },
  }));
  return times === coarse ? measured : fc.oneof(measured, rated);
}

function extraSteps(times: Times, after: readonly string[]): fc.Arbitrary<readonly ExtraStepSpec[]> {
  const names = fc.uniqueArray(fc.constantFrom(...after), { maxLength: 2 });
  return fc.tuple(names, times(0, 2)).map(([places, time]) => {
    const steps = places.map((place) => ({ name: `after ${place}`, after: place, time }));
    return steps.length === 2 ? [...steps, { name: "after that", after: steps[1]!.name, time }] : steps;
  });
}

function randomStation(name: string, times: Times, options: RandomScenarioOptions): fc.Arbitrary<StationSpec> {
  return fc.record({
    name: fc.constant(name),
    cavities: fc.integer({ min: 1, max: 12 }),
    product: fc.constant("bottle"),
    partMass: fc.constantFrom(0.0123, 0.03, 0.05),
    flashMass: fc.constantFrom(0, 0.01),
    drop: timeOrRate(times, 0),
    recharge: timeOrRate(times, 1),
    close: times(0, 2),
    blow: times(0, 1),
    cool: times(0, 12),
    vent: times(0, 1),
    open: times(0, 1),
    remove: fc.record({ time: times(0, 4), by: fc.constantFrom("machine", "operator") }),
    extra: extraSteps(times, options.extraAfter),
    priority: fc.integer({ min: 1, max: 3 }),
  });
}

export function randomScenario(options: RandomScenarioOptions): fc.Arbitrary<Scenario> {
  const names = Array.from({ length: options.mostStations }, (_, k) => `station ${String.fromCodePoint(97 + k)}`);
  const start = fc.constantFrom("running" as const, "cold" as const);
  return fc
    .tuple(fc.constantFrom(coarse, fine), fc.integer({ min: 1, max: options.mostStations }))
    .chain(([times, count]) =>
      fc.record({
        name: fc.constant("random"),
        title: fc.constant(""),
        delivery: fc.record({
          kind: fc.constant("reciprocating-screw" as const),
          rechargeStarts: fc.constantFrom("valve-neutral" as const, "mold-closed" as const),
          shotFor: fc.constant("served" as const),
        }),
        valve: fc.record({
          shift: times(0, 1),
          dispatch: fc.constantFrom(
            "first-ready" as const,
            "longest-since-drop" as const,
            "alternate" as const,
            "priority" as const,
          ),
        }),
        stations: fc.tuple(...names.slice(0, count).map((name) => randomStation(name, times, options))),
        operators: fc.integer({ min: 1, max: 3 }),
        run: start.map((each) => ({ length: options.length, replications: 1, seed: "random", warmup: 0, start: each })),
      }),
    );
}

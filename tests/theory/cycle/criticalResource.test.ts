// Holds the resource that sets the pace of a run to the owner of the critical circuit, and the shares of all resources to 1.
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { resourceGroups, stepGroups } from "#analysis/bottleneck/resourceGroups.ts";
import { answerOf } from "#analysis/replication/replicationAnswer.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { everywhere, randomScenario } from "../../support/randomScenario.ts";
import { shippedText, studyOf } from "../../support/reported.ts";

function shipped(name: string, ...set: readonly string[]): Scenario {
  const brief = ["run.length=1 h", "run.replications=2", ...set];
  const { scenario, issues } = readSettled(shippedText(name), { name, file: `${name}.yaml`, set: brief });
  if (!scenario) throw new Error(JSON.stringify(issues));
  return scenario;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** By group of resources, the largest first. */
function sharesOf(scenario: Scenario): readonly (readonly [group: string, share: number])[] {
  const record = runCell(planCell(scenario), { replication: 1 });
  const { criticalShares } = answerOf({ replication: 1, scale: null }, record);
  const steps = stepGroups(scenario, criticalShares, true);
  return [...new Set([...resourceGroups(scenario).keys(), ...steps.map(({ group }) => group)])]
    .map((group): [string, number] => {
      const places = steps.filter((step) => step.group === group).flatMap((step) => step.places);
      return [group, sum(places.map((place) => criticalShares[place]!.share))];
    })
    .toSorted(([, one], [, other]) => other - one);
}

const tenths = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 10 * least, max: 10 * most }).map((value) => value / 10);

describe("with fixed times and a fixed order, the largest share is that of the owner of the critical circuit", () => {
  const cell = fc.record({
    stations: fc.integer({ min: 1, max: 4 }),
    operators: fc.integer({ min: 0, max: 2 }),
    recharge: tenths(1, 9),
    // Longer than all else that the screw does, too: a drop must not count for the station by itself.
    drop: tenths(1, 9),
    shift: tenths(0, 1),
    cool: tenths(1, 15),
    remove: tenths(1, 9),
  });

  test.each(["first-ready", "alternate"])("%s", (dispatch) => {
    fc.assert(
      fc.property(cell, ({ stations, operators, recharge, drop, shift, cool, remove }) => {
        // Circuits max{ r + d + 2v, (v + d + m) / M, removal / min(O, M) }, derived by hand [C]; m = 2.2 s + cool + removal.
        const circuits: readonly (readonly [string, number])[] = [
          ["plasticator", recharge + drop + 2 * shift],
          ["stations", (shift + drop + 2.2 + cool + remove) / stations],
          ["crew", operators === 0 ? 0 : remove / Math.min(operators, stations)],
        ];
        const [first, next] = circuits.toSorted(([, one], [, other]) => other - one);
        fc.pre(first![1] > 1.02 * next![1]);
        const scenario = scenarioOf(
          cellText(stations, operators === 0 ? "" : `crew: { operators: ${operators} }`),
          `delivery={ kind: reciprocating-screw, recharge: ${recharge} s, drop: ${drop} s }`,
          `valve={ shift: ${shift} s, dispatch: ${dispatch} }`,
          `stations.steps.cool=${cool} s`,
          `stations.steps.remove={ time: ${remove} s, by: ${operators === 0 ? "machine" : "operator"} }`,
          "run.length=2 h",
          "run.warmup=20 min",
        );
        const expected = stations === 1 && first![0] === "stations" ? "station 1" : first![0];
        const [[group, share]] = sharesOf(scenario) as [[string, number]];
        expect([group === "stations" && stations === 1 ? "station 1" : group]).toEqual([expected]);
        expect(share).toBeGreaterThan(0.98);
      }),
      { seed: 20261128, numRuns: 60 },
    );
  });
});

test("the shares of all resources of any cell add up to 1, and no share belongs to anything else", () => {
  fc.assert(
    fc.property(randomScenario({ ...everywhere, mostStations: 6, length: 600 }), (scenario) => {
      const shares = sharesOf(scenario);
      expect(shares.map(([group]) => group).toSorted()).toEqual([...resourceGroups(scenario).keys()].toSorted());
      expect(sum(shares.map(([, share]) => share))).toBeCloseTo(1, 9);
    }),
    { seed: 20261129 },
  );
});

describe("the shipped scenarios", () => {
  const names = [
    "bottle-continuous",
    "canister-accumulator-head",
    "canister-reciprocating",
    "cost-of-a-thousand",
    "handled-container",
    "large-part",
    "one-operator",
    "one-operator-four-molds",
    "one-station",
    "rigid-pvc",
    "slow-trimmer",
    "small-screw",
    "stops-and-repairs",
    "thin-bottle",
    "three-station",
    "two-molds",
    "two-shifts-one-color",
    "two-station",
  ];

  it.each(names)(
    "%s: shares add up to 1, every resource has a row, and utilization is the time in working states",
    (name) => {
      const study = studyOf(
        shipped(name, "run.warmup=0 s", `run.length=${name === "two-shifts-one-color" ? "1 d" : "1 h"}`),
      );
      expect(sum(study.bottleneck.map(({ share }) => share.mean))).toBeCloseTo(1, 9);
      for (const { share, steps } of study.bottleneck)
        expect(sum(steps.map((step) => step.share.mean))).toBeCloseTo(share.mean, 9);
      const named = study.bottleneck.flatMap(({ resources }) => resources);
      expect(named.toSorted()).toEqual([...new Set(study.states.map(({ resource }) => resource))].toSorted());
      for (const { resources, utilization } of study.bottleneck) {
        const working = study.states.filter(({ resource, kind }) => kind === "working" && resources.includes(resource));
        expect(utilization).toBeCloseTo(sum(working.map(({ share }) => share.mean)) / resources.length, 9);
      }
    },
  );

  it.each([
    ["one-operator-four-molds", ["operator 1"], "packing", 0.99],
    ["slow-trimmer", ["trim"], "trim", 0.9],
    ["small-screw", ["plasticator"], "recharge", 0.99],
    ["two-station", ["left", "right"], "cool", 0.95],
  ] as const)("%s: %j sets the pace, %s first", (name, resources, step, least) => {
    const [pace] = studyOf(shipped(name, "run.length=4 h")).bottleneck;
    expect(pace).toMatchObject({ resources });
    expect(pace?.steps[0]?.step).toBe(step);
    expect(pace?.share.mean).toBeGreaterThan(least);
  });
});

// Holds the selection to its confidence on runs of cells whose true output is known.
import { describe, expect, it } from "vitest";
import { kimNelson, type SelectionGoal } from "#analysis/selection/kimNelson.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { isLong } from "../../support/caseCount.ts";
import { fixedCell } from "../../support/fixedCell.ts";
import { exponential } from "../../support/queueTables.ts";

const secondsPerHour = 3600;
const worthwhile = 3;
const [shot, molding] = [1.8, 11];

/** Two molds on one screw with exponential times: 3600/s × (1 − P(no mold waits)), with r = s/a and P = 1/(1 + 2r + 2r²) [C]. */
function shotsPerHour(s: number, a: number): number {
  const r = s / a;
  return (secondsPerHour / s) * (1 - 1 / (1 + 2 * r + 2 * r * r));
}

/** The mold time that makes this output with a shot of s seconds. */
function moldingFor(s: number, output: number): number {
  let [low, high] = [1, 60];
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (shotsPerHour(s, middle) > output) low = middle;
    else high = middle;
  }
  return low;
}

function cellOf(s: number, a: number, hours: number) {
  const one = { recharge: 0, drop: s, close: 0, cool: a, remove: 0 };
  const warmup = 300;
  const cell = fixedCell({ stations: [one, one], shift: 0, length: warmup + hours * secondsPerHour });
  const stations = cell.stations.map((station) => ({
    ...station,
    drop: { by: "time" as const, time: exponential(s) },
    cool: exponential(a),
  }));
  return planCell({ ...cell, stations, run: { ...cell.run, warmup, seed: "selection" } });
}

describe("of five cells with random times", () => {
  const hours = 1 / 3;
  const best = shotsPerHour(shot, molding);
  const others = [1.2, 1.6, 2.2, 2.6].map((s) => [s, moldingFor(s, best - worthwhile)] as const);
  const layouts = [...others.slice(0, 2), [shot, molding] as const, ...others.slice(2)];
  const plans = layouts.map(([s, a]) => cellOf(s, a, hours));
  const goal: SelectionGoal = {
    better: "more",
    worthwhile,
    confidence: 0.95,
    firstReplications: 10,
    mostReplications: 500,
  };

  it("have one that makes exactly the worthwhile difference more than each of the others", () => {
    expect(best).toBeCloseTo(551.59, 2);
    for (const [s, a] of others) expect(shotsPerHour(s, a)).toBeCloseTo(best - worthwhile, 8);
  });

  const studies = isLong ? 400 : 10;
  it("it is selected in 95 % of the studies with common random numbers", () => {
    let [correct, spent] = [0, 0];
    for (let study = 0; study < studies; study++) {
      const values: readonly number[][] = plans.map(() => []);
      let found = kimNelson(values, goal);
      for (; found.kind === "running"; found = kimNelson(values, goal)) {
        for (const layout of found.survivors) {
          for (let i = 0; i < found.more; i++) {
            // Each study has replications of its own, the same ones for all layouts.
            const replication = study * goal.mostReplications + values[layout]!.length;
            const shots = runCell(plans[layout]!, { replication }).stations.reduce((sum, each) => sum + each.shots, 0);
            values[layout]!.push(shots / hours);
          }
        }
      }
      correct += found.kind === "selected" && found.layout === 2 ? 1 : 0;
      spent += values.reduce((sum, each) => sum + each.length, 0);
    }
    expect(correct / studies).toBeGreaterThanOrEqual(isLong ? 0.95 : 0.95 - 3 * Math.sqrt((0.95 * 0.05) / studies));
    // The sd of a run is 33 shots an hour; without common random numbers the differences need 20 times as many.
    expect(spent / studies).toBeLessThan(200);
  });
});

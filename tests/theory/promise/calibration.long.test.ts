// Of the orders with a stated chance of 70 to 80 %, 70 to 80 % of the real runs are on time, and so on.
import alea from "seedrandom/lib/alea.js";
import { beforeAll, describe, expect, it } from "vitest";
import type { Order } from "#analysis/promise/order.ts";
import { runOrder } from "#analysis/promise/orderProcedure.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { orderRunner } from "#analysis/promise/runOrder.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { isLong } from "../../support/caseCount.ts";
import { fixedCell } from "../../support/fixedCell.ts";

/** Cells that are made up, each the truth of its own experiment. */
const truths = isLong ? 400 : 20;
const runs = isLong ? 120 : 40;

/** Cooling and removal vary, and stops come at random; an early shift in every third cell. */
function madeUpCell(next: () => number, index: number): Scenario {
  const between = (low: number, high: number): number => low + (high - low) * next();
  const station = { recharge: between(2, 6), drop: between(1, 2), close: 0.6, cool: between(4, 9), remove: 1 };
  const made = fixedCell({ stations: index % 2 === 0 ? [station] : [station, station], shift: 0.25 });
  const stop = {
    name: "fault",
    resource: "plasticator",
    comes: { by: "calendar", between: { kind: "exponential", mean: between(400, 3000) } },
    repair: { kind: "gamma", mean: between(60, 400), sd: between(30, 200) },
    start: "running",
    by: "itself",
    shift: "any",
    step: "finish",
  } as const;
  return {
    ...made,
    stations: made.stations.map((each) => ({
      ...each,
      cool: { kind: "gamma", mean: station.cool, sd: between(0.2, 2) },
    })),
    stops: [stop],
    quality: { shotSpread: 0, cavitySpread: 0, rejects: between(0, 0.05) },
    ...(index % 3 === 0 ? { calendar: morning } : {}),
  };
}

const morning = {
  begins: "2026-11-30 06:00",
  clockChanges: [],
  off: [],
  operators: [],
  shifts: [{ start: "06:00", end: "07:00", breaks: [], stretches: [], pauses: [] }],
  breaks: "run on",
} as const;

function seeded(scenario: Scenario, seed: string): Scenario {
  return { ...scenario, run: { ...scenario.run, seed } };
}

function orderFor(scenario: Scenario, quantity: number, due: number | null): Order {
  const campaigns = [{ scenario, quantities: [{ product: null, quantity }], change: null }];
  return { name: "order", campaigns, due, chance: 0.5, replications: runs };
}

interface Experiment {
  readonly study: OrderStudy;
  /** Of one run with random numbers that the promise has never seen. */
  readonly isOnTime: boolean;
}

function experiment(index: number): Experiment {
  const next = alea(`truth ${index}`);
  const scenario = madeUpCell(next, index);
  const quantity = 100 + Math.floor(500 * next());
  const finish = (seed: string, replication: number): number =>
    orderRunner(orderFor(seeded(scenario, seed), quantity, null))({ replication }).finish!;
  // A due date about which the cell is sure, unsure or sure to fail.
  const due = finish(`pilot ${index}`, 1) * (0.97 + 0.06 * next());
  const outcome = runOrder(orderFor(seeded(scenario, `promise ${index}`), quantity, due));
  if (outcome.kind === "refused") throw new Error(outcome.issues[0]?.message);
  return { study: outcome.study, isOnTime: finish(`real ${index}`, 1) <= due };
}

describe(`the stated chance over ${truths} made-up cells`, () => {
  let experiments: readonly Experiment[] = [];
  beforeAll(() => {
    experiments = Array.from({ length: truths }, (_, index) => experiment(index));
  }, 1_800_000);

  const stated = ({ study }: Experiment): number => study.due!.share;
  const deviation = (those: readonly Experiment[]): number => {
    const expected = those.reduce((sum, each) => sum + stated(each), 0);
    // With the share of these runs its own error counts as well.
    const variance = those.reduce(
      (sum, each) => sum + stated(each) * (1 - stated(each)) * (1 + 1 / runs) + 1 / runs,
      0,
    );
    return (those.filter(({ isOnTime }) => isOnTime).length - expected) / Math.sqrt(variance);
  };

  it("is that of the real runs in each bin of 10 %, within the binomial error", () => {
    const bins = Array.from({ length: 10 }, (_, i) =>
      experiments.filter((each) => Math.min(9, Math.floor(10 * stated(each))) === i),
    );
    // z of 1 − 0.01/20: all ten bins hold together in 99 of 100 such tests.
    for (const [i, bin] of bins.entries()) {
      if (bin.length > 0) expect(Math.abs(deviation(bin)), `${bin.length} in bin ${i}`).toBeLessThan(3.29);
    }
    expect(bins.filter(({ length }) => length > 0).length).toBeGreaterThan(isLong ? 9 : 3);
  });

  it("is neither too high nor too low on average", () => {
    expect(Math.abs(deviation(experiments))).toBeLessThan(2.58);
  });

  it("tells chances apart", () => {
    const [low, high] = [0.25, 0.75];
    const share = (those: readonly Experiment[]): number =>
      those.filter(({ isOnTime }) => isOnTime).length / those.length;
    const sure = experiments.filter((each) => stated(each) > high);
    const unlikely = experiments.filter((each) => stated(each) < low);
    expect(share(sure) - share(unlikely)).toBeGreaterThan(0.5);
  });
});

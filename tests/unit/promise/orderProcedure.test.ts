// The procedure of an order, with answers that are written down: which runs are wanted, and what the results are.
import { describe, expect, it } from "vitest";
import { conductOrder } from "#analysis/promise/conductOrder.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderAnswer } from "#analysis/promise/orderAnswer.ts";
import {
  beginOrder,
  concludeOrder,
  effortOfRun,
  runsWanted,
  withOrderAnswers,
} from "#analysis/promise/orderProcedure.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { valuesAt } from "#analysis/promise/valuesAt.ts";
import { campaignMade, oneStation, orderFor, runMade, runsMade } from "../../support/madeOrder.ts";

const dated = (more: Partial<Order> = {}) => orderFor(oneStation, 100, { due: 200, ...more });
const wanted = (order: Order, answers: readonly OrderAnswer[]) =>
  runsWanted(withOrderAnswers(beginOrder(order), answers)).map(({ replication }) => replication);
const upTo = (from: number, until: number) => Array.from({ length: until - from + 1 }, (_, i) => from + i);

function studied(order: Order, answers: readonly OrderAnswer[]): OrderStudy {
  const outcome = concludeOrder({ order, answers });
  if (outcome.kind === "refused") throw new Error(JSON.stringify(outcome.issues));
  return outcome.study;
}

describe("the runs of an order", () => {
  it("are as many as the call gives", () => {
    expect(wanted(dated({ replications: 7 }), [])).toEqual(upTo(1, 7));
    expect(wanted(dated({ replications: 7 }), runsMade(7, 4))).toEqual([]);
    expect(wanted(dated({ replications: 7, due: null }), [])).toEqual(upTo(1, 7));
    expect(wanted(dated({ replications: 7, due: null }), runsMade(7))).toEqual([]);
  });

  it("are a hundred where only dates are asked for", () => {
    expect(wanted(dated({ due: null }), [])).toEqual(upTo(1, 100));
    expect(wanted(dated({ due: null }), runsMade(20))).toEqual(upTo(21, 100));
    expect(wanted(dated({ due: null }), runsMade(100))).toEqual([]);
  });

  it("go on from look to look until the chance is decided", () => {
    expect(wanted(dated(), [])).toEqual(upTo(1, 20));
    // 20 of 20 do not show 95 %, 150 of 150 do; none of 20 is far below it.
    expect(wanted(dated(), runsMade(20))).toEqual(upTo(21, 150));
    expect(wanted(dated(), runsMade(150))).toEqual([]);
    expect(wanted(dated(), runsMade(20, 0))).toEqual([]);
    expect(wanted(dated(), runsMade(2000, 1900))).toEqual([]);
  });

  it("end where one of them was not finished", () => {
    expect(wanted(dated(), [...runsMade(19), runMade(null, 20)])).toEqual([]);
  });

  // By hand: parts over two cavities are shots; looks follow up to 100 million shots of all runs.
  it.each([
    [600_000, 150, 300],
    [600_000, 300, 300],
    [100_000, 1200, 2000],
    [100_004, 1200, 1200],
    [20_000_000, 0, 20],
    [20_000_000, 20, 20],
  ])("of %i parts go from %i to %i", (parts, made, next) => {
    const order = orderFor(oneStation, parts, { due: 200 });
    expect(wanted(order, runsMade(made, Math.round(0.95 * made)))).toHaveLength(next - made);
  });

  it("take computing time by the shots of all campaigns", () => {
    const two = oneStation.stations.flatMap((station) => [station, { ...station, name: "b", cavities: 4 }]);
    const quantities = [
      { product: "a", quantity: 100 },
      { product: "b", quantity: 200 },
    ];
    const campaigns = [
      {
        scenario: oneStation,
        quantities: [{ product: null, quantity: 500 }],
        change: null,
      },
      { scenario: { ...oneStation, stations: two }, quantities, change: null },
    ];
    // By hand: 500 / 2 + 300 / 3 shots of two microseconds.
    expect(effortOfRun({ ...dated(), campaigns })).toBeCloseTo(350 * 2e-6, 15);
  });
});

describe("the results of an order", () => {
  const finishes = Array.from({ length: 20 }, (_, i) => 10 * (i + 1));
  const answers = finishes.map((finish, i) => runMade(finish, i + 1, { goodAtDue: 1000 + i }));

  it("say how many runs are on time, and how much time is left at the wanted chance", () => {
    const { due } = studied(dated({ due: 160, chance: 0.5, replications: 20 }), answers);
    // 16 of 20 end at or before 160 s; half of them within 100 s.
    expect(due).toMatchObject({
      onTime: 16,
      replications: 20,
      share: 0.8,
      slack: 60,
      verdict: "yes",
    });
    expect(studied(dated({ due: 159, chance: 0.95, replications: 20 }), answers).due).toMatchObject({
      onTime: 15,
      slack: 159 - 190,
      verdict: "no",
    });
    expect(studied(dated({ due: null }), answers).due).toBeNull();
  });

  it("give the times by which shares of the runs are done", () => {
    const { times, finish, meanFinish, replications } = studied(dated(), answers);
    expect(times.map(({ share, seconds }) => [share, seconds])).toEqual([
      [0.05, 10],
      [0.5, 100],
      [0.8, 160],
      [0.95, 190],
    ]);
    expect(finish).toEqual(finishes);
    expect([meanFinish.mean, replications]).toEqual([105, 20]);
    // [C] Binomial of 20 and 0.5: P(B < 6) = 0.0207 and P(B < 7) = 0.0577, so that ranks 6 and 15 bound the median.
    expect(times[1]?.interval).toEqual({ low: 60, high: 150 });
  });

  it("count good parts at the due date only where the runs count them", () => {
    expect(studied(dated(), answers).goodAtDue).toMatchObject({
      unit: "parts",
      values: upTo(1000, 1019),
    });
    expect(studied(dated(), runsMade(3)).goodAtDue).toBeNull();
  });

  it("give each quantity of each campaign its times", () => {
    const quantities = [
      { product: "a", quantity: 4 },
      { product: "b", quantity: 6 },
    ];
    const campaigns = [
      { scenario: oneStation, quantities, change: null },
      {
        scenario: oneStation,
        quantities: [{ product: "c", quantity: 8 }],
        change: null,
      },
    ];
    const made = [1, 2].map((replication) => ({
      ...runMade(90 * replication, replication),
      campaigns: [
        campaignMade(50, { finished: [30 * replication, 50 * replication] }),
        campaignMade(40, { finished: [90 * replication] }),
      ],
    }));
    expect(studied({ ...dated(), campaigns }, made).lines).toEqual([
      { product: "a", quantity: 4, seconds: [30, 60] },
      { product: "b", quantity: 6, seconds: [50, 100] },
      { product: "c", quantity: 8, seconds: [90, 180] },
    ]);
  });

  it.each([
    [0, "order-never"],
    [null, "order-never"],
    [12, "order-too-long"],
  ])("are refused where a run ends with %j good parts", (made, code) => {
    const outcome = concludeOrder({
      order: dated(),
      answers: [...runsMade(2), runMade(null, 3, { made })],
    });
    expect(outcome).toMatchObject({
      kind: "refused",
      issues: [{ code, value: "100 parts", fate: "cell" }],
    });
    expect(JSON.stringify(outcome)).toContain("Run 3 ");
  });
});

describe("the smallest values at shares of the runs", () => {
  // By hand: rank ⌈share × n⌉; 0.28 × 25 is 7.000000000000001 in binary numbers, and is rank 7.
  it("are those of the rank, whatever the order and the rounding", () => {
    const values = upTo(1, 25).toReversed();
    expect(valuesAt(values, [0.28, 0.281, 0.5, 0.96, 1, 0])).toEqual([7, 8, 13, 24, 25, 1]);
    expect(valuesAt([10, 9, 100], [1])).toEqual([100]);
  });
});

describe("the procedure with runs of others", () => {
  it("asks for runs until they are enough, and says after each look how many are new", async () => {
    const seen: (readonly [number, number])[] = [];
    const outcome = await conductOrder(
      dated(),
      (_, tasks) => Promise.resolve(tasks.map(({ replication }) => runMade(100, replication))),
      ({ answers }, count) => void seen.push([answers.length, count]),
    );
    expect(seen).toEqual([
      [20, 20],
      [150, 130],
    ]);
    expect(outcome).toMatchObject({
      kind: "found",
      study: { replications: 150, due: { onTime: 150 } },
    });
  });

  it("makes a single run where one is asked for", async () => {
    const outcome = await conductOrder(
      dated({ replications: 1 }),
      (_, tasks) => Promise.resolve(tasks.map(({ replication }) => runMade(100, replication))),
      () => undefined,
    );
    expect(outcome).toMatchObject({ kind: "found", study: { replications: 1, due: { verdict: "undecided" } } });
  });

  it("makes no run of an order that can never be done", async () => {
    const rejecting = {
      ...oneStation,
      quality: { shotSpread: 0, cavitySpread: 0, rejects: 1 },
    };
    const outcome = await conductOrder(
      orderFor(rejecting, 10),
      () => Promise.reject(new Error("a run")),
      () => undefined,
    );
    expect(outcome).toMatchObject({
      kind: "refused",
      issues: [{ code: "order-never" }],
    });
  });
});

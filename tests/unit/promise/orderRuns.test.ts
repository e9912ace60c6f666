// A run of an order with its calendar, operators and due date, and the orders that can never be done.
import { describe, expect, it } from "vitest";
import { idealFinish, longestRun, runningSeconds, secondsAPart } from "#analysis/promise/idealFinish.ts";
import { impossibleIssues, unfinishedIssue } from "#analysis/promise/impossibleOrder.ts";
import type { Order } from "#analysis/promise/order.ts";
import { paceOf, runCampaign } from "#analysis/promise/runCampaign.ts";
import { orderRunner } from "#analysis/promise/runOrder.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { always, server } from "../../support/takeawayCell.ts";
import { earlyShift, oneStation, orderFor, runMade } from "../../support/madeOrder.ts";

const hour = 3600;
const day = 24 * hour;
const week = 7 * day;

/** One shot of two parts in 13 s; 2,215 shots in a shift from 06:00 to 14:00, with a break on which the cell runs on. */
const inShifts: Scenario = {
  ...oneStation,
  operators: 2,
  calendar: earlyShift,
};

const twice = (scenario: Scenario, quantity: number, more: Partial<Order> = {}): Order => ({
  ...orderFor(scenario, quantity, more),
  campaigns: [1, 2].map(() => ({
    scenario,
    quantities: [{ product: null, quantity }],
    change: null,
  })),
});
const runOf = (order: Order) => orderRunner(order)({ replication: 1 });

describe("the time of an order at the ideal cycle", () => {
  it("is the period a part, for the product that takes longest", () => {
    expect(secondsAPart(oneStation)).toBeCloseTo(6.5, 12);
    const pair = ["a", "b"].map((product, i) => ({
      ...oneStation.stations[0]!,
      name: product,
      product,
      cavities: i + 1,
    }));
    const scenario = { ...oneStation, stations: pair };
    const quantities = [
      { product: "a", quantity: 100 },
      { product: "b", quantity: 150 },
    ];
    // By hand: of three cavities a has one and b two, so that a takes the time of 300 parts and b that of 225.
    const seconds = runningSeconds({ scenario, quantities, change: null });
    expect(seconds / secondsAPart(scenario)).toBeCloseTo(300, 9);
    const any = runningSeconds({
      scenario,
      quantities: [{ product: null, quantity: 100 }],
      change: null,
    });
    expect(any / secondsAPart(scenario)).toBeCloseTo(100, 9);
  });

  it("adds campaigns and the mean of what is done between them", () => {
    const order = twice(oneStation, 1000);
    const change = { name: "to b", kind: "mold", time: always(600) } as const;
    expect(idealFinish(order)).toBeCloseTo(13_000, 6);
    const changed = [order.campaigns[0]!, { ...order.campaigns[1]!, change }];
    expect(idealFinish({ campaigns: changed })).toBeCloseTo(13_600, 6);
  });

  it("goes on through the work shifts", () => {
    const finish = (quantity: number) => idealFinish(orderFor(inShifts, quantity));
    // By hand: 6.5 s a part; 8 h of each 24 h.
    expect(finish(1000)).toBeCloseTo(6500, 6);
    expect(finish((8 * hour) / 6.5)).toBeCloseTo(8 * hour, 4);
    expect(finish((9 * hour) / 6.5)).toBeCloseTo(25 * hour, 4);
    expect(finish((20 * hour) / 6.5)).toBeCloseTo((48 + 4) * hour, 4);
  });

  it("is none above two years of 52.5 weeks", () => {
    const finish = (scenario: Scenario, share: number) => idealFinish(orderFor(scenario, (share * longestRun) / 6.5));
    expect(longestRun).toBe(105 * week);
    expect(finish(oneStation, 0.999)).toBeCloseTo(0.999 * longestRun, 0);
    expect(finish(oneStation, 1.001)).toBe(Infinity);
    expect(finish(inShifts, 0.33)).toBeLessThan(longestRun);
    expect(finish(inShifts, 0.34)).toBe(Infinity);
  });
});

describe("an order that can never be done", () => {
  const messages = (order: Order) => impossibleIssues(order).map(({ message }) => message);
  const rejecting = { shotSpread: 0, cavitySpread: 0, rejects: 1 };
  const packing = (rejects: number) => ({
    takeaway: [server("test", always(1), { rejects }), server("packing", always(1))],
  });

  it("names what rejects all parts", () => {
    const byQuality = "The order of 9 parts can never be done. `quality.rejects` makes every part a reject.";
    expect(messages(orderFor({ ...oneStation, quality: rejecting }, 9))).toEqual([byQuality]);
    const byServer = "The order of 9 parts can never be done. The server test rejects every part.";
    expect(messages(orderFor({ ...oneStation, ...packing(1) }, 9))).toEqual([byServer]);
    expect(messages(orderFor({ ...oneStation, ...packing(1), quality: rejecting }, 9))).toEqual([byQuality]);
    const few = { ...rejecting, rejects: 0.99 };
    expect(messages(orderFor({ ...oneStation, ...packing(0.99), quality: few }, 9))).toEqual([]);
    expect(messages(orderFor(oneStation, 9))).toEqual([]);
  });

  it("takes longer than two years, with its running time", () => {
    // By hand: 2 × 10 million parts of 6.5 s are 1,505 days.
    const [issue] = impossibleIssues(twice(oneStation, 10_000_000));
    expect(issue).toMatchObject({
      code: "order-too-long",
      severity: "error",
      fate: "cell",
      value: "10000000 parts",
    });
    expect(issue?.message).toContain(
      "takes longer than two years. Even without stops and rejects it takes 1500 d of running time.",
    );
  });

  it("is one that a run does not end", () => {
    const order = orderFor(oneStation, 9);
    const issueOf = (made: number | null) => unfinishedIssue(order, runMade(null, 4, { made }));
    expect(issueOf(0)).toMatchObject({
      code: "order-never",
      message: expect.stringContaining("Run 4 makes no good"),
    });
    expect(issueOf(null)).toMatchObject({ code: "order-never" });
    expect(issueOf(1)).toMatchObject({
      code: "order-too-long",
      message: expect.stringContaining("Run 4 makes 1 good parts and would need"),
    });
    const standstill = { kind: "deadlock", seconds: 5, waiting: [] };
    expect(unfinishedIssue(order, runMade(null, 4, { made: 0, standstill }))).toMatchObject({ code: "deadlock" });
  });
});

describe("a run of an order", () => {
  it("counts the good parts at the due date, up to the last campaign and beyond it", () => {
    const at = (due: number) => runOf(twice(oneStation, 1000, { due })).goodAtDue;
    // By hand: each campaign has 500 shots and begins with an empty mold. Two parts every 13 s.
    expect(at(13)).toBe(2);
    expect(at(1299)).toBe(2 * 99);
    expect(at(6500)).toBe(1000);
    expect(at(6500 + 1300)).toBe(1200);
    expect(at(20_000)).toBe(2 * Math.floor(20_000 / 13));
    expect(runOf(twice(oneStation, 1000)).goodAtDue).toBeNull();
  });

  it("does not count them far beyond the finish: after two weeks and four times the ideal finish", () => {
    const at = (due: number) => runOf(orderFor(oneStation, 1000, { due })).goodAtDue;
    expect(at(2 * week)).toBe(2 * Math.floor((2 * week) / 13));
    expect(at(2 * week + 1)).toBeNull();
    // By hand: 186,000 parts take 6.5 s each, so that four times of it are just below eight weeks.
    const long = 186_000;
    const countOf = (due: number) => runOf(orderFor(oneStation, long, { due })).goodAtDue;
    expect(countOf(4 * 6.5 * long)).toBe(4 * long);
    expect(countOf(4 * 6.5 * long + 1)).toBeNull();
  });

  it("has its campaigns one after the other", () => {
    const { campaigns, finish, made, standstill } = runOf(twice(oneStation, 1000));
    expect(campaigns.map(({ seconds, finished }) => [seconds, finished])).toEqual([
      [6500, [6500]],
      [6500, [13_000]],
    ]);
    expect([finish, made, standstill]).toEqual([13_000, null, null]);
  });

  it("pays operators on shift without breaks, and knows how long they work", () => {
    // By hand: 3,000 parts are 1,500 shots: until 19,500 s, after the break of half an hour at hour 4.
    const { campaigns } = runOf(orderFor(inShifts, 3000));
    expect(campaigns[0]?.operatorSeconds).toEqual({
      onShift: 2 * (19_500 - 1800),
      worked: 0,
    });
    // 6,000 parts: 2,215 shots on the first day, 785 on the second: until hour 24 and 10,205 s.
    const next = runOf(orderFor(inShifts, 6000)).campaigns[0]!;
    expect(next.seconds).toBe(day + 785 * 13);
    expect(next.operatorSeconds.onShift).toBe(2 * (8 * hour - 1800 + 785 * 13));
    const removes = oneStation.stations.map((each) => ({
      ...each,
      remove: { ...each.remove, by: "operator" as const },
    }));
    // 500 removals of one second.
    const byHand = runOf(orderFor({ ...oneStation, stations: removes, operators: 2 }, 1000)).campaigns[0]!;
    expect(byHand.operatorSeconds).toEqual({ onShift: 2 * 6500, worked: 500 });
  });

  it("ends where the pace so far shows that it never will", () => {
    // Nearly all parts are rejects: 0.001 of 93,046 parts of two weeks are good, and 100,000 would take two thousand weeks.
    const quality = { shotSpread: 0, cavitySpread: 0, rejects: 0.999 };
    const order = orderFor({ ...oneStation, quality }, 100_000);
    const answer = runOf(order);
    expect([answer.finish, answer.goodAtDue, answer.campaigns]).toEqual([null, null, []]);
    expect(answer.made).toBeGreaterThan(50);
    expect(answer.made).toBeLessThan(1000);
  });

  it("is made again over twice the length until it is done", () => {
    // By hand: 200,000 parts take 2.15 weeks at the ideal cycle, so that the first run has 4; of 10 parts 3 are good: 7.2 weeks.
    const quality = { shotSpread: 0, cavitySpread: 0, rejects: 0.7 };
    const [campaign] = orderFor({ ...oneStation, quality }, 200_000).campaigns;
    const task = { campaign: campaign!, pace: paceOf(campaign!), index: 0, replication: 1, from: 0 };
    const run = runCampaign({ ...task, countAt: null, goesOn: true });
    expect([run.isDone, run.cell.run.length]).toEqual([true, 8 * week]);
    expect(run.reached[0]! / 1e6 / week).toBeCloseTo((200_000 * 6.5) / 0.3 / week, 1);
  });

  it("has whole weeks, at least one more than the order takes at a quarter more than its ideal finish", () => {
    const lengthOf = (quantity: number, due: number | null, goesOn: boolean) => {
      const { campaigns } = orderFor(oneStation, quantity);
      const [campaign] = campaigns;
      const pace = paceOf(campaign!);
      const task = {
        campaign: campaign!,
        pace,
        index: 0,
        replication: 1,
        from: 0,
        countAt: due,
        goesOn,
      };
      return runCampaign(task).cell.run.length / week;
    };
    expect(lengthOf(1000, null, true)).toBe(2);
    expect(lengthOf(1000, 3.5 * week, true)).toBe(5);
    expect(lengthOf(1000, 3.5 * week, false)).toBe(2);
    // 6.5 s × 100,000 × 1.25 are 1.34 weeks.
    expect(lengthOf(100_000, null, true)).toBe(3);
  });
});

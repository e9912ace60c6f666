// The runs of the levers of an order and what they find, with answers that are written down.
import { describe, expect, it } from "vitest";
import { conductLevers, wantsLevers } from "#analysis/promise/conductLevers.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderAnswer } from "#analysis/promise/orderAnswer.ts";
import type { Effort } from "#analysis/promise/orderLeverEffort.ts";
import {
  beginLevers,
  leverRunsWanted,
  leverSizes,
  leversOfTrials,
  runLevers,
} from "#analysis/promise/orderLeverRuns.ts";
import { concludeLevers } from "#analysis/promise/orderLeverStudy.ts";
import type { OrderLever } from "#analysis/promise/orderLevers.ts";
import { beginOrder, concludeOrder, withOrderAnswers } from "#analysis/promise/orderProcedure.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { summaryOf } from "#analysis/promise/orderUses.ts";
import { oneStation, orderFor, runMade, runsMade } from "../../support/madeOrder.ts";

const dated = (more: Partial<Order> = {}) => orderFor(oneStation, 100, { due: 200, ...more });
const lever = (name: string, effort: Effort, order: Order = dated()): OrderLever => ({
  name,
  effort,
  settings: [`${name}=1`],
  order,
});
const wanted = (order: Order, answers: readonly OrderAnswer[]) =>
  leverRunsWanted({
    lever: lever("a", "stop", order),
    state: withOrderAnswers(beginOrder(order), answers),
  }).map(({ replication }) => replication);
const upTo = (from: number, until: number) => Array.from({ length: until - from + 1 }, (_, i) => from + i);

function studied(order: Order, answers: readonly OrderAnswer[]): OrderStudy {
  const outcome = concludeOrder({ order, answers });
  if (outcome.kind === "refused") throw new Error(JSON.stringify(outcome.issues));
  return outcome.study;
}

describe("the runs of a lever", () => {
  it("are few where these decide, and more where they do not", () => {
    expect(wanted(dated(), [])).toEqual(upTo(1, 20));
    expect(wanted(dated(), runsMade(20, 0))).toEqual([]);
    expect(wanted(dated(), runsMade(20))).toEqual(upTo(21, 80));
    expect(wanted(dated(), runsMade(80))).toEqual([]);
    expect(wanted(dated(), runsMade(150))).toEqual([]);
    // The due date itself is on time.
    const late = dated({ due: 300 });
    expect(wanted(late, runsMade(20, 0))).toEqual(upTo(21, 80));
  });

  // [C] P(B ≤ 5) of 20 at 0.5 is 0.0207: below 0.025, and above the share of one of six looks.
  it("decide as one look of several", () => {
    expect(wanted(dated({ chance: 0.5 }), runsMade(20, 5))).toEqual(upTo(21, 80));
  });

  it("are none without a due date, and none after a run that was not finished", () => {
    expect(wanted(dated({ due: null }), [])).toEqual([]);
    expect(wanted(dated(), [...runsMade(3), runMade(null, 4)])).toEqual([]);
  });

  // [C] Wilson's lower bound of n of n is n / (n + 1.959964²): above 0.95 from 73 runs on, above 0.99 from 381 on, in steps of 20.
  it.each([
    [0.5, 80],
    [0.95, 80],
    [0.99, 400],
    [0.9999, 2000],
  ])("at a wanted chance of %f are as many as show it where all are on time", (chance, many) => {
    expect(leverSizes(chance)).toEqual([20, many]);
  });

  it("are not made where the changed order can never be done", () => {
    const never = {
      ...oneStation,
      quality: { shotSpread: 0, cavitySpread: 0, rejects: 1 },
    };
    const levers = [lever("a", "stop"), lever("never", "stop", orderFor(never, 5, { due: 200 }))];
    expect(beginLevers(levers).map((trial) => [trial.lever.name, trial.state.answers])).toEqual([["a", []]]);
  });
});

describe("the levers run by others", () => {
  const base = studied(dated({ replications: 80 }), runsMade(80, 40));
  const run = ({ quantity }: { readonly quantity: number }) => Promise.resolve(runsMade(quantity, quantity));

  it("have the runs that each of them wants, and are seen one after the other", async () => {
    const asked: (readonly [string, number])[] = [];
    const seen: number[] = [];
    const levers = [lever("a", "stop", dated()), lever("b", "shift", dated({ name: "hopeless" }))];
    const found = await conductLevers(
      base,
      levers,
      ({ name }, tasks) => {
        asked.push([name, tasks.length]);
        return run({ quantity: tasks.length }).then((all) => (name === "hopeless" ? runsMade(all.length, 0) : all));
      },
      (trials) => void seen.push(trials.length),
    );
    expect(asked).toEqual([
      ["100 parts", 20],
      ["100 parts", 60],
      ["hopeless", 20],
    ]);
    expect(seen).toEqual([1, 2]);
    expect(found.rows.map(({ name, due }) => [name, due.replications, due.onTime, due.verdict])).toEqual([
      ["a", 80, 80, "yes"],
      ["b", 20, 0, "no"],
    ]);
  });

  it("are the same in one thread", () => {
    // By hand: 50 shots of 13 s.
    const levers = [lever("early", "stop", dated({ due: 700 })), lever("late", "stop", dated({ due: 600 }))];
    const { rows } = runLevers(base, levers);
    expect(rows.map(({ name, due, median }) => [name, due.replications, due.onTime, median])).toEqual([
      ["early", 80, 80, 650],
      ["late", 20, 0, 650],
    ]);
  });

  it("are left out where a run was not finished", () => {
    const trials = beginLevers([lever("a", "stop"), lever("b", "stop")]).map((trial, i) => ({
      ...trial,
      state: withOrderAnswers(trial.state, i === 0 ? runsMade(20) : [runMade(null, 1)]),
    }));
    expect(leversOfTrials(base, trials).rows.map(({ name }) => name)).toEqual(["a"]);
  });

  it("are wanted where the order does not fit or where they are asked for", () => {
    const late = studied(dated(), runsMade(20, 0));
    const fits = studied(dated({ replications: 80 }), runsMade(80));
    const open = studied(dated({ replications: 20 }), runsMade(20, 19));
    const undated = studied(dated({ due: null }), runsMade(5));
    expect([late, open, fits, undated].map((study) => wantsLevers(study, false))).toEqual([true, true, false, false]);
    expect([fits, undated].map((study) => wantsLevers(study, true))).toEqual([true, false]);
  });
});

describe("what the levers find", () => {
  const good = (values: readonly number[]) => values.map((goodAtDue, i) => runMade(150, i + 1, { goodAtDue }));
  const costing = (study: OrderStudy, costs: readonly number[]): OrderStudy => ({
    ...study,
    uses: [summaryOf("resin", "kg", [1]), summaryOf("cost", "EUR", costs)],
    scenario: { ...study.scenario, costs: { currency: "EUR" } },
  });

  it("is the parts that lack in the run at the edge of the wanted chance, in the runs that all have", () => {
    // By hand: 80 % of 5 runs is 4, so that the second smallest number counts: 100 − 80. The last runs of the base do not count.
    const order = dated({ chance: 0.8 });
    const base = studied(order, good([90, 70, 80, 95, 99, 0, 0]));
    const after = studied(order, good([120, 60, 98, 130, 99]));
    const found = concludeLevers(base, [{ lever: lever("a", "stop"), study: after }]);
    expect([found.missing, found.rows[0]?.missing]).toEqual([20, 2]);
    const enough = studied(order, good([100, 60, 101, 130, 100]));
    expect(concludeLevers(base, [{ lever: lever("a", "stop"), study: enough }]).rows[0]?.missing).toBe(0);
    // A chance near 1 is that of the worst run.
    const sure = studied({ ...order, chance: 0.999 }, good([90, 70, 80]));
    expect(concludeLevers(sure, []).missing).toBe(30);
    const uncounted = studied(order, runsMade(5));
    expect(concludeLevers(uncounted, []).missing).toBeNull();
  });

  it("is sorted by effort without costs", () => {
    const base = studied(dated(), runsMade(20, 5));
    const changed = (["station", "later", "operator"] as const).map((effort, i) => ({
      lever: lever(effort, effort),
      study: studied(dated(), [...runsMade(20 - i, 9), ...runsMade(i, 0)]),
    }));
    const found = concludeLevers(base, changed);
    expect(found).toMatchObject({ by: "effort", currency: null, before: 0.25 });
    expect(found.rows.map(({ name, cost, median }) => [name, cost, median])).toEqual([
      ["later", null, 300],
      ["operator", null, 300],
      ["station", null, 300],
    ]);
  });

  it("is sorted by the difference of cost in common runs, and by effort where that is the same", () => {
    const base = costing(studied(dated(), runsMade(20, 10)), [10, 12, 14, 99]);
    const changed = [
      {
        lever: lever("dear", "stop"),
        study: costing(studied(dated(), runsMade(20)), [13, 14, 18]),
      },
      {
        lever: lever("cheap", "station"),
        study: costing(studied(dated(), runsMade(20)), [9, 10, 10]),
      },
      {
        lever: lever("same", "shift"),
        study: costing(studied(dated(), runsMade(20)), [10, 12, 14]),
      },
      {
        lever: lever("fewer", "later"),
        study: costing(studied(orderFor(oneStation, 60, { due: 200 }), runsMade(20)), [1, 1, 1]),
      },
    ];
    const found = concludeLevers(base, changed);
    expect([found.by, found.currency]).toEqual(["cost of the order", "EUR"]);
    // By hand: (3 + 2 + 4) / 3 and −(1 + 2 + 4) / 3; sd 1, t(0.975, 2) = 4.302653.
    expect(found.rows.map(({ name, cost }) => [name, cost?.mean ?? null])).toEqual([
      ["cheap", expect.closeTo(-7 / 3, 12)],
      ["fewer", null],
      ["same", 0],
      ["dear", 3],
    ]);
    expect(found.rows[3]?.cost?.halfWidth).toBeCloseTo(4.302653 / Math.sqrt(3), 5);
    expect(found.rows[3]?.cost?.count).toBe(3);
    const unpriced = { lever: lever("free", "stop"), study: studied(dated(), runsMade(20)) };
    expect(concludeLevers(base, [unpriced])).toMatchObject({ by: "effort", currency: null, rows: [{ cost: null }] });
  });

  it("leaves out a change that has no due date", () => {
    const base = studied(dated(), runsMade(20, 10));
    const undated = studied(dated({ due: null }), runsMade(20));
    expect(concludeLevers(base, [{ lever: lever("a", "stop"), study: undated }]).rows).toEqual([]);
  });
});

// What one change buys, by hand, with answers that are written down.
import { describe, expect, it } from "vitest";
import { concludeChanges } from "#analysis/changes/concludeChanges.ts";
import type { Lever } from "#analysis/changes/levers.ts";
import type { ChangesState, Trial } from "#analysis/changes/procedure.ts";
import type { Wish } from "#analysis/changes/wish.ts";
import { costStudy } from "#analysis/indicators/costStudy.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import type { CostSpec, Scenario } from "#scenario/scenario.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { answerMade, answersOf, baseMade, pathOf } from "../../support/madeAnswers.ts";

const hour = 3600;
const scenario: Scenario = { ...oneStation, run: { ...oneStation.run, length: hour, replications: 3 } };
const before = [100, 102, 104];
const base = baseMade(scenario, { "good parts per hour": before, "parts per hour": before });

function trialOf(name: string, answers: readonly ReplicationAnswer[], more: Partial<Wish> = {}): Trial {
  const wish: Wish = { name, alternatives: [], prospect: { unknown: true }, ...more };
  const lever: Lever = { wish, settings: [`${name}=1`], scenario };
  return { lever, scenario, answers };
}
function stateOf(trials: readonly Trial[], more: Partial<ChangesState> = {}): ChangesState {
  return { base, allowance: { run: scenario.run, isShort: false, replications: 99 }, trials, left: [], ...more };
}
const concluded = (trials: readonly Trial[], more: Partial<ChangesState> = {}) =>
  concludeChanges(stateOf(trials, more), scenario.run);

describe("what one change buys", () => {
  it("is ranked by its gain, with a verdict that holds for all changes at once", () => {
    const { rows, unit, currency, seconds, notRun } = concluded([
      trialOf("none", answersOf([100, 102, 104])),
      trialOf("open", answersOf([101, 108, 104])),
      trialOf("much", answersOf([110, 112, 115])),
      trialOf("loss", answersOf([90, 91, 94])),
    ]);
    expect({ unit, currency, seconds, notRun }).toEqual({
      unit: "good parts per hour",
      currency: null,
      seconds: hour,
      notRun: [],
    });
    expect(rows.map(({ name, verdict, gain }) => [name, verdict, gain.mean])).toEqual([
      ["much", "more", expect.closeTo(31 / 3, 12)],
      ["open", "no difference seen", expect.closeTo(7 / 3, 12)],
      ["none", "no difference seen", 0],
      ["loss", "less", expect.closeTo(-31 / 3, 12)],
    ]);
    const [much] = rows;
    expect(much?.good).toBeCloseTo(337 / 3, 12);
    expect(much?.relativeGain).toBeCloseTo(31 / 306, 12);
    // [C] t(0.975, 2) = 4.30265 alone and t(0.99375, 2) = 8.8602 for four changes; sd 1 / √3.
    expect(much?.gain.halfWidth).toBeCloseTo(4.30265 / 3, 4);
    expect(much?.simultaneousHalfWidth).toBeCloseTo(8.8602 / 3, 3);
  });

  it("is compared in the replications that the change has", () => {
    const { rows } = concluded([trialOf("a", answersOf([110, 112]))]);
    expect(rows[0]?.relativeGain).toBeCloseTo(10 / 101, 12);
    expect(rows[0]?.gain.count).toBe(2);
  });

  it("has no interval with one pair, unless nothing changes", () => {
    const verdictOf = (parts: number) => concluded([trialOf("a", answersOf([parts]))]).rows[0]?.verdict;
    expect([verdictOf(101), verdictOf(99), verdictOf(100)]).toEqual([
      "one pair, no interval",
      "one pair, no interval",
      "no difference seen",
    ]);
  });

  it("has no relative gain where the cell makes nothing", () => {
    const idle = baseMade(scenario, { "good parts per hour": [0, 0] });
    const { rows } = concluded([trialOf("a", answersOf([5, 5]))], { base: idle });
    expect(rows[0]?.relativeGain).toBeNull();
  });

  it("leaves out the run without all causes, and names what was not run", () => {
    const all = { cause: { name: "all", kind: "all" } } as const;
    const cooling = trialOf("cooling", [], { prospect: { steps: ["mold.cool"], share: 0.1 } }).lever!;
    const path = [pathOf("station 01", ["station 01"], [{ role: "mold.cool", share: 0.5 }])];
    const known = { ...base, bottleneck: path };
    const { rows, notRun } = concluded([trialOf("a", answersOf(before)), trialOf("all", answersOf(before), all)], {
      base: known,
      left: [cooling, trialOf("later", []).lever!, trialOf("rest", [], all).lever!],
    });
    expect(rows.map(({ name }) => name)).toEqual(["a"]);
    // By hand: 5 % of the time saved at the pace of two parts in 13 s over the 102 parts made.
    expect(notRun).toEqual([
      { name: "cooling", atMost: expect.closeTo((0.05 / 0.95) * (7200 / 13 / 102), 12) },
      { name: "later", atMost: null },
    ]);
  });

  it("counts the parts of the run with a calendar", () => {
    const calendar = { begins: "", clockChanges: [], off: [], operators: [], shifts: [], breaks: "stop" } as const;
    const day = { ...scenario, calendar, run: { ...scenario.run, length: 24 * hour } };
    const { unit, rows } = concluded([trialOf("a", answersOf([101, 103, 105]))], { base: { ...base, scenario: day } });
    expect([unit, rows[0]?.gain.mean, rows[0]?.good]).toEqual(["good parts in the run", 24, 24 * 103]);
  });
});

describe("the options that repeat a change", () => {
  const optionsOf = (run: Partial<Scenario["run"]>, given: Partial<Scenario["run"]>, count = 3) =>
    concludeChanges(
      stateOf([trialOf("a", answersOf(before.slice(0, count)))], {
        allowance: { run: { ...scenario.run, ...run }, isShort: false, replications: 9 },
      }),
      { ...scenario.run, ...given },
    ).rows[0]?.options;

  it("say what the run found by itself", () => {
    expect(optionsOf({}, {})).toBe('--set "a=1"');
    expect(optionsOf({ warmup: 300 }, { warmup: "auto" })).toBe('--set "a=1" --set "run.warmup=300 s"');
    expect(optionsOf({ length: 1800 }, {})).toBe('--set "a=1" --length "1800 s"');
    expect(optionsOf({}, { replications: 9 })).toBe('--set "a=1" --replications 3');
    expect(optionsOf({}, {}, 2)).toBe('--set "a=1" --replications 2');
    expect(optionsOf({}, { precision: 0.01 })).toBe('--set "a=1" --precision "1000 %"');
  });
});

describe("the cost of a change", () => {
  const costs: CostSpec = { currency: "EUR", machine: 36 / hour };
  const priced = { ...scenario, costs };
  const planned = { elementTimes: [{ station: null, element: "APT", seconds: hour }] } as const;
  const costing = (parts: readonly number[]) =>
    parts.map((good, i) => answerMade(i + 1, { "good parts per hour": good, "parts per hour": good }, planned));
  const costed = (of: Scenario, answers: readonly ReplicationAnswer[]) => ({
    ...base,
    scenario: priced,
    costs: costStudy(of, answers, []),
  });
  const pricedTrial = (parts: readonly number[], more: Partial<CostSpec> = {}): Trial => ({
    ...trialOf("a", costing(parts)),
    scenario: { ...priced, costs: { ...costs, ...more } },
  });

  it("is that of a thousand good parts over that before", () => {
    const known = costed(priced, costing([100, 100, 100]));
    const { rows, currency } = concluded([pricedTrial([120, 125, 150])], { base: known });
    expect(currency).toBe("EUR");
    // By hand: 36 an hour are 360 for a thousand of 100 parts; 300, 288 and 240 after the change.
    expect(rows[0]?.costPerThousand).toMatchObject({ count: 3, mean: expect.closeTo(-84, 9) });
    // Of the replications that have good parts on both sides.
    const { rows: some } = concluded([pricedTrial([120, 0, 150])], { base: known });
    expect(some[0]?.costPerThousand).toMatchObject({ count: 2, mean: expect.closeTo(-90, 9) });
    expect(concluded([pricedTrial([0, 0, 0])], { base: known }).rows[0]?.costPerThousand).toBeNull();
  });

  it("is none without rates, or where the items differ", () => {
    const known = costed(priced, costing([100, 100, 100]));
    const costOf = (trial: Trial, more: Partial<ChangesState["base"]> = {}) =>
      concluded([trial], { base: { ...known, ...more } }).rows[0]?.costPerThousand;
    expect(costOf(pricedTrial([120, 125, 150], { heating: 1 }))).toBeNull();
    expect(costOf(trialOf("a", costing([120, 125, 150])))).toBeNull();
    expect(costOf(pricedTrial([120, 125, 150]), { costs: null })).toBeNull();
  });

  it("is over the shorter run of the cell itself where the changed cells run shorter", () => {
    const own: Trial = { lever: null, scenario: priced, answers: costing([90, 90]) };
    const { rows } = concluded([own, pricedTrial([100, 100])], { base: costed(priced, costing([100, 100, 100])) });
    expect(rows[0]?.costPerThousand?.mean).toBeCloseTo(-40, 9);
  });
});

describe("what sets the pace after a change", () => {
  const shares = (station: number, screw: number): Partial<ReplicationAnswer> => ({
    criticalShares: [
      { resource: "station 01", step: "cool", role: "mold.cool", owner: "station 01", share: station / 2, tied: 0 },
      {
        resource: "plasticator",
        step: "recharge",
        role: "screw.recharge",
        owner: "plasticator",
        share: screw,
        tied: 0,
      },
      { resource: "station 01", step: "close", role: "mold.close", owner: "station 01", share: station / 2, tied: 0 },
    ],
  });
  const paceOf = (...all: readonly Partial<ReplicationAnswer>[]) =>
    concluded([
      trialOf(
        "a",
        all.map((more, i) => answerMade(i + 1, { "good parts per hour": 100 }, more)),
      ),
    ]).rows[0]?.paceSetter;

  it("has the largest share of the critical path over all replications", () => {
    expect(paceOf(shares(0.6, 0.4), shares(0.6, 0.4))).toEqual({ group: "stations", resources: ["station 01"] });
    expect(paceOf(shares(0.6, 0.4), shares(0.2, 0.8))).toEqual({ group: "plasticator", resources: ["plasticator"] });
    expect(paceOf({}, {})).toBeNull();
    // A shift of the valve belongs to whom it keeps waiting.
    const shift = { resource: "valve", step: "to port", role: "valve.toPort", owner: "plasticator", tied: 0 } as const;
    const [cool, recharge] = shares(1, 0.3).criticalShares!;
    const owned = { criticalShares: [cool!, recharge!, { ...shift, share: 0.3 }] };
    expect(paceOf(owned)?.group).toBe("plasticator");
  });
});

// The procedure of the changes, with answers that are written down: what runs first, and how often.
import { describe, expect, it } from "vitest";
import type { Base } from "#analysis/changes/base.ts";
import type { Allowance } from "#analysis/changes/effort.ts";
import type { Lever } from "#analysis/changes/levers.ts";
import {
  beginChanges,
  changedTrials,
  changesWanted,
  gainOf,
  valuesBefore,
  withTrialAnswers,
  type ChangesState,
  type Trial,
} from "#analysis/changes/procedure.ts";
import type { Wish } from "#analysis/changes/wish.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { answersOf, baseMade, pathOf } from "../../support/madeAnswers.ts";

const scenario = { ...oneStation, run: { ...oneStation.run, length: 3600, replications: 20 } };
/** 20 replications of 100, 101 … 119 good parts. */
const values = Array.from({ length: 20 }, (_, i) => 100 + i);
const base: Base = baseMade(scenario, { "good parts per hour": values, "parts per hour": values });

const wishOf = (name: string): Wish => ({ name, alternatives: [[name]], prospect: { unknown: true } });
const trialOf = (name: string, answers: readonly ReplicationAnswer[] = []): Trial => {
  const lever: Lever = { wish: wishOf(name), settings: [name], scenario };
  return { lever, scenario, answers };
};
function stateOf(trials: readonly Trial[], allowed: Partial<Allowance> = {}): ChangesState {
  const allowance: Allowance = { run: scenario.run, isShort: false, replications: 1000, ...allowed };
  return { base, allowance, trials, left: [] };
}
const wanted = (state: ChangesState) =>
  changesWanted(state).map(({ trial, tasks }) => [trial, tasks.map(({ replication }) => replication)]);
const upTo = (from: number, until: number) => Array.from({ length: until - from + 1 }, (_, i) => from + i);
/** Gains of four and more replications over the base: by so many parts, and up and down by a spread. */
const gaining = (gain: number, spread: number, count = 4) =>
  answersOf(upTo(0, count - 1).map((i) => 100 + i + gain + (i % 2 === 0 ? spread : -spread)));

describe("the replications of the changes", () => {
  it("are all at once where that is short", () => {
    const state = stateOf([trialOf("a"), trialOf("b")], { replications: 40 });
    expect(wanted(state)).toEqual([
      [0, upTo(1, 20)],
      [1, upTo(1, 20)],
    ]);
    expect(changesWanted(state)[0]?.tasks[0]).toEqual({ replication: 1, scale: null, brief: true });
  });

  it("are four of each change first where all would take too long", () => {
    expect(wanted(stateOf([trialOf("a"), trialOf("b")], { replications: 39 }))).toEqual([
      [0, [1, 2, 3, 4]],
      [1, [1, 2, 3, 4]],
    ]);
    const few = { run: { ...scenario.run, replications: 3 }, replications: 5 };
    expect(wanted(stateOf([trialOf("a"), trialOf("b")], few))).toEqual([
      [0, [1, 2, 3]],
      [1, [1, 2, 3]],
    ]);
  });

  it("go on from what a change has", () => {
    const state = stateOf([trialOf("a", gaining(9, 0, 3)), trialOf("b", gaining(5, 0))], { replications: 39 });
    expect(wanted(state)).toEqual([[0, [4]]]);
  });

  it("are doubled where the gain may be none, up to those of the run", () => {
    const many = { replications: 39 };
    expect(wanted(stateOf([trialOf("a", gaining(1, 9)), trialOf("b", gaining(90, 1))], many))).toEqual([
      [0, [5, 6, 7, 8]],
    ]);
    expect(wanted(stateOf([trialOf("a", gaining(0, 0.1)), trialOf("b", gaining(90, 0.1))], many))).toHaveLength(1);
    const later = stateOf([trialOf("a", gaining(0, 9, 16)), trialOf("b", gaining(90, 1))], many);
    expect(wanted(later)).toEqual([[0, upTo(17, 20)]]);
    expect(wanted(stateOf([trialOf("a", gaining(0, 9, 20)), trialOf("b", gaining(90, 1))], many))).toEqual([]);
  });

  it("are doubled where two gains may change places, the larger one first", () => {
    // Both gains are clear of 0; their half widths are about 4.2 × 2.3 / 2.
    const state = stateOf([trialOf("a", gaining(50, 2)), trialOf("b", gaining(54, 2)), trialOf("c", gaining(90, 1))], {
      replications: 59,
    });
    expect(wanted(state)).toEqual([
      [1, [5, 6, 7, 8]],
      [0, [5, 6, 7, 8]],
    ]);
  });

  it("are no more where every gain and rank is clear, or exactly none", () => {
    const many = { replications: 39 };
    expect(wanted(stateOf([trialOf("a", gaining(50, 1)), trialOf("b", gaining(90, 1))], many))).toEqual([]);
    expect(wanted(stateOf([trialOf("a", gaining(0, 0)), trialOf("b", gaining(90, 1))], many))).toEqual([]);
    expect(wanted(stateOf([trialOf("a", gaining(0, 0)), trialOf("b", gaining(0, 0))], many))).toEqual([]);
  });

  it("stay within what all changes may take, the most promising first", () => {
    const trials = [trialOf("a", gaining(1, 9)), trialOf("b", gaining(2, 9)), trialOf("c", gaining(3, 9))];
    expect(wanted(stateOf(trials, { replications: 20 }))).toEqual([
      [2, [5, 6, 7, 8]],
      [1, [5, 6, 7, 8]],
    ]);
    expect(wanted(stateOf(trials, { replications: 15 }))).toEqual([]);
  });

  it("are no more of a cell that comes to rest, and it is no result", () => {
    const [first] = gaining(0, 9);
    const stuck = { ...first!, standstill: { kind: "deadlock", seconds: 5, waiting: [] } };
    const state = stateOf([trialOf("a", [stuck]), trialOf("b"), trialOf("c", gaining(9, 0))], { replications: 59 });
    expect(wanted(state)).toEqual([[1, [1, 2, 3, 4]]]);
    expect(changedTrials(state).map(({ lever }) => lever.wish.name)).toEqual(["c"]);
  });
});

describe("a gain", () => {
  it("is that over the cell in the same replications", () => {
    const state = stateOf([trialOf("a", gaining(7, 1))]);
    const [trial] = changedTrials(state);
    // By hand: gains of 8, 6, 8, 6.
    expect(gainOf(trial!, state, 1)).toMatchObject({ count: 4, mean: 7 });
    expect(gainOf(trial!, state, 1).sd).toBeCloseTo(Math.sqrt(4 / 3), 9);
    expect(gainOf(trial!, state, 5).simultaneousHalfWidth).toBeGreaterThan(gainOf(trial!, state, 1).halfWidth!);
  });

  it("is over the shorter runs of the cell itself where the changed cells run shorter", () => {
    const own: Trial = { lever: null, scenario, answers: answersOf([50, 60, 70, 80]) };
    const state = stateOf([own, trialOf("a", answersOf([51, 62, 73, 84]))]);
    expect(valuesBefore(state, "good parts per hour")).toEqual([50, 60, 70, 80]);
    const [trial] = changedTrials(state);
    expect(trial?.lever.wish.name).toBe("a");
    expect(gainOf(trial!, state, 1).mean).toBe(2.5);
  });

  it("is one of the whole run with a calendar", () => {
    const shifts = {
      begins: "2026-11-30 06:00",
      clockChanges: [],
      off: [],
      operators: [],
      shifts: [],
      breaks: "run on",
    };
    const week = { ...scenario, calendar: shifts as never, run: { ...scenario.run, length: 36_000 } };
    const state = { ...stateOf([trialOf("a", gaining(7, 0))]), base: { ...base, scenario: week } };
    const [trial] = changedTrials(state);
    expect(gainOf(trial!, state, 1).mean).toBeCloseTo(70, 9);
  });
});

describe("the levers that run", () => {
  const half = { ...scenario, stations: [{ ...scenario.stations[0]!, cavities: 4 }] };
  const vary = (settings: readonly string[]) =>
    settings.length === 0 ? scenario : settings.some((each) => each.includes("delivery")) ? undefined : half;

  it("are the most promising ones that the effort allows, without and with short runs", () => {
    const all = beginChanges(base, vary, "full");
    expect(all.left).toEqual([]);
    expect(all.trials.every(({ lever, answers }) => lever !== null && answers.length === 0)).toBe(true);
    const names = all.trials.map(({ lever }) => lever!.wish.name);
    expect(names).toContain("cooling −5 %");
    expect(names).not.toContain("screw 10 % faster");
    // A cell of a million shots an hour has room for a few replications only.
    const busy = baseMade(
      { ...scenario, run: { ...scenario.run, replications: 2 } },
      {
        "shots per hour": [1e7, 1e7],
        "parts per hour": [2e7, 2e7],
        "good parts per hour": [2e7, 2e7],
      },
    );
    const short = beginChanges(busy, vary, "few");
    expect(short.allowance.isShort).toBe(true);
    expect(short.trials[0]?.lever).toBeNull();
    expect(short.trials[0]?.scenario.run).toEqual(short.allowance.run);
    expect(short.trials.slice(1).every(({ scenario: { run } }) => run.length === short.allowance.run.length)).toBe(
      true,
    );
    const count = Math.floor(short.allowance.replications / 4) - 1;
    expect(short.trials).toHaveLength(1 + Math.min(count, names.length));
    expect(short.left).toHaveLength(Math.max(0, names.length - count));
  });

  it("share the effort by replications where the run has fewer than four", () => {
    const stations = ["a", "b", "c", "d", "e", "f", "g", "h"].map((name, i) => ({
      ...scenario.stations[0]!,
      name,
      cavities: i + 1,
    }));
    const different = { ...scenario, stations, run: { ...scenario.run, replications: 3 } };
    const shorter = (settings: readonly string[]) => {
      const names = settings.map((each) => /^stations\.(\w)\.steps/u.exec(each)?.[1]);
      if (names.includes(undefined)) return undefined;
      const close = { kind: "fixed", value: settings.join().length } as const;
      return {
        ...different,
        stations: stations.map((each) => (names.includes(each.name) ? { ...each, close } : each)),
      };
    };
    // By hand: 49,375 shots take 40 ms; (1.3 s − 1.6 × 120 ms) / 40 ms are 27 replications, three for each of nine changes.
    const state = beginChanges(baseMade(different, { "shots per hour": [49_375, 49_375, 49_375] }), shorter, "few");
    expect([state.allowance.replications, state.trials.length, state.left.length]).toEqual([27, 9, 7]);
    // The steps that set the pace come first.
    const bottleneck = [
      pathOf("e", ["e"], [{ role: "mold.remove", share: 0.5 }]),
      pathOf("f", ["f"], [{ role: "mold.cool", share: 0.4 }]),
    ];
    const promising = beginChanges({ ...state.base, bottleneck }, shorter, "few");
    expect(promising.trials.slice(0, 2).map(({ lever }) => lever?.wish.name)).toEqual([
      "removal −10 % at e",
      "cooling −5 % at f",
    ]);
    // By hand: 2 million shots in 1.6005 s allow 3 × 1.2 replications of an hour, or 56 × 0.9998 of a short run, 4 for each of 14: the cell itself and 13 changes.
    const busy = baseMade(different, { "shots per hour": [2e6, 2e6, 2e6] });
    const short = beginChanges(busy, shorter, "few");
    expect([short.allowance.isShort, short.trials.length, short.left.length]).toEqual([true, 14, 3]);
    const few = { ...busy, replications: 1 };
    expect(beginChanges(few, shorter, "few").trials.length).toBe(14);
  });

  it("get their answers by their place", () => {
    const state = stateOf([trialOf("a"), trialOf("b", gaining(1, 0, 2))]);
    const next = withTrialAnswers(state, 1, gaining(2, 0, 1));
    expect(next.trials.map(({ answers }) => answers.length)).toEqual([0, 3]);
  });
});

// The parts lost by cause, by hand, with answers that are written down.
import { describe, expect, it } from "vitest";
import { concludeLost } from "#analysis/changes/concludeLost.ts";
import { idealParts, plannedTime } from "#analysis/changes/idealParts.ts";
import type { Lever } from "#analysis/changes/levers.ts";
import type { ChangesState, Trial } from "#analysis/changes/procedure.ts";
import type { Wish } from "#analysis/changes/wish.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import type { CalendarSpec, Scenario } from "#scenario/scenario.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { answerMade, answersOf, baseMade } from "../../support/madeAnswers.ts";

/** One station: two parts in 13 s, 553.846 in an hour. */
const scenario: Scenario = { ...oneStation, run: { ...oneStation.run, length: 4200, warmup: 600 } };
const ideal = 7200 / 13;

function leverOf(cause: Wish["cause"], name = cause?.name ?? "faster"): Lever {
  const wish: Wish = { name, alternatives: [], prospect: { unknown: true }, ...(cause ? { cause } : {}) };
  return { wish, settings: [], scenario };
}
const trialOf = (cause: Wish["cause"], parts: readonly number[]): Trial => ({
  lever: leverOf(cause),
  scenario,
  answers: answersOf(parts),
});
const jam = { name: "jam", kind: "stop" } as const;
const heater = { name: "heater", kind: "stop" } as const;
const all = { name: "all", kind: "all" } as const;

function stateOf(base: ChangesState["base"], trials: readonly Trial[], left: readonly Lever[] = []): ChangesState {
  return { base, allowance: { run: scenario.run, isShort: false, replications: 100 }, trials, left };
}
const made = (parts: readonly number[], more: Readonly<Record<string, readonly number[]>> = {}) =>
  baseMade(scenario, { "good parts per hour": parts, "parts per hour": parts, ...more });
const rowsOf = (state: ChangesState) =>
  concludeLost(state)?.rows.map(({ cause, kind, parts }) => [cause, kind, Number(parts.toFixed(9))]);

describe("lost parts", () => {
  it("are those that the cell makes without each cause, and what remains", () => {
    const lost = concludeLost(stateOf(made([500, 510]), [trialOf(jam, [520, 540]), trialOf(undefined, [600, 600])]));
    expect(lost).toMatchObject({ unit: "parts per hour", plannedSeconds: 3600, made: 505, notRun: [] });
    expect(lost?.ideal).toBeCloseTo(ideal, 9);
    // By hand: gains of 20 and 30; t(0.975, 1) = 12.7062 times 7.0711 / √2.
    const [row, rest, ...others] = lost!.rows;
    expect(row).toMatchObject({ cause: "jam", kind: "stop", parts: 25 });
    expect(row?.halfWidth).toBeCloseTo(12.7062 * 5, 2);
    expect(row?.share).toBeCloseTo(25 / (ideal - 505), 12);
    expect(rest).toMatchObject({ cause: "varying times and waits", kind: "variation" });
    expect(rest?.parts).toBeCloseTo(ideal - 505 - 25, 9);
    // Without the cause the cell makes 520 and 540 parts.
    expect(rest?.halfWidth).toBeCloseTo(12.7062 * 10, 2);
    expect(others).toEqual([]);
  });

  it("have what several causes lose together, from the cell without all of them", () => {
    const trials = [trialOf(heater, [503, 505]), trialOf(jam, [520, 520]), trialOf(all, [530, 532])];
    // By hand: 4 and 20 one by one, 31 − 24 together.
    expect(rowsOf(stateOf(made([500, 500]), trials))).toEqual([
      ["jam", "stop", 20],
      ["heater", "stop", 4],
      ["varying times and waits", "variation", Number((ideal - 531).toFixed(9))],
      ["causes acting together", "together", 7],
    ]);
    const { rows } = concludeLost(stateOf(made([500, 500]), trials))!;
    // Together 7 and 7: 30 − 23 and 32 − 25.
    expect(rows[3]?.halfWidth).toBe(0);
    expect(rows[2]?.halfWidth).toBeCloseTo(12.7062, 3);
  });

  it("count as if each cause acted alone where the cell was not run without all of them", () => {
    const trials = [trialOf(jam, [520, 520, 520]), trialOf(heater, [504, 504])];
    const [, , rest, together] = concludeLost(stateOf(made([500, 500, 500]), trials))!.rows;
    expect(rest?.parts).toBeCloseTo(ideal - 524, 9);
    expect(together).toMatchObject({ kind: "together", parts: 0 });
  });

  it("name the causes that were not run, which are in the rest", () => {
    const left = [leverOf(heater), leverOf(all), leverOf(undefined)];
    const lost = concludeLost(
      stateOf(made([500, 500]), [trialOf(jam, [510, 510]), trialOf({ ...jam, name: "belt" }, [501, 501])], left),
    );
    expect(lost?.notRun).toEqual(["heater"]);
    expect(lost?.rows.at(-1)?.cause).toBe("heater, causes acting together");
    // Causes that were not run are causes as well.
    expect(concludeLost(stateOf(made([500, 500]), [], left))?.notRun).toEqual(["heater"]);
  });

  it("have rejects by their reasons", () => {
    const base = baseMade(scenario, {
      "good parts per hour": [440, 460],
      "parts per hour": [500, 500],
      "rejects: weight": [10, 20],
      "rejects: restart": [50, 20],
    });
    expect(rowsOf(stateOf(base, []))).toEqual([
      ["rejects: restart", "reject", 35],
      ["rejects: weight", "reject", 15],
      ["varying times and waits", "variation", Number((ideal - 500).toFixed(9))],
    ]);
  });

  it("have both causes and rejects", () => {
    const base = baseMade(scenario, {
      "good parts per hour": [490, 490],
      "parts per hour": [500, 500],
      "rejects: weight": [10, 10],
    });
    const kindsOf = (trials: readonly Trial[], left: readonly Lever[] = []) =>
      concludeLost(stateOf(base, trials, left))?.rows.map(({ kind }) => kind);
    expect(kindsOf([trialOf(jam, [520, 520])])).toEqual(["stop", "reject", "variation"]);
    expect(kindsOf([], [leverOf(jam)])).toEqual(["reject", "variation"]);
  });

  it("have parts on their way to the last server", () => {
    const served = { ...scenario, takeaway: [] };
    const base = baseMade(served, {
      "good parts per hour": [440, 460],
      "parts per hour": [500, 500],
      "rejects: weight": [10, 20],
    });
    expect(rowsOf(stateOf(base, []))?.at(-1)).toEqual(["parts on their way", "takeaway", 500 - 15 - 450]);
  });

  it("have what rare stops lose at their known rate beyond those that occurred", () => {
    const base = made([500, 510]);
    const known = base.measures.map((each) =>
      each.resource === "cell" && each.measure === "good parts per hour"
        ? { ...each, interval: { ...meanInterval([500, 510]), mean: 497 } }
        : each,
    );
    const lost = concludeLost(stateOf({ ...base, measures: known }, [trialOf(jam, [505, 515])]));
    expect(lost?.made).toBe(497);
    expect(lost?.rows.map(({ kind, parts }) => [kind, parts]).slice(0, 2)).toEqual([
      ["rare", 8],
      ["stop", 5],
    ]);
    expect(lost?.rows[0]?.halfWidth).toBeNull();
    expect(lost?.rows.reduce((sum, { parts }) => sum + parts, 0)).toBeCloseTo(ideal - 497, 9);
  });

  it("have no shares where nothing is lost", () => {
    const [row] = concludeLost(stateOf(made([ideal, ideal]), [trialOf(jam, [ideal + 5, ideal + 5])]))!.rows;
    expect(row?.parts).toBeCloseTo(5, 9);
    expect(row?.share).toBeNull();
  });

  it("are not told of a cell that has no cause and no calendar", () => {
    expect(concludeLost(stateOf(made([500, 500]), [trialOf(undefined, [600, 600])]))).toBeNull();
  });
});

describe("the planned time", () => {
  const absence = (from: number, until: number, why: "off shift" | "on break") => ({ from, until, why });
  const calendar: CalendarSpec = {
    begins: "2026-11-30 06:00",
    clockChanges: [],
    off: [absence(200, 700, "off shift"), absence(900, 950, "on break"), absence(4000, 9000, "off shift")],
    operators: [],
    shifts: [],
    breaks: "stop",
  };

  it("is that of the work shifts within the observed time, with their breaks", () => {
    // By hand: from 600 to 4,200 s less 100 s and 200 s.
    expect(plannedTime({ ...scenario, calendar })).toBe(3300);
    expect(plannedTime(scenario)).toBe(3600);
  });

  it("has the parts of the ideal cycle, with a calendar of the whole run", () => {
    expect(idealParts(baseMade(scenario, { "good parts per hour": [1] }))).toBeCloseTo(ideal, 9);
    const planned = { ...scenario, calendar };
    const base = baseMade(planned, { "good parts per hour": [480, 500], "parts per hour": [480, 500] });
    expect(idealParts(base)).toBeCloseTo((3300 * 2) / 13, 9);
    // The cell with a calendar has lost parts even without a cause; parts are those of the observed hour.
    expect(concludeLost(stateOf(base, []))).toMatchObject({
      unit: "parts in the run",
      plannedSeconds: 3300,
      made: 490,
    });
  });
});

describe("a cell with one cause and stops of a shorter run", () => {
  it("is compared with itself over that time", () => {
    const own: Trial = {
      lever: null,
      scenario,
      answers: [400, 420].map((parts, i) => answerMade(i + 1, { "parts per hour": parts })),
    };
    const lost = concludeLost(stateOf(made([500, 500]), [own, trialOf(jam, [410, 440])]));
    expect(lost?.rows[0]).toMatchObject({ cause: "jam", parts: 15 });
  });
});

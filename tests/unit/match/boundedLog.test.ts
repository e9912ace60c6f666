// A long log in bounded room: what is kept of it, and that its measures are those of all its rows.
import alea from "seedrandom/lib/alea.js";
import { describe, expect, it } from "vitest";
import { allShots, areSeenTogether, gapsOf, shotsOf } from "#analysis/match/deliveries.ts";
import { LineLog, mostStretches } from "#analysis/match/lineLog.ts";
import { matchLog, readingOf } from "#analysis/match/matchLog.ts";
import { cycleTimes, meansOf, shares, throughput } from "#analysis/match/measures.ts";
import { modelLine } from "#analysis/match/modelLine.ts";
import { TracedPart } from "#analysis/match/tracedPart.ts";
import { matchTable } from "#report/match/matchTable.ts";
import { verdictOf } from "#analysis/match/verdict.ts";
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { matchAnswer } from "#report/match/matchAnswer.ts";
import { scenarioOf, cellText } from "../../support/cellScenario.ts";

const record = (station: string, step: string, start: number, seconds: number, more: Partial<StepRecord> = {}) =>
  ({ station, step, kind: "step", start, seconds, line: 1, run: "", ...more }) satisfies StepRecord;

/** Two stations of other cycles, and a rare stop. */
function records(cycles: number, breakEvery = Infinity): readonly StepRecord[] {
  const next = alea("bounded");
  const all: StepRecord[] = [];
  for (const [station, cycle] of [
    ["A", 14],
    ["B", 11],
  ] as const) {
    let time = 0;
    for (let i = 0; i < cycles; i++) {
      if (i > 0 && i % breakEvery === 0) time += 8000;
      const drop = 1 + next() / 10;
      all.push(record(station, "drop", time, drop), record(station, "cool", time + 2, 7));
      if (i % 97 === 0) all.push(record(station, "wiped", time + 9, 3, { kind: "stop" }));
      time += cycle + next();
    }
  }
  return all.toSorted((one, other) => one.start! - other.start!);
}

function lineOf(all: readonly StepRecord[], kept?: number): LineLog {
  const line = new LineLog(kept);
  for (const each of all) line.take(each);
  return line;
}

const anchors = ["A", "B"].map((station) => ({ station, inLog: "drop", inModel: "drop" }));
const kept = 200;

describe.each([Infinity, 500])("a line of 5,000 cycles with a break after every %d", (breakEvery) => {
  const all = records(5000, breakEvery);
  const [whole, coarse] = [lineOf(all), lineOf(all, kept)];
  const [exact, bounded] = [whole.stretches(), coarse.stretches()];

  it("keeps so many cells of a station and step, and one more in each stretch", () => {
    expect(whole.cells).toBe(all.length);
    expect(bounded).toHaveLength(exact.length);
    for (const key of exact[0]!.doings.keys()) {
      const cells = bounded.map(({ doings }) => doings.get(key)?.cells ?? 0).reduce((sum, each) => sum + each);
      expect(cells).toBeLessThanOrEqual(kept + bounded.length);
    }
    expect(coarse.cells).toBeLessThanOrEqual(6 * (kept + bounded.length));
    const drops = bounded.flatMap((stretch) => shotsOf(stretch, "A", "drop") ?? []);
    expect(drops.reduce((sum, { count }) => sum + count, 0)).toBe(5000);
    for (const drop of drops) expect(drop.gaps().length).toBeLessThanOrEqual(drop.cells);
  });

  it("has the means of all its rows", () => {
    const of = (stretches: typeof exact) => [
      meansOf(stretches, stretches, (stretch) => shotsOf(stretch, "A", "drop")?.durations() ?? []),
      meansOf(stretches, stretches, cycleTimes(anchors[0]!)),
      throughput(stretches, stretches, anchors),
    ];
    const [exactly, boundedly] = [of(exact), of(bounded)];
    exactly.forEach(({ log, model }, i) => {
      const found = boundedly[i]!;
      expect(Math.abs(found.log!.mean / log!.mean - 1)).toBeLessThan(1e-12);
      expect(found.log!.error / log!.error).toBeLessThan(2);
      if (model) expect(Math.abs(found.model!.mean / model.mean - 1)).toBeLessThan(1e-12);
    });
  });

  it("has the shares of time and the spread of all its rows", () => {
    for (const name of ["drop", "cool", "wiped"]) {
      const of = (stretches: typeof exact) => shares(stretches, [], (doing) => doing.name === name).log!.mean;
      expect(Math.abs(of(bounded) / of(exact) - 1)).toBeLessThan(0.01);
    }
    const middle = (stretches: typeof exact): number => {
      const gaps = stretches
        .flatMap((stretch) => shotsOf(stretch, "B", "drop")?.gaps() ?? [])
        .toSorted((a, b) => a - b);
      return gaps[Math.floor(gaps.length / 2)]!;
    };
    expect(Math.abs(middle(bounded) - middle(exact))).toBeLessThan(0.15);
  });
});

describe("a short line", () => {
  it("keeps each time by itself", () => {
    const all = records(60);
    const [exact, bounded] = [lineOf(all).stretches(), lineOf(all, kept).stretches()];
    expect(shares(bounded, [], () => true)).toEqual(shares(exact, [], () => true));
    expect(gapsOf(allShots(bounded[0]!, anchors, "inLog"))).toEqual(gapsOf(allShots(exact[0]!, anchors, "inLog")));
    expect(areSeenTogether(bounded, anchors)).toBe(true);
  });

  it("goes on after a stop, also in a cell of several", () => {
    const line = new LineLog(0);
    for (const each of [
      record("A", "cool", 0, 5),
      record("A", "cool", 10, 5),
      record("A", "cool", 20, 3),
      record("A", "wiped", 23, 4, { kind: "stop" }),
      record("A", "cool", 27, 2),
    ])
      line.take(each);
    const cool = shotsOf(line.stretches()[0]!, "A", "cool")!;
    expect([cool.count, cool.cells, cool.durations().reduce((sum, cell) => sum + cell.sum, 0)]).toEqual([3, 1, 15]);
    expect(cool.marks()).toEqual([
      { time: 0, count: 1 },
      { time: 20, count: 2 },
    ]);
  });
});

describe("a log of too much", () => {
  it("counts the rows of stretches above the limit", () => {
    const line = new LineLog();
    for (let i = 0; i < mostStretches + 3; i++) line.take(record("A", "drop", i * 1e4, 1));
    expect([line.stretches().length, line.late]).toEqual([mostStretches, 3]);
  });

  it("has no more stations and steps than a fit takes", () => {
    const line = new LineLog();
    for (let i = 0; i < 501; i++) line.take(record("A", `part ${i}`, i, 1));
    expect([line.isTooWide, line.cells]).toEqual([true, 500]);
  });
});

describe("the part of a log whose times are traced", () => {
  it("is a short log as it is", () => {
    const [part, all] = [new TracedPart(1000), records(100)];
    for (const each of all) part.take(each);
    expect([part.isWhole, part.rows]).toEqual([true, all.length]);
  });

  it("has at most so many rows, all of its first time, whatever the order of stations", () => {
    const all = records(5000);
    for (const rows of [all, all.toSorted((one, other) => (one.station < other.station ? -1 : 1))]) {
      const part = new TracedPart(1000);
      for (const each of rows) part.take(each);
      const [stretch, ...others] = part.stretches();
      expect([part.isWhole, others]).toEqual([false, []]);
      expect(part.rows).toBeGreaterThan(200);
      expect(part.rows).toBeLessThanOrEqual(1000);
      const shots = anchors.map(({ station }) => shotsOf(stretch!, station, "drop")!);
      for (const { first, last, count } of shots) {
        const inTime = all.filter(
          ({ station, step, start = 0 }) => station === shots[0]!.station && step === "drop" && start <= shots[0]!.last,
        );
        expect(first).toBe(0);
        expect(last).toBeGreaterThan(1000);
        expect(Math.abs(last - shots[0]!.last)).toBeLessThan(30);
        if (count === shots[0]!.count) expect(count).toBe(inTime.length);
      }
    }
  });
});

describe("a match of a long log", () => {
  const scenario = scenarioOf(cellText(2).replace("8 s,", "{ normal: [8 s, 0.2 s] },"));
  const line = modelLine({ plan: planCell(scenario), replication: 9, from: 600, until: 600 + 4 * 3600 })!;
  const rows = [...line.doings.values()]
    .flatMap((doing) =>
      doing.spans().map(({ from, seconds }) => record(doing.station, doing.name, from, seconds, { kind: doing.kind })),
    )
    .toSorted((one, other) => one.start + one.seconds - other.start - other.seconds);
  const found = async (most?: number) => {
    const reading = { ...readingOf(scenario, new Map()), part: new TracedPart(most) };
    for (const row of rows) {
      reading.line.take(row);
      reading.part.take(row);
    }
    const match = await matchLog(scenario, reading, 0.05, async () => undefined);
    return { match, verdict: verdictOf(match), scenario, words: [] };
  };

  it("says which part was traced, and has all other values of the whole log", async () => {
    const [whole, part] = [await found(), await found(3000)];
    expect(whole.match.tracedHours).toBeUndefined();
    expect(part.match.tracedHours).toBeLessThan(2);
    const hours = ({ match }: typeof whole) => {
      const { columns, rows: cells } = matchTable(match);
      return cells[0]![columns.findIndex(({ name }) => name === "traced_hours")];
    };
    expect([hours(whole), hours(part)]).toEqual([whole.match.hours, part.match.tracedHours]);
    expect(part.match.comparisons.map(({ log, result }) => [log, result])).toEqual(
      whole.match.comparisons.map(({ log, result }) => [log, result]),
    );
    expect(part.match.spreads).toEqual(whole.match.spreads);
    for (const { verdict, match } of [whole, part]) {
      expect(verdict).toMatchObject({ agreement: "agrees", blame: "none" });
      expect(match.traced).toMatchObject({ agreement: "agrees" });
    }
    const words = matchAnswer(part, 80).replaceAll(/\s+/gu, " ");
    expect(words).toMatch(
      /With the log's own step times of its first [\d.]+ (?:h|min) of 4 h the model's output over them differs by/u,
    );
    expect(words).toContain("the trace-driven run takes the first part; all other values are of the whole log");
    expect(matchAnswer(whole, 80)).not.toContain("of its first");
  });
});

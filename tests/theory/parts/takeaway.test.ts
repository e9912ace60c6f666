// Holds takeaway and operators of a cell to the theory of production lines with blocking and to machine repair models.
import { describe, expect, it } from "vitest";
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { massBalance } from "#analysis/replication/massBalance.ts";
import { measuresOf } from "#analysis/replication/measures.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

/** A mold that only closes and never waits for melt: the first machine of a line. */
function line(close: string, takeaway: string): Scenario {
  return scenarioOf(
    cellText(1, `takeaway: ${takeaway}`),
    "delivery={ kind: reciprocating-screw, recharge: 0 s, drop: 0 s }",
    "valve.shift=0 s",
    "stations.cavities=1",
    `stations.steps={ close: ${close}, blow: 0 s, cool: 0 s, vent: 0 s, open: 0 s, remove: { time: 0 s } }`,
    "run.length=20 h",
    "run.warmup=30 min",
  );
}

const exponential = "{ exponential: 10 s }";

/** Good parts relative to the output of a single machine. */
function throughput(scenario: Scenario): Interval {
  const plan = planCell(scenario);
  return meanInterval(
    Array.from({ length: 24 }, (_, i) => {
      const record = runCell(plan, { replication: i + 1 });
      return (record.takeaway!.good * 10e6) / (record.untilTick - record.fromTick);
    }),
  );
}

function expectTheory(found: Interval, theory: number): void {
  expect(found.halfWidth).toBeLessThan(0.02 * theory);
  expect(Math.abs(found.mean - theory)).toBeLessThan(1.5 * found.halfWidth!);
}

describe("a line of exponential machines, of which the mold is the first", () => {
  // Hunt, Sequential arrays of waiting lines, Operations Research 4 (1956) 674; Hillier and Boling, Finite queues in series,
  // Operations Research 15 (1967) 286: two machines with a buffer b make (b + 2)/(b + 3), three without a buffer .5641 [M+C].
  it.each([0, 1, 2, 5])("makes (b + 2)/(b + 3) with two machines and a buffer of %i", (buffer) => {
    expectTheory(
      throughput(line(exponential, `{ trim: { time: ${exponential}, buffer: ${buffer} } }`)),
      (buffer + 2) / (buffer + 3),
    );
  });

  it("makes .5641 with three machines and no buffers", () => {
    expectTheory(
      throughput(line(exponential, `{ trim: { time: ${exponential} }, pack: { time: ${exponential} } }`)),
      0.5641,
    );
  });
});

/** States of a resource with their times in seconds, from the event log alone. */
function stays(scenario: Scenario, resource: string): readonly { state: string; from: number; to: number }[] {
  const events = [...eventRecorder(scenario)(1)].filter((event) => event.resource === resource);
  return events.map(({ state, seconds }, i) => ({
    state,
    from: seconds,
    to: events[i + 1]?.seconds ?? scenario.run.length,
  }));
}

describe("the buffer before a server, computed from the event log", () => {
  const scenario = line("{ exponential: 12 s }", `{ trim: { time: ${exponential}, buffer: 40 } }`);
  // A part arrives when the mold ends its close, and leaves the buffer when the server begins to work on it.
  const arrivals = stays(scenario, "station 1")
    .filter(({ state, to }) => state === "closing" && to < scenario.run.length)
    .map(({ to }) => to);

  // Little, A proof for the queuing formula L = λW, Operations Research 9 (1961) 383 [M].
  it("has L = λW: the integral of the content is the sum of the waits", () => {
    const served = [...eventRecorder(scenario)(1)].filter(
      ({ resource, step, state }) => resource === "trim" && step === "trim" && state === "working",
    );
    const starts = served.map(({ seconds }) => seconds);
    expect(starts.length).toBeGreaterThan(4000);
    const waits = starts.map((start, i) => start - arrivals[i]!);
    expect(Math.min(...waits)).toBeGreaterThanOrEqual(-1e-9);
    // The time integral of the number of parts in the buffer.
    const changes = [
      ...arrivals.slice(0, starts.length).map((at) => [at, 1] as const),
      ...starts.map((at) => [at, -1] as const),
    ].toSorted((one, other) => one[0] - other[0] || other[1] - one[1]);
    let [content, area, last] = [0, 0, 0];
    for (const [at, by] of changes) {
      area += content * (at - last);
      content += by;
      last = at;
    }
    const sum = waits.reduce((total, wait) => total + wait, 0);
    expect(area).toBeCloseTo(sum, 3);
    // M/M/1 with ρ = 10/12 has Wq = 10 × ρ/(1 − ρ) = 50 s (Hillier and Lieberman, Introduction to Operations Research [M+C]).
    // The limits allow for the variation of a single run of 20 h.
    expect(sum / waits.length).toBeGreaterThan(25);
    expect(sum / waits.length).toBeLessThan(90);
  });
});

describe("removal by operators as machine repair", () => {
  // Winston, Operations Research: Applications and Algorithms, machine repair model: 5 machines, 2 repairers, rates 1/30 and
  // 1/3: L = .465 [M+C]. The removal is the repair.
  it("has .465 of five molds waiting for two operators or in removal", () => {
    const scenario = scenarioOf(
      cellText(5, "crew: { operators: 2 }"),
      "delivery={ kind: reciprocating-screw, recharge: 0 s, drop: 0 s }",
      "valve.shift=0 s",
      "stations.steps={ close: { exponential: 30 s }, blow: 0 s, cool: 0 s, vent: 0 s, open: 0 s, remove: { time: { exponential: 3 s }, by: operator } }",
      "run.length=20 h",
      "run.warmup=10 min",
    );
    const plan = planCell(scenario);
    const found = meanInterval(
      Array.from({ length: 20 }, (_, i) => {
        const record = runCell(plan, { replication: i + 1 });
        const idle = record.stateTimes.filter(({ state }) => state === "no operator free" || state === "removal");
        return idle.reduce((sum, { ticks }) => sum + ticks, 0) / (record.untilTick - record.fromTick);
      }),
    );
    expect(found.halfWidth).toBeLessThan(0.01);
    expect(Math.abs(found.mean - 0.465)).toBeLessThan(1.5 * found.halfWidth! + 0.0005);
  });
});

const full = `takeaway:
  belt: { time: 20 s, places: 6 }
  trim: { time: { gamma: [3 s, 1 s] }, buffer: 3 }
  leak test: { time: 2 s, rejects: 4 % }
  pack: { time: { gamma: [2.4 s, 1 s] }, buffer: 5, by: operator }
crew: { operators: 1, walk: 1 s, priorities: [repair, packing] }
quality: { lightest: 41.5 g, heaviest: 42.7 g, shotSpread: 1 %, cavitySpread: 0.5 %, rejects: 2 % }
regrind: { limit: 30 % }
stops: [{ name: jam, resource: every station, between: { exponential: 10 min }, repair: 40 s, by: operator }]`;

describe("a cell with takeaway, quality checks, regrind and stops", () => {
  const scenario = scenarioOf(
    cellText(2, full),
    "stations.steps.clear={ time: 20 s, by: operator }",
    "stations.steps.cool={ triangular: [7 s, 7.5 s, 9 s] }",
    "run.length=4 h",
    "run.warmup=0 s",
  );
  const records = [1, 2, 3].map((replication) => runCell(planCell(scenario), { replication }));

  it("loses no part: removed = rejected at the mold + rejected later + good + in the takeaway", () => {
    const most = 6 + 4 + 1 + 6 + 4;
    for (const { stations, takeaway } of records) {
      const out = stations.reduce((sum, { parts }) => sum + parts, 0);
      const atMold = stations.flatMap(({ rejects }) => rejects).reduce((sum, { parts }) => sum + parts, 0);
      const later = takeaway!.refused.reduce((sum, { parts }) => sum + parts, 0);
      const onTheWay = out - atMold - later - takeaway!.good;
      expect(atMold).toBeGreaterThan(20);
      expect(later).toBeGreaterThan(10);
      expect(onTheWay).toBeGreaterThanOrEqual(0);
      expect(onTheWay).toBeLessThanOrEqual(most);
    }
  });

  it("loses no melt, to the milligram: feed = parts + flash + lost + in molds = virgin + regrind used", () => {
    for (const record of records) {
      const { feed, parts, flash, lost, excess, inMolds, virgin, regrindUsed, regrindSurplus, rejects } =
        massBalance(record)!;
      const shots = record.stations.reduce((sum, each) => sum + (each.shots + each.lostDrops) * 109_200, 0);
      expect(feed).toBe(shots);
      expect(parts + flash + lost + excess + inMolds).toBe(feed);
      expect(inMolds).toBeGreaterThanOrEqual(0);
      expect(inMolds).toBeLessThanOrEqual(2 * 109_200);
      expect(virgin + regrindUsed).toBe(feed);
      expect(regrindUsed).toBeLessThanOrEqual(0.3 * feed);
      expect(regrindUsed + regrindSurplus).toBe(flash + rejects + lost + excess);
    }
  });

  it("has state times and critical paths that add up to the observed time exactly", () => {
    for (const record of records) {
      const observed = record.untilTick - record.fromTick;
      const total = new Map<string, number>();
      for (const { resource, ticks } of record.stateTimes) total.set(resource, (total.get(resource) ?? 0) + ticks);
      expect([...new Set(total.values())]).toEqual([observed]);
      for (const k of [0, 1]) {
        expect(record.chain.reduce((sum, { ticksByStation }) => sum + ticksByStation[k]!, 0)).toBe(observed);
      }
    }
  });

  it("gives the reason of every reject, and counts parts as good after the last server", () => {
    const rows = measuresOf(records[0]!).filter(({ resource }) => resource === "cell");
    const value = (measure: string): number => rows.find((row) => row.measure === measure)!.value;
    expect(rows.map(({ measure }) => measure).filter((measure) => measure.startsWith("rejects"))).toEqual([
      "rejects: too light",
      "rejects: too heavy",
      "rejects: base share",
      "rejects: leak test",
    ]);
    expect(value("good parts per hour") * 4).toBeCloseTo(records[0]!.takeaway!.good, 6);
  });

  it("gives the time of every operator state, and a walk only to another place", () => {
    const states = records[0]!.stateTimes.filter(({ resource }) => resource === "operator 1");
    const ticks = (name: string): number => states.find(({ state }) => state === name)!.ticks;
    for (const name of ["free", "walking", "packing", "repairing", "clearing"]) expect(ticks(name)).toBeGreaterThan(0);
    const packed = records[0]!.takeaway!.good;
    // An operator who packs one part after another does not walk.
    expect(ticks("walking")).toBeLessThan(0.5 * packed * 1e6);
  });
});

describe("the ideal cycle with a server", () => {
  it.each([
    ["3 s", 1, 6.525],
    ["4 s", 1, 8],
    ["7 s", 2, 7],
    ["7 s", 1, 14],
  ])(
    "of %s a part and %i places is the longer of the cell's and cavities × time / places",
    (time, places, expected) => {
      const scenario = scenarioOf(cellText(2, `takeaway: { trim: { time: ${time}, places: ${places}, buffer: 8 } }`));
      expect(idealCycle(scenario).secondsPerShot).toBeCloseTo(expected, 9);
      const record: CellRecord = runCell(
        planCell({ ...scenario, run: { ...scenario.run, length: 36_000, warmup: 3600 } }),
        { replication: 1 },
      );
      const shots = record.stations.reduce((sum, each) => sum + each.shots, 0);
      expect((record.untilTick - record.fromTick) / 1e6 / shots).toBeCloseTo(expected, 1);
    },
  );
});

describe("the order of tasks", () => {
  it("decides whether packing waits for removal or removal for packing", () => {
    const waits = (order: string): { readonly mold: number; readonly pack: number } => {
      const scenario = scenarioOf(
        cellText(
          3,
          `crew: { operators: 1, priorities: [${order}] }\ntakeaway: { pack: { time: { gamma: [1 s, 0.5 s] }, buffer: 60, by: operator } }`,
        ),
        "stations.steps.remove={ time: { gamma: [1.5 s, 0.8 s] }, by: operator }",
      );
      const { stateTimes } = runCell(planCell({ ...scenario, run: { ...scenario.run, warmup: 0 } }), {
        replication: 1,
      });
      const ticks = (isMeant: (resource: string) => boolean): number =>
        stateTimes
          .filter(({ resource, state }) => state === "no operator free" && isMeant(resource))
          .reduce((sum, each) => sum + each.ticks, 0);
      return {
        mold: ticks((resource) => resource.startsWith("station")),
        pack: ticks((resource) => resource.startsWith("pack")),
      };
    };
    const [moldsFirst, packingFirst] = [waits("removal, packing"), waits("packing, removal")];
    expect(moldsFirst.mold).toBeLessThan(packingFirst.mold);
    expect(moldsFirst.pack).toBeGreaterThan(packingFirst.pack);
  });
});

// The takeaway on the cell's own table against lines of the textbooks, Little's law, closed forms and timelines by hand.
// [M] from memory of the named source, [C] computed independently of this project.
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { eventRecorder, type EventRecord } from "#cell/records/eventRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { allShotTicks } from "../support/fixedCell.ts";
import { always, exponential, saturatedMold, server, takeawayCell } from "../support/takeawayCell.ts";

/** Theory within the 99 % interval of good parts a second, and that interval within 2 % of it. */
function makes(scenario: Scenario, theory: number): void {
  const plan = planCell(scenario);
  const { length, warmup } = scenario.run;
  const rates = Array.from({ length: 20 }, (_, replication) => {
    const record = runCell(plan, { replication });
    return record.takeaway!.good / (length - Number(warmup));
  });
  const { mean, halfWidth } = meanInterval(rates, 0.99);
  expect(Math.abs(mean - theory), `${mean} against ${theory}`).toBeLessThanOrEqual(halfWidth!);
  expect(halfWidth!).toBeLessThan(0.02 * theory);
}

const long = { length: 80_000, warmup: 1000, seed: "line" };

describe("a mold and servers as a line that never lacks material", () => {
  // Hunt, Operations Research 4 (1956) 674; Hillier and Boling, Operations Research 15 (1967) 286 [M+C]: (b + 2)/(b + 3).
  test.each([0, 1, 2, 6])("two exponential stages with a buffer of %i", (buffer) => {
    makes(
      saturatedMold(exponential(10), [server("trimmer", exponential(10), { buffer })], long),
      (buffer + 2) / (buffer + 3) / 10,
    );
  });

  // The same sources [M+C].
  test("three exponential stages without a buffer", () => {
    const servers = [server("trimmer", exponential(10)), server("leak test", exponential(10))];
    makes(saturatedMold(exponential(10), servers, long), 0.05641);
  });

  // A mold of fixed time before servers side by side that could work faster: the mold's own rate [C].
  test("a conveyor that carries for longer than a cycle takes nothing from a mold that is slower", () => {
    makes(saturatedMold(always(10), [server("conveyor", always(55), { places: 6 })], { ...long, warmup: 2000 }), 0.1);
  });
});

/** Parts that came to and left each buffer, from the rows of the event log alone; `from` are the resources before it. */
function stays(
  events: readonly EventRecord[],
  from: readonly string[],
  to: readonly string[],
  work: string,
): { readonly arrivals: readonly number[]; readonly departures: readonly number[] } {
  const arrivals = events.filter(
    ({ resource, step, parts }) => from.includes(resource) && step !== "refuse" && parts > 0,
  );
  const departures = events.filter(
    ({ resource, step, state }) => to.includes(resource) && step === work && state === "working",
  );
  return {
    arrivals: arrivals.flatMap(({ seconds, parts }) => Array.from({ length: parts }, () => seconds)),
    departures: departures.map(({ seconds }) => seconds),
  };
}

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** The time integral of the number of parts that wait, step by step. */
function content(
  arrivals: readonly number[],
  departures: readonly number[],
  until: number,
): { area: number; most: number } {
  const changes = [...arrivals.map((at) => [at, 1] as const), ...departures.map((at) => [at, -1] as const)];
  let [here, since, area, most] = [0, 0, 0, 0];
  for (const [at, change] of changes.toSorted((one, other) => one[0] - other[0] || other[1] - one[1])) {
    area += here * (at - since);
    if (at > since) most = Math.max(most, here);
    here += change;
    since = at;
  }
  return { area: area + here * (until - since), most };
}

const busyCell = takeawayCell(
  {
    stations: ["left", "right"].map((name) => ({ name, recharge: 3, drop: 1.5, close: 1, cool: 8, remove: 1 })),
    shift: 0.3,
    length: 20_000,
  },
  [
    server("mask", always(2), { perStation: true as const, places: 2, buffer: 1 }),
    server("trimmer", exponential(2.4), { buffer: 5 }),
    server("leak test", { kind: "gamma", mean: 4.4, sd: 2 }, { places: 2, buffer: 3, rejects: 0.04, reason: "leaks" }),
    server("packing", exponential(2), { buffer: 8, by: "operator" }),
  ],
  { cavities: 2, operators: 1, taskOrder: ["removal", "clearing", "repair", "packing"] },
);

describe("L = λW on every buffer, recomputed from the rows of the event log", () => {
  // Little, Operations Research 9 (1961) 383 [M]: L by the integral of what is there, W part by part, first come, first served.
  const events = [...eventRecorder(busyCell)(1)];
  const until = busyCell.run.length;

  test.each([
    ["mask of left", "mask", ["left"], ["mask of left 1", "mask of left 2"], 1],
    ["mask of right", "mask", ["right"], ["mask of right 1", "mask of right 2"], 1],
    ["trimmer", "trimmer", ["mask of left 1", "mask of left 2", "mask of right 1", "mask of right 2"], ["trimmer"], 5],
    ["leak test", "leak test", ["trimmer"], ["leak test 1", "leak test 2"], 3],
  ])("before %s", (_name, step, from, to, buffer) => {
    const { arrivals, departures } = stays(events, from, to, step);
    expect(arrivals.length).toBeGreaterThan(1000);
    // Nobody leaves before he came, and none of those who came is lost.
    departures.forEach((at, i) => expect(at).toBeGreaterThanOrEqual(arrivals[i]!));
    const { area, most } = content(arrivals, departures, until);
    expect(most).toBeLessThanOrEqual(buffer + to.length);
    const waits = arrivals.map((at, i) => (departures[i] ?? until) - at);
    const [rate, stay] = [arrivals.length / until, total(waits) / arrivals.length];
    expect(area / until).toBeCloseTo(rate * stay, 6);
  });

  it("loses no part: what left the molds is good, refused, or on its way", () => {
    const record = runCell(planCell(busyCell), { replication: 1 });
    const [good, refused] = [record.takeaway!.good, total(record.takeaway!.refused.map(({ parts }) => parts))];
    const handed = total(
      events.filter(({ resource }) => ["left", "right"].includes(resource)).map(({ parts }) => parts),
    );
    const ended = events.filter(
      ({ resource, step, parts }) => parts > 0 && (resource === "packing" || step === "refuse"),
    );
    expect(good + refused).toBe(ended.length);
    const room = 2 * (1 + 2) + (5 + 1) + (3 + 2) + (8 + 1);
    expect(handed - good - refused).toBeGreaterThanOrEqual(0);
    expect(handed - good - refused).toBeLessThanOrEqual(room);
    // Of a share of 4 % within 99.9 % of a binomial count.
    const tested = good + refused;
    expect(Math.abs(refused - 0.04 * tested)).toBeLessThan(3.3 * Math.sqrt(0.04 * 0.96 * tested));
  });
});

describe("the ideal cycle with a takeaway", () => {
  const tenths = (least: number, most: number): fc.Arbitrary<number> =>
    fc.integer({ min: least, max: most }).map((n) => n / 10);
  const cells = fc.record({
    recharge: tenths(5, 60),
    drop: tenths(5, 30),
    cool: tenths(20, 120),
    shift: tenths(0, 6),
    count: fc.integer({ min: 1, max: 4 }),
    cavities: fc.integer({ min: 1, max: 4 }),
    times: fc.array(tenths(1, 60), { minLength: 1, maxLength: 3 }),
    places: fc.integer({ min: 1, max: 3 }),
    buffer: fc.integer({ min: 0, max: 12 }),
  });

  // The cell's closed form: max{ r + d + 2v, (v + d + m)/M, cavities × time / places }, which needs room for the parts of a shot.
  test("is the closed form's, and the simulation keeps it exactly over whole periods", () => {
    fc.assert(
      fc.property(cells, ({ recharge, drop, cool, shift, count, cavities, times, places, buffer }) => {
        const stations = Array.from({ length: count }, () => ({ recharge, drop, close: 0.6, cool, remove: 0.8 }));
        const servers = times.map((time, i) => {
          const room = i === 0 ? cavities * count + buffer : 2 * cavities * count + buffer;
          return server(`server ${String.fromCodePoint(97 + i)}`, always(time), { places, buffer: room });
        });
        const scenario = takeawayCell({ stations, shift, length: 20_000 }, servers, { cavities });
        const ticks = (seconds: number): number => Math.round(seconds * 1e6);
        const screw = ticks(recharge) + ticks(drop) + 2 * ticks(shift);
        const turn = ticks(shift) + ticks(drop) + ticks(0.6) + ticks(cool) + ticks(0.8);
        const slowest = Math.max(...times.map(ticks));
        const expected = Math.max(screw, turn / count, (cavities * slowest) / places);
        const ideal = idealCycle(scenario);
        expect(ideal.method).not.toBe("bound");
        expect(ideal.periodTicks / ideal.shotsPerPeriod).toBeCloseTo(expected, 3);
        const shots = allShotTicks(runCell(planCell(scenario), { replication: 1 }));
        const last = shots.length - 1;
        const step = ideal.shotsPerPeriod;
        for (let k = 1; k <= 3; k++) expect(shots[last]! - shots[last - k * step]!).toBe(k * ideal.periodTicks);
      }),
      {
        seed: 20260801,
        // While its buffer fills up, the second server starts in a rhythm that repeats as well.
        examples: [
          [
            {
              ...{ recharge: 6, drop: 2.1, cool: 6.2, shift: 0.2, count: 2, cavities: 3 },
              ...{ times: [1.5, 5.8, 1.8], places: 2, buffer: 10 },
            },
          ],
        ],
      },
    );
  });

  it("names a server that sets it, and says what the others have to spare", () => {
    const stations = [{ recharge: 4, drop: 1.8, close: 0.6, cool: 9.6, remove: 0.8 }];
    const scenario = takeawayCell({ stations, shift: 0.25 }, [server("trimmer", always(8), { buffer: 4 })], {
      cavities: 2,
    });
    const { circuits, secondsPerShot, slackOf } = idealCycle(scenario);
    expect(secondsPerShot).toBeCloseTo(16, 9);
    expect(circuits[0]).toMatchObject({ name: "trimmer", critical: true });
    expect(slackOf("trimmer", "trimmer")).toBe(0);
    const station = circuits.find(({ name }) => name === "station 01");
    expect(station!.secondsPerShot).toBeCloseTo(13.05, 9);
  });
});

describe("parts leave one by one", () => {
  const timeline = (scenario: Scenario, resource: string): readonly string[] => {
    const rows = [...eventRecorder(scenario)(1)].filter((event) => event.resource === resource);
    const lasting = rows.filter((event, i) => rows[i + 1]?.seconds !== event.seconds);
    const changes = lasting.filter((event, i) => lasting[i - 1]?.state !== event.state);
    return changes.map(({ seconds, state }) => `${Number(seconds.toFixed(6))} ${state}`);
  };
  const mold = { recharge: 0, drop: 1, close: 0, cool: 3, remove: 0 };

  it("and the mold is free when the last one has room", () => {
    // Two parts at 4, room for one: the first is carried 4-9, the second goes on at 9; drop 9-10, cooling 10-13; then the first
    // of the next two has room at 14, when the second is done, and the second at 19.
    const scenario = takeawayCell({ stations: [mold], shift: 0, length: 19.5 }, [server("conveyor", always(5))], {
      cavities: 2,
    });
    expect(timeline(scenario, "station 01")).toEqual([
      "0 parison drop",
      "1 cooling",
      "4 awaiting takeaway",
      "9 parison drop",
      "10 cooling",
      "13 awaiting takeaway",
      "19 parison drop",
    ]);
    expect(timeline(scenario, "conveyor")).toEqual(["0 starved", "4 working"]);
  });

  it("a full server after it blocks the one before, and that one the mold", () => {
    // Parts at 4, 8, 12 …: trimming 4-6, packing 6-16; trimming 8-10, blocked until 16; the mold's third part is ready at 12.
    const servers = [server("trimmer", always(2)), server("packing", always(10))];
    const scenario = takeawayCell({ stations: [mold], shift: 0, length: 21 }, servers);
    expect(timeline(scenario, "trimmer")).toEqual([
      "0 starved",
      "4 working",
      "6 starved",
      "8 working",
      "10 blocked",
      "16 working",
      "18 blocked",
    ]);
    expect(timeline(scenario, "station 01").slice(4, 8)).toEqual([
      "8 parison drop",
      "9 cooling",
      "12 awaiting takeaway",
      "16 parison drop",
    ]);
  });

  it("too young they wait, too old they are refused where they are found", () => {
    // A part every 4 s from 4 on. At least 6 s old: work at 10-11, 14-15, 18-19 …; the trimmer stays idle in between.
    const young = takeawayCell({ stations: [mold], shift: 0, length: 20 }, [
      server("trimmer", always(1), { buffer: 5, minAge: 6 }),
    ]);
    expect(timeline(young, "trimmer")).toEqual([
      "0 starved",
      "10 working",
      "11 starved",
      "14 working",
      "15 starved",
      "18 working",
      "19 starved",
    ]);
    // Work of 6 s for a part every 4 s: begins at 4, 10, 16 with parts of 4, 8, 12 (age 0, 2, 4), then at 22 with that of 16
    // (age 6), at 28 with that of 20 (age 8): beyond 7 s, so at 27 it is refused, and the one of 24 is taken (age 4).
    const old = takeawayCell({ stations: [mold], shift: 0, length: 29 }, [
      server("trimmer", always(6), { buffer: 9, maxAge: 7 }),
    ]);
    const { good, refused } = runCell(planCell(old), { replication: 1 }).takeaway!;
    expect(refused).toEqual([{ reason: "too old for trimmer", parts: 1 }]);
    expect(good).toBe(4);
    // Exactly as old as allowed is not too old.
    const just = { ...old, takeaway: old.takeaway!.map((each) => ({ ...each, maxAge: 8 })) };
    expect(runCell(planCell(just), { replication: 1 }).takeaway!.refused[0]!.parts).toBe(0);
  });

  it("what the mold's own check refuses never enters the takeaway", () => {
    const scenario: Scenario = {
      ...takeawayCell({ stations: [mold], shift: 0, length: 8000 }, [server("conveyor", always(1), { buffer: 3 })], {
        cavities: 3,
      }),
      quality: { shotSpread: 0, cavitySpread: 0, rejects: 0.3 },
    };
    const { stations, takeaway } = runCell(planCell(scenario), { replication: 1 });
    const [station] = stations;
    const refused = station!.rejects.find(({ reason }) => reason === "base share")!.parts;
    expect(refused).toBeGreaterThan(0.25 * station!.parts);
    const handed = [...eventRecorder(scenario)(1)].filter(
      ({ step, state }) => step?.startsWith("hand over") && state === "removal",
    );
    expect(handed).toHaveLength(station!.parts - refused);
    expect(station!.parts - refused - takeaway!.good).toBeLessThanOrEqual(4);
  });
});

describe("luck", () => {
  const workTimes = (scenario: Scenario): readonly number[] => {
    const rows = [...eventRecorder(scenario)(1)].filter(({ resource }) => resource.startsWith("trimmer"));
    const started = rows.filter(({ step, state }) => step === "trimmer" && state === "working");
    return started.map((row) => {
      const next = rows.find(
        (other) => other.resource === row.resource && other.seconds > row.seconds && other.step !== "trimmer",
      );
      return next ? next.seconds - row.seconds : NaN;
    });
  };
  const cell = (places: number, buffer: number): Scenario =>
    takeawayCell({ stations: [{ recharge: 0, drop: 1, close: 0, cool: 3, remove: 0 }], shift: 0, length: 400 }, [
      server("trimmer", { kind: "uniform", min: 1, max: 6 }, { places, buffer, rejects: 0.2 }),
    ]);

  it("of the n-th part in a server is the same whatever its buffer and its places", () => {
    const one = workTimes(cell(1, 0)).slice(0, 60);
    expect(one).toHaveLength(60);
    for (const other of [cell(1, 7), cell(3, 2)]) {
      workTimes(other)
        .slice(0, 60)
        .forEach((time, i) => expect(time).toBeCloseTo(one[i]!, 5));
    }
  });
});

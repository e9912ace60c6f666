// Holds the takeaway to textbook values of production lines, to L = λW, to closed forms and to timelines calculated by hand.
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { eventRecorder, type EventRecord } from "#cell/records/eventRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { caseCount } from "../../support/caseCount.ts";
import { allShotTicks } from "../../support/fixedCell.ts";
import { always, exponential, saturatedMold, server, takeawayCell } from "../../support/takeawayCell.ts";

/** The 99 % interval of good parts a second contains the theoretical value and is narrower than 2 % of it. */
function expectRate(scenario: Scenario, theory: number): void {
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

describe("a mold and servers as a saturated line", () => {
  // Hunt, Sequential arrays of waiting lines, Operations Research 4 (1956) 674; Hillier and Boling, Finite queues in series,
  // Operations Research 15 (1967) 286: (b + 2)/(b + 3) [M+C].
  test.each([0, 1, 2, 6])("makes (b + 2)/(b + 3) with two exponential stages and a buffer of %i", (buffer) => {
    expectRate(
      saturatedMold(exponential(10), [server("trimmer", exponential(10), { buffer })], long),
      (buffer + 2) / (buffer + 3) / 10,
    );
  });

  // The same sources: .5641 [M+C].
  test("makes .5641 with three exponential stages and no buffer", () => {
    const servers = [server("trimmer", exponential(10)), server("leak test", exponential(10))];
    expectRate(saturatedMold(exponential(10), servers, long), 0.05641);
  });

  // A mold of fixed time before faster servers in parallel has its own rate, calculated by hand [C].
  test("keeps the mold's own rate before a conveyor with enough places", () => {
    expectRate(
      saturatedMold(always(10), [server("conveyor", always(55), { places: 6 })], { ...long, warmup: 2000 }),
      0.1,
    );
  });
});

/** Arrivals and departures of a buffer, from the event log alone; `from` are the resources before it, `to` those after it. */
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

/** The time integral and the maximum of the number of waiting parts. */
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

describe("L = λW on every buffer, computed from the event log", () => {
  // Little, A proof for the queuing formula L = λW, Operations Research 9 (1961) 383 [M]. L is the integral of the content, W the
  // mean wait of the parts, first come, first served.
  const events = [...eventRecorder(busyCell)(1)];
  const until = busyCell.run.length;

  test.each([
    ["mask of left", "mask", ["left"], ["mask of left 1", "mask of left 2"], 1],
    ["mask of right", "mask", ["right"], ["mask of right 1", "mask of right 2"], 1],
    ["trimmer", "trimmer", ["mask of left 1", "mask of left 2", "mask of right 1", "mask of right 2"], ["trimmer"], 5],
    ["leak test", "leak test", ["trimmer"], ["leak test 1", "leak test 2"], 3],
  ])("holds before %s", (_name, step, from, to, buffer) => {
    const { arrivals, departures } = stays(events, from, to, step);
    expect(arrivals.length).toBeGreaterThan(1000);
    // No part leaves before it arrives.
    departures.forEach((at, i) => expect(at).toBeGreaterThanOrEqual(arrivals[i]!));
    const { area, most } = content(arrivals, departures, until);
    expect(most).toBeLessThanOrEqual(buffer + to.length);
    const waits = arrivals.map((at, i) => (departures[i] ?? until) - at);
    const [rate, stay] = [arrivals.length / until, total(waits) / arrivals.length];
    expect(area / until).toBeCloseTo(rate * stay, 6);
  });

  it("holds for a takeaway that loses no part: every part is good, refused or in the takeaway", () => {
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
    // 99.9 % interval of a binomial count with a share of 4 %.
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
  const slowSecondServer = {
    recharge: 6,
    drop: 2.1,
    cool: 6.2,
    shift: 0.2,
    count: 2,
    cavities: 3,
    times: [1.5, 5.8, 1.8],
    places: 2,
    buffer: 10,
  };

  // Circuits of the timed event graph, derived by hand [C]: max{ r + d + 2v, (v + d + m)/M, cavities × time / places }. The form
  // holds when the buffers have room for the parts of a shot.
  test("has the closed form's period, exactly that of the simulation over whole periods", () => {
    let bounds = 0;
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
        if (ideal.method === "bound") {
          // The graph of a very long order is not built; then the bound is not above the period.
          bounds++;
          expect(ideal.periodTicks / ideal.shotsPerPeriod).toBeLessThanOrEqual(expected + 1);
          return;
        }
        expect(ideal.periodTicks / ideal.shotsPerPeriod).toBeCloseTo(expected, 3);
        const shots = allShotTicks(runCell(planCell(scenario), { replication: 1 }));
        const last = shots.length - 1;
        const step = ideal.shotsPerPeriod;
        for (let k = 1; k <= 3; k++) expect(shots[last]! - shots[last - k * step]!).toBe(k * ideal.periodTicks);
      }),
      {
        seed: 20260801,
        // While its buffer still fills, the second server starts at regular times as well.
        examples: [[slowSecondServer]],
      },
    );
    expect(bounds).toBeLessThanOrEqual(Math.ceil(caseCount / 100));
  });

  it("names the server that sets the pace, and gives the other circuits", () => {
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

  it("and free the mold when the last part has room", () => {
    // Two parts at 4, room for one: the first is carried 4-9, the second enters at 9. Drop 9-10, cooling 10-13. Of the next two
    // parts the first enters at 14, when the second has been carried, and the second at 19.
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

  it("and wait in the mold when a full server blocks the one before it", () => {
    // Parts at 4, 8, 12 …: trimming 4-6, packing 6-16, trimming 8-10, blocked until 16. The third part is ready at 12.
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

  it("and wait below the minimum age, and are refused above the maximum age", () => {
    // A part every 4 s from 4 on, worked on at an age of 6 s: 10-11, 14-15, 18-19 …
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
    // Work of 6 s for a part every 4 s. It begins at 4, 10, 16, 22 with the parts of 4, 8, 12, 16 (ages 0, 2, 4, 6). At 28 the part
    // of 20 would be 8 s old: it is refused at 27, beyond 7 s, and the part of 24 is taken (age 4).
    const old = takeawayCell({ stations: [mold], shift: 0, length: 29 }, [
      server("trimmer", always(6), { buffer: 9, maxAge: 7 }),
    ]);
    const { good, refused } = runCell(planCell(old), { replication: 1 }).takeaway!;
    expect(refused).toEqual([{ reason: "too old for trimmer", parts: 1 }]);
    expect(good).toBe(4);
    // A part of exactly the maximum age is accepted.
    const exactly = { ...old, takeaway: old.takeaway!.map((each) => ({ ...each, maxAge: 8 })) };
    expect(runCell(planCell(exactly), { replication: 1 }).takeaway!.refused[0]!.parts).toBe(0);
  });

  it("and never enter the takeaway when the check at the mold refuses them", () => {
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

describe("the draw", () => {
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

  it("of the n-th part in a server does not depend on its buffer or its places", () => {
    const one = workTimes(cell(1, 0)).slice(0, 60);
    expect(one).toHaveLength(60);
    for (const other of [cell(1, 7), cell(3, 2)]) {
      workTimes(other)
        .slice(0, 60)
        .forEach((time, i) => expect(time).toBeCloseTo(one[i]!, 5));
    }
  });
});

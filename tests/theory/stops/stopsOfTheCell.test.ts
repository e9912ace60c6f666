// Holds the stops of a cell to formulas of availability, and its records to the balances of time and shots.
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

/** Every step can be held, so that a stop takes effect at once. The station never waits for melt. */
function machine(stops: string): ReturnType<typeof scenarioOf> {
  return scenarioOf(
    cellText(1, `stops: [${stops}]`),
    "delivery={ kind: reciprocating-screw, recharge: 0 s, drop: 0 s }",
    "valve.shift=0 s",
    "stations.steps={ close: 8 s, blow: 0 s, cool: 0 s, vent: 0 s, open: 8 s, remove: { time: 8 s }, clear: { time: 8 s } }",
    "run.length=60 h",
    "run.warmup=0 s",
  );
}

const stop = (name: string, clock: string, between: string, repair: string): string =>
  `{ name: ${name}, resource: station 1, clock: ${clock}, between: ${between}, repair: ${repair} }`;

function shareStopped(record: CellRecord): number {
  const own = record.stateTimes.filter(({ resource }) => resource === "station 1");
  const of = (rows: typeof own): number => rows.reduce((sum, { ticks }) => sum + ticks, 0);
  return of(own.filter(({ kind }) => kind === "stopped")) / of(own);
}

function availability(stops: string): ReturnType<typeof meanInterval> {
  const plan = planCell(machine(stops));
  const runs = Array.from({ length: 40 }, (_, i) => 1 - shareStopped(runCell(plan, { replication: i + 1 })));
  return meanInterval(runs);
}

describe("availability", () => {
  // Steady-state availability of an alternating renewal process, 480 / 495 = .96970 [C].
  it.each([
    ["exponential on the calendar", stop("jam", "calendar", "{ exponential: 480 s }", "{ exponential: 15 s }")],
    ["exponential on working time", stop("jam", "working", "{ exponential: 480 s }", "{ exponential: 15 s }")],
    ["fixed", stop("jam", "working", "480 s", "15 s")],
  ])("of one kind of stop is MTBF / (MTBF + MTTR): %s", (_, text) => {
    const found = availability(text);
    const halfWidth = found.halfWidth ?? Infinity;
    expect(halfWidth).toBeLessThan(0.0015);
    expect(Math.abs(found.mean - 0.9697)).toBeLessThan(Math.max(halfWidth * 1.5, 1e-4));
  });

  // Buzacott, Automatic transfer lines with buffer stocks, Int. J. Prod. Research 5 (1967): two machines in series without a
  // buffer, 120/10 each: 1/(1 + 2/12) = .85714 [M+C].
  it("of two kinds of stop on working time is 1 / (1 + Σ MTTR/MTBF)", () => {
    const text = ["one", "two"].map((name) => stop(name, "working", "{ exponential: 120 s }", "{ exponential: 10 s }"));
    const found = availability(text.join(", "));
    const halfWidth = found.halfWidth ?? Infinity;
    expect(halfWidth).toBeLessThan(0.004);
    expect(Math.abs(found.mean - 0.857143)).toBeLessThan(halfWidth * 1.5);
  });
});

describe("a clock on working time", () => {
  it("pauses while the station waits: a tenth of the work gives a tenth of the stops", () => {
    const count = (recharge: string): number => {
      const scenario = scenarioOf(
        cellText(1, `stops: [${stop("jam", "working", "300 s", "10 s")}]`),
        `delivery.recharge=${recharge}`,
        "stations.steps.clear={ time: 0 s }",
        "run.length=20 h",
        "run.warmup=0 s",
      );
      return runCell(planCell(scenario), { replication: 1 }).stops.length;
    };
    // A cycle has 13.05 s of work. With 127 s of recharge it lasts 129.3 s (recharge, two valve shifts, drop).
    const [busy, starved] = [count("1 s"), count("127 s")];
    const workShare = (72_000 - busy * 10) / 72_000;
    expect(busy).toBeCloseTo((72_000 * workShare) / 300, -1);
    expect(starved / busy).toBeGreaterThan(0.08);
    expect(starved / busy).toBeLessThan(0.12);
  });
});

describe("stops by cycles", () => {
  // Every shot has one fill and one valve shift, so every fiftieth shot brings a stop.
  it.each(["plasticator", "valve"])("count the fills or shifts of the %s with accumulator heads", (resource) => {
    const scenario = scenarioOf(
      cellText(
        2,
        `stops: [{ name: wipe, resource: ${resource}, start: fresh, cycles: 50, repair: 5 s, step: finish }]`,
      ),
      "delivery={ kind: accumulator-head, recharge: 4 s, drop: 1.8 s }",
      "run.warmup=0 s",
    );
    const record = runCell(planCell(scenario), { replication: 1 });
    const shots = record.stations.reduce((sum, station) => sum + station.shots, 0);
    expect(shots).toBeGreaterThan(500);
    expect(Math.abs(record.stops.length - shots / 50)).toBeLessThanOrEqual(1);
  });

  // One station, a turn of 13.05 s: shift 0.25, drop 1.8, mold 11 s. [C] by hand, in seconds after the end of a drop: the valve is
  // neutral at 0.25, the screw full at 4.25, the mold ready at 11; the next shift begins at 11, and waits for valve and screw.
  const repair = 60;
  const delays = [
    ["station 1", repair],
    ["valve", repair - (11 - 0.25)],
    ["plasticator", repair - (11 - 4.25)],
  ] as const;
  const cleared = "stations.steps.clear={ time: 90 s, by: machine }";
  const rules = ["finish", "hold", "scrap"];
  it.each(delays.flatMap(([resource, delay]) => rules.map((rule) => ({ resource, rule, delay }))))(
    "begin when the $resource is at rest, $rule: no shot is lost, and the turn takes $delay s more",
    ({ resource, rule, delay }) => {
      const wiping = `{ name: wipe, resource: ${resource}, start: fresh, cycles: 50, repair: ${repair} s, step: ${rule} }`;
      const scenario = scenarioOf(cellText(1, `stops: [${wiping}]`), cleared, "run.warmup=0 s");
      const { stations, stops } = runCell(planCell(scenario), { replication: 1 });
      const [{ shotTicks, lostShots }] = stations as [(typeof stations)[number]];
      expect(lostShots).toBe(0);
      expect(stops.length).toBeGreaterThan(5);
      const turns = shotTicks.slice(1).map((tick, i) => (tick - shotTicks[i]!) / 1e6);
      // A running cell begins with a full shot, so that the first recharge is that of the second shot.
      const stopped = turns.flatMap((turn, i) => (Math.abs(turn - 13.05) > 1e-9 ? [i + 1] : []));
      expect(stopped.slice(1).map((turn, i) => turn - stopped[i]!)).toEqual(stopped.slice(1).map(() => 50));
      for (const turn of stopped) expect(turns[turn - 1]).toBeCloseTo(13.05 + delay, 6);
    },
  );

  it.each(rules)("leave the valve to the other station while one is stopped, %s", (rule) => {
    const wiping = `{ name: wipe, resource: station 1, start: fresh, cycles: 50, repair: ${repair} s, step: ${rule} }`;
    const scenario = scenarioOf(cellText(2, `stops: [${wiping}]`), cleared, "run.warmup=0 s");
    const [one, other] = runCell(planCell(scenario), { replication: 1 }).stations.map(({ shotTicks }) =>
      shotTicks.slice(1).map((tick, i) => (tick - shotTicks[i]!) / 1e6),
    );
    expect(Math.max(...one!)).toBeGreaterThan(repair);
    // A turn without waits takes 13.05 s; a wait for the other's shot at most one recharge, drop and two shifts.
    expect(Math.max(...other!)).toBeLessThanOrEqual(13.05 + 6.3);
  });

  it("begin with the turn of a server, after its part has moved on", () => {
    const wiping =
      "stops: [{ name: knife, resource: trim, start: fresh, cycles: 30, repair: 40 s }]\ntakeaway: { trim: { time: 3 s, buffer: 40 } }";
    const { stops, takeaway } = runCell(planCell(scenarioOf(cellText(1, wiping), cleared, "run.warmup=0 s")), {
      replication: 1,
    });
    expect(stops.length).toBeGreaterThan(5);
    expect(takeaway!.good).toBeGreaterThan(30 * stops.length);
    // [C] every stop but the first follows 30 parts of 3 s or more and a repair of 40 s.
    const gaps = stops.slice(1).map(({ fromTick }, i) => (fromTick - stops[i]!.fromTick) / 1e6);
    for (const gap of gaps) expect(gap).toBeGreaterThanOrEqual(40 + 30 * 3);
  });
});

describe("stops by cycles in continuous extrusion", () => {
  it("come when the mold is ready after so many shots, exactly, and lose none", () => {
    const scenario = scenarioOf(
      cellText(
        1,
        `stops: [{ name: wipe, resource: station 1, start: fresh, cycles: 20, repair: 60 s, step: finish }]`,
      ).replace("valve: { shift: 0.25 s }", ""),
      "delivery={ kind: continuous, recharge: 6 s }",
      "stations.steps={ travelIn: 0.5 s, close: 0.6 s, cut: 0.3 s, travelOut: 0.5 s, blow: 0.5 s, cool: 4 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s } }",
      "run.warmup=0 s",
    );
    const record = runCell(planCell(scenario), { replication: 1 });
    const [{ shotTicks: shots, lostShots }] = record.stations as [(typeof record.stations)[number]];
    expect(lostShots).toBe(0);
    expect(record.stops.length).toBeGreaterThan(5);
    // [C] after the cut: travel out 0.5, blow 0.5, cool 4, vent 0.5, open 0.6, removal 0.8 s.
    const ready = shots.map((tick) => tick + 6.9e6);
    expect(record.stops.map(({ fromTick }) => ready.indexOf(fromTick) + 1)).toEqual(
      record.stops.map((_, i) => 20 * (i + 1)),
    );
  });
});

describe("a cell with stops of screw, valve and stations", () => {
  const scenario = scenarioOf(
    cellText(
      2,
      `crew: { operators: 1 }
stops:
  - { name: heater band, resource: plasticator, start: fresh, between: { exponential: 40 min }, repair: { lognormal: [5 min, 3 min] }, by: operator }
  - { name: stuck flash, resource: every station, start: fresh, between: { exponential: 15 min }, repair: { exponential: 60 s }, step: scrap, by: operator }
  - { name: air, resource: valve, start: fresh, clock: calendar, between: { weibull: [1 h, 2] }, repair: 20 s, step: finish }`,
    ),
    "stations.steps.clear={ time: 40 s, by: operator }",
    "stations.steps.cool={ triangular: [7 s, 7.5 s, 9 s] }",
    "run.warmup=0 s",
  );
  const records = [1, 2, 3, 4].map((replication) => runCell(planCell(scenario), { replication }));

  it("has state times that add up to the observed time exactly", () => {
    for (const record of records) {
      const total = new Map<string, number>();
      for (const { resource, ticks } of record.stateTimes) total.set(resource, (total.get(resource) ?? 0) + ticks);
      expect([...new Set(total.values())]).toEqual([record.untilTick - record.fromTick]);
    }
  });

  it("has critical paths that cover the whole run, with stops as segments", () => {
    for (const record of records) {
      for (const k of [0, 1]) {
        const sum = record.chain.reduce((total, { ticksByStation }) => total + ticksByStation[k]!, 0);
        expect(sum).toBe(record.untilTick - record.fromTick);
      }
      const stopped = record.chain.filter(({ step }) => step === "stopped" || step.startsWith("repair"));
      expect(stopped.reduce((sum, { ticks }) => sum + ticks, 0)).toBeGreaterThan(0);
      // A clock never binds: no time is attributed to the wait for a stop.
      const clocks = record.chain.filter(({ step }) => step.startsWith("until "));
      expect(clocks.reduce((sum, { ticks }) => sum + ticks, 0)).toBe(0);
    }
  });

  it("accounts for every shot as removed, lost, or still in a mold", () => {
    for (const { stations } of records) {
      for (const { shots, parts, lostDrops, lostShots } of stations) {
        const inMold = shots + lostDrops - lostShots - parts / 2;
        expect(inMold).toBeGreaterThanOrEqual(0);
        expect(inMold).toBeLessThanOrEqual(1);
        expect(lostDrops).toBeLessThanOrEqual(lostShots);
      }
      expect(stations.reduce((sum, { lostShots }) => sum + lostShots, 0)).toBeGreaterThan(0);
    }
  });

  it("never stops a resource twice at once", () => {
    for (const { stops } of records) {
      for (const resource of new Set(stops.map((each) => each.resource))) {
        const own = stops.filter((each) => each.resource === resource);
        own.slice(1).forEach(({ fromTick }, i) => expect(fromTick).toBeGreaterThanOrEqual(own[i]!.untilTick!));
      }
    }
  });

  it("gives the same record again", () => {
    expect(runCell(planCell(scenario), { replication: 2 })).toEqual(records[1]);
  });
});

// A cell on a calendar: time off shift, breaks, start-up, changeovers, and the balances of time and mass.
import { describe, expect, it } from "vitest";
import { answerOf } from "#analysis/replication/replicationAnswer.ts";
import { massBalance } from "#analysis/replication/massBalance.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { oldShare, purgeMass } from "#physics/screw/colorChange.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { changesOf } from "../../support/calendarStop.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const week = `calendar:
  from: 2026-03-23
  shifts:
    - { days: [mon, tue, wed, thu, fri], start: "06:00", end: "14:00", breaks: [{ at: "09:30", time: 30 min }] }
    - { days: [mon, tue, wed, thu, fri], start: "14:00", end: "22:00", breaks: [{ at: "18:00", time: 30 min }] }`;

const scenario = (more = "", ...set: readonly string[]): Scenario =>
  scenarioOf(cellText(2, `${week}\n${more}`), "run.length=7 d", "run.warmup=auto", ...set);
const run = (cell: Scenario, replication = 1): CellRecord => runCell(planCell(cell), { replication });

function hours(record: CellRecord, resource: string, state: string): number {
  return record.stateTimes.find((each) => each.resource === resource && each.state === state)!.ticks / 3.6e9;
}

describe("a week of two shifts", () => {
  const record = run(scenario("crew: { operators: 1 }", "stations.steps.remove={ time: 0.8 s, by: operator }"));

  it("has 168 − 80 hours off shift, up to a cycle more for each mold, and cuts no warm-up", () => {
    expect(record.fromTick).toBe(0);
    expect(hours(record, "plasticator", "off shift")).toBe(88);
    for (const station of ["station 1", "station 2"]) {
      expect(hours(record, station, "off shift")).toBeGreaterThan(88);
      expect(hours(record, station, "off shift")).toBeLessThan(88 + (6 * 2 * 14) / 3600);
    }
  });

  it("makes shots only on shift, and removes each one before the shift ends", () => {
    const inShift = (tick: number): boolean => {
      const [day, time] = [Math.floor(tick / 8.64e10), (tick % 8.64e10) / 3.6e9];
      return day < 5 && time >= 6 && time <= 22;
    };
    const ticks = record.stations.flatMap(({ shotTicks }) => shotTicks);
    expect(ticks.length).toBeGreaterThan(40_000);
    expect(ticks.every(inShift)).toBe(true);
    for (const { shots, parts } of record.stations) expect(parts).toBe(2 * shots);
  });

  it("has as many steps in its table as ten weeks have", () => {
    const stepsOf = (length: string): number => planCell(scenario("", `run.length=${length}`)).program.rows.length;
    expect(stepsOf("70 d")).toBe(stepsOf("7 d"));
  });

  it("has no step of a calendar where work never rests in the run", () => {
    const always = `calendar: { from: 2026-03-23, shifts: [{ start: "00:00", end: "00:00" }] }`;
    const plan = planCell(scenarioOf(cellText(2, always), "run.length=8 h"));
    const resting = plan.processes.filter(({ kind }) => kind === "calendar");
    expect(resting.length).toBeGreaterThan(2);
    for (const { steps } of resting) expect(steps.map(({ role }) => role)).toEqual(["calendar.end"]);
  });

  it("gives its operator 5 × 2 breaks of half an hour, less at most the rest of a removal", () => {
    expect(hours(record, "operator 1", "on break")).toBeGreaterThan(5 - 0.01);
    expect(hours(record, "operator 1", "on break")).toBeLessThanOrEqual(5);
  });

  it("is covered by the critical path of every station, and leaves time off shift out of the critical shares", () => {
    for (const k of [0, 1]) {
      expect(record.chain.reduce((sum, { ticksByStation }) => sum + ticksByStation[k]!, 0)).toBe(record.untilTick);
    }
    const off = record.chain.filter(({ step }) => step === "off shift").reduce((sum, { ticks }) => sum + ticks, 0);
    expect(off / 3.6e9).toBeGreaterThan(87.9);
    expect(off / 3.6e9).toBeLessThan(88.2);
    const { criticalShares } = answerOf({ replication: 1, scale: null }, record);
    expect(criticalShares.some(({ step }) => step === "off shift")).toBe(false);
    expect(criticalShares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    // The steps of the cell bind for more than half of the time on shift.
    expect(
      criticalShares
        .filter(({ step }) => ["cool", "drop", "recharge", "remove", "close"].includes(step))
        .reduce((sum, { share }) => sum + share, 0),
    ).toBeGreaterThan(0.5);
  });
});

describe("a break inside cooling", () => {
  // All times are fixed. The station begins at 06:00:00; cooling runs on through the break, and the removal waits for its end.
  it("lets the part cool on, and delays only the removal by the operator", () => {
    const cell = scenarioOf(
      cellText(
        1,
        `crew: { operators: 1 }
calendar: { from: 2026-03-23, at: "06:00", shifts: [{ start: "06:00", end: "14:00", breaks: [{ at: "06:01", time: 5 min }] }] }`,
      ),
      "stations.steps.remove={ time: 0.8 s, by: operator }",
      "run.length=10 min",
      "run.warmup=0 s",
    );
    // A cycle of 13.05 s from valve shift to valve shift: the fifth begins at 52.2 s, cools from 55.35 s to 63.35 s, vents, opens
    // and waits.
    const changes = changesOf(cell, "station 1", 420);
    const from = changes.findIndex((each) => each.startsWith("55.35"));
    expect(changes.slice(from, from + 5)).toEqual([
      "55.35 cooling",
      "63.35 venting",
      "63.85 opening",
      "64.45 no operator free",
      "360 removal",
    ]);
    expect(changesOf(cell, "operator 1", 420).filter((each) => each.includes("break"))).toEqual(["60 on break"]);
  });

  it("stops the cell under `breaks: stop`: no cycle begins that would end after the start of the break", () => {
    const cell = scenarioOf(
      cellText(
        1,
        `calendar: { from: 2026-03-23, at: "06:00", breaks: stop, shifts: [{ start: "06:00", end: "14:00", breaks: [{ at: "06:01", time: 5 min }] }] }`,
      ),
      "run.length=10 min",
      "run.warmup=0 s",
    );
    const changes = changesOf(cell, "station 1", 420);
    // Four cycles of 13.05 s end at 52.2 s. A fifth would end at 65.25 s, in the break.
    expect(changes.slice(changes.indexOf("52.2 off shift") - 1).slice(0, 3)).toEqual([
      "51.4 removal",
      "52.2 off shift",
      "360 valve shifting to it",
    ]);
  });
});

describe("a start-up after a night off shift", () => {
  const record = run(
    scenario(
      "startUp: { afterOff: 6 h, heatUp: 30 min, purge: 2 kg, scrap: 4 cycles }",
      "delivery={ kind: reciprocating-screw, plasticatingRate: 100 kg/h, drop: 1.8 s }",
    ),
    1,
  );

  it("heats and purges every morning before the first shot", () => {
    expect(hours(record, "plasticator", "heating")).toBe(2.5);
    // 2 kg at 100 kg/h take 72 s.
    expect(hours(record, "plasticator", "purging")).toBeCloseTo((5 * 72) / 3600, 9);
    expect(record.purgedMilligrams).toBe(10_000_000);
    const first = Math.min(...record.stations.map(({ firstShotTick }) => firstShotTick)) / 1e6;
    expect(first).toBeCloseTo(6 * 3600 + 1800 + 72 + 0.25 + 1.8, 3);
  });

  it("scraps the first cycles of each station every morning", () => {
    for (const { rejects } of record.stations) expect(rejects).toEqual([{ reason: "restart", parts: 5 * 4 * 2 }]);
  });

  it("counts the purge as feed", () => {
    const { feed, purged, parts, flash, lost, excess, inMolds } = massBalance(record)!;
    expect(purged).toBe(10_000_000);
    expect(parts + flash + lost + excess + inMolds + purged).toBe(feed);
  });
});

describe("a change of color", () => {
  it("purges the mass of two tanks in series, and stops every mold meanwhile", () => {
    const more = `changes: [{ name: to blue, kind: color, on: 2026-03-25, at: "10:00", time: 20 min, residue: 1 % }]`;
    const cell = scenario(
      more,
      "delivery={ kind: reciprocating-screw, plasticatingRate: 100 kg/h, drop: 1.8 s, holdUp: 1.2 kg, manifoldHoldUp: 0.3 kg }",
    );
    const record = run(cell);
    const mass = purgeMass({ screw: 1.2, manifold: 0.3, manifolds: 2, residue: 0.01 });
    expect(record.purgedMilligrams).toBe(Math.round(mass * 1e6));
    expect(hours(record, "plasticator", "changeover")).toBeCloseTo(1 / 3, 9);
    expect(hours(record, "plasticator", "purging")).toBeCloseTo(mass / 100, 6);
    for (const station of ["station 1", "station 2"]) {
      expect(hours(record, station, "changeover")).toBeGreaterThanOrEqual(1 / 3 + mass / 100 - 1e-6);
      expect(hours(record, station, "changeover")).toBeLessThan(1 / 3 + mass / 100 + 30 / 3600);
    }
    const gap = record.stations.flatMap(({ shotTicks }) =>
      shotTicks.filter((tick) => tick > 58.01 * 3.6e9 && tick < (58 + 1 / 3) * 3.6e9),
    );
    expect(gap).toEqual([]);
  });

  it("agrees with a numerical integration of both mass balances", () => {
    for (const [screw, manifold] of [
      [1.2, 0.3],
      [0.5, 0.5],
      [0.2, 0.9],
    ] as const) {
      let [first, second] = [1, 1];
      const step = 1e-5;
      for (let m = 0; m < 4; m += step) {
        // Explicit midpoint steps of a' = −a/V1 and b' = (a − b)/V2, an independent computation [C].
        const [halfFirst, halfSecond] = [
          first - (first / screw) * (step / 2),
          second + ((first - second) / manifold) * (step / 2),
        ];
        first -= (halfFirst / screw) * step;
        second += ((halfFirst - halfSecond) / manifold) * step;
      }
      expect(oldShare({ screw, manifold }, 4)).toBeCloseTo(second, 6);
    }
  });

  it("needs more melt for a cleaner color, a larger screw or a further manifold", () => {
    const base = { screw: 1.2, manifold: 0.3, manifolds: 2, residue: 0.01 };
    expect(purgeMass({ ...base, residue: 0.001 })).toBeGreaterThan(purgeMass(base));
    expect(purgeMass({ ...base, screw: 2 })).toBeGreaterThan(purgeMass(base));
    expect(purgeMass({ ...base, manifolds: 3 })).toBeGreaterThan(purgeMass(base));
  });
});

describe("a change of mold", () => {
  it("stops one station for its time, while the other one runs", () => {
    const cell = scenario("changes: [{ name: new mold, kind: mold, station: station 2, after: 30 h, time: 90 min }]");
    const record = run(cell);
    expect(hours(record, "station 2", "changeover")).toBeCloseTo(1.5, 9);
    const meanwhile = record.stations[0]!.shotTicks.filter((tick) => tick > 30.1 * 3.6e9 && tick < 31.4 * 3.6e9);
    expect(meanwhile.length).toBeGreaterThan(300);
  });
});

describe("a cell with calendar, stops, start-up, rejects, takeaway and changes", () => {
  const all = scenario(
    `crew: { operators: 1 }
stops: [{ name: jam, resource: every station, start: fresh, between: { exponential: 2 h }, repair: { gamma: [5 min, 2 min] }, by: operator }]
startUp: { afterOff: 6 h, heatUp: 30 min, scrap: 4 cycles }
quality: { lightest: 41.3 g, shotSpread: 1 %, rejects: 1 % }
takeaway: { trim: { time: 2 s, buffer: 6 }, pack: { time: 2 s, buffer: 12, by: operator } }
changes: [{ name: to blue, kind: color, after: 58 h, time: 20 min }]`,
    "stations.steps.clear={ time: 60 s, by: operator }",
    "stations.steps.cool={ triangular: [7 s, 7.5 s, 9 s] }",
  );

  const jam =
    "{ name: jam, resource: every station, start: fresh, between: { exponential: 2 h }, repair: { gamma: [5 min, 2 min] }, by: operator }";
  const onCall = (more: string): Scenario =>
    scenarioOf(
      cellText(
        2,
        `${week}
stops: [${jam}, { name: band, resource: plasticator, start: fresh, clock: calendar, between: { exponential: 7 h }, repair: { gamma: [1 h, 20 min] }, by: operator, shift: any },
  { name: air, resource: valve, start: fresh, clock: calendar, between: { exponential: 9 h }, repair: { gamma: [1 h, 20 min] }, shift: in },
  { name: leak, resource: every station, start: fresh, clock: calendar, between: { exponential: 9 h }, repair: { gamma: [1 h, 20 min] }, by: operator, shift: any, step: scrap }]
takeaway: { trim: { time: 2 s, buffer: 6 }, pack: { time: 2 s, buffer: 12, by: operator } }
startUp: { afterOff: 6 h, heatUp: 30 min, purge: 2 kg, scrap: 4 cycles }
changes: [{ name: to blue, kind: color, after: 58 h, time: 20 min }]
${more}`,
      ),
      "stations.steps.clear={ time: 60 s, by: operator }",
      "stations.steps.remove={ time: 0.8 s, by: operator }",
      "run.length=7 d",
      "run.warmup=auto",
    );

  it.each([
    ["on shift, one operator", all],
    ["on shift and on call, one operator", onCall("crew: { operators: 1 }")],
    [
      "on shift and on call, two operators who walk",
      onCall("crew: { operators: 2, walk: 5 s, priorities: [packing, repair] }"),
    ],
  ])("has exact sums of state times, critical paths and masses: repairs %s", (_, cell) => {
    for (const replication of [1, 2]) {
      const record = run(cell, replication);
      expect(record.standstill).toBeUndefined();
      const total = new Map<string, number>();
      for (const { resource, ticks } of record.stateTimes) total.set(resource, (total.get(resource) ?? 0) + ticks);
      expect([...new Set(total.values())]).toEqual([record.untilTick]);
      for (const unit of [null, "station 1", "station 2"]) {
        const own = record.elementTimes.filter(({ station }) => station === unit);
        expect(own.reduce((sum, { ticks }) => sum + ticks, 0)).toBe(record.untilTick);
      }
      for (const k of [0, 1]) {
        expect(record.chain.reduce((sum, { ticksByStation }) => sum + ticksByStation[k]!, 0)).toBe(record.untilTick);
      }
      const { feed, parts, flash, lost, excess, purged, inMolds } = massBalance(record)!;
      expect(parts + flash + lost + excess + purged + inMolds).toBe(feed);
      expect(inMolds).toBeLessThanOrEqual(2 * 109_200);
    }
  });
});

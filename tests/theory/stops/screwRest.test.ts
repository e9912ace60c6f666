// When the screw of continuous extrusion stops: all stations stopped for longer than a limit, or the end of a shift.
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { massBalance } from "#analysis/replication/massBalance.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { dropsOf } from "#cell/words/cycleNames.ts";
import { planCell, type CellPlan } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { Simulation } from "#engine/run/simulation.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { changesOf } from "../../support/calendarStop.ts";
import { caseCount } from "../../support/caseCount.ts";
import { scenarioOf } from "../../support/cellScenario.ts";

/** Parison 5 s, travel in 0.5 s, close 0.5 s, cut 0.25 s, travel out 0.5 s, then 10 s in the mold: 5.875 s a shot of two molds. */
function dieText(more: string, after = ""): string {
  return `format: 1
product: { partMass: 42 g, flash: 30 % of part }
delivery: { kind: continuous, rate: fixed, recharge: 5 s${after === "" ? "" : `, stopsScrewAfter: ${after}`} }
stations:
  count: 2
  cavities: 2
  steps: { travelIn: 0.5 s, close: 0.5 s, cut: 0.25 s, travelOut: 0.5 s, blow: 0.5 s, cool: 8 s, vent: 0.5 s, open: 0.25 s, remove: { time: 0.75 s }, clear: { time: 20 s } }
run: { length: 10 min, replications: 3, seed: test, warmup: 0 s }
${more}`;
}

const stop = (name: string, resource: string, at: string, repair: string, step = "finish"): string =>
  `{ name: ${name}, resource: ${resource}, clock: calendar, start: fresh, between: ${at}, repair: ${repair}, step: ${step} }`;

const thirty = { by: "time", time: { kind: "fixed", value: 30 } } as const;

function stopped(scenario: Scenario, until = 300): readonly string[] {
  const changes = changesOf(scenario, "plasticator", until);
  return changes.flatMap((each, i) => (each.endsWith(" stopped") ? [each, changes[i + 1] ?? "to the end"] : []));
}

// Station 1 is stopped from 100 s to 160 s, station 2 from 110 s to 190 s, and both from 110 s to 160 s, calculated by hand [C].
describe("a screw whose stations are all stopped", () => {
  const stops = `stops: [${stop("one", "station 1", "100 s", "60 s")}, ${stop("two", "station 2", "110 s", "80 s")}]`;
  const cell = (after: string): Scenario => scenarioOf(dieText(stops, after));

  it.each([
    ["20 s", ["130 stopped", "160 extruding to regrind"]],
    ["0 s", ["110 stopped", "160 extruding to regrind"]],
    ["49 s", ["159 stopped", "160 extruding to regrind"]],
    ["50 s", []],
    ["60 s", []],
    ["never", []],
    ["", []],
  ])("stops after %s", (after, expected) => {
    expect(stopped(cell(after), 205)).toEqual(expected);
  });

  it("sends melt to regrind only until it stops", () => {
    const tail = (after: string): number => {
      const { stateTimes } = runCell(planCell({ ...cell(after), run: { ...cell(after).run, length: 205 } }), {
        replication: 1,
      });
      return stateTimes.find(({ state }) => state === "extruding to regrind")!.ticks / 1e6;
    };
    expect(tail("never") - tail("20 s")).toBeCloseTo(30, 6);
    expect(tail("never") - tail("49 s")).toBeCloseTo(1, 6);
  });

  it("keeps an unfinished parison, and extrudes its rest afterwards", () => {
    const slow = {
      ...cell("0 s"),
      stations: cell("0 s").stations.map((station) => ({ ...station, recharge: thirty })),
    };
    // Parisons are caught at 0.5, 30.5, 60.5 and 90.5 s. The next has grown for 19.5 s at 110 s, and grows 10.5 s from 160 s on.
    expect(stopped(slow, 200)).toEqual(["110 stopped", "160 extruding a parison"]);
    const station = changesOf(slow, "station 1", 200).filter((each) => Number.parseFloat(each) > 91.5);
    // It travels in from 91.25 s on, beside the mold that travels out.
    expect(station.slice(0, 4)).toEqual(["91.75 awaiting melt", "100 stopped", "160 awaiting melt", "170.5 closing"]);
  });

  it("restarts the limit at a stop that follows another one at once", () => {
    // Station 2 is stopped from 100 to 280, station 1 from 110 to 150 and, by a second stop due at 120, from 150 to 190.
    const following = `stops: [${stop("long", "station 2", "100 s", "180 s")}, ${stop("one", "station 1", "110 s", "40 s")}, ${stop("two", "station 1", "120 s", "40 s")}]`;
    expect(stopped(scenarioOf(dieText(following, "30 s")), 200)).toEqual([
      "140 stopped",
      "150 extruding to regrind",
      "180 stopped",
      "190 extruding to regrind",
    ]);
  });

  it("keeps running while one station is not stopped", () => {
    const some = `stops: [${stop("one", "station 1", "100 s", "60 s")}]`;
    expect(stopped(scenarioOf(dieText(some, "1 s")))).toEqual([]);
  });

  it("restarts only after its own stop and the stops of the stations have ended", () => {
    // At 160 s a mold takes the parison that hangs at the die. The next parison grows from 175 s on.
    const both = stops.replace("]", `, ${stop("band", "plasticator", "140 s", "35 s")}]`);
    expect(stopped(scenarioOf(dieText(both, "20 s")), 205)).toEqual(["130 stopped", "175 extruding a parison"]);
  });

  it.each(["by: operator", "by: operator, shift: any"])(
    "stops for the same time when an operator repairs: %s",
    (by) => {
      const repaired = stops.replaceAll("step: finish", `step: finish, ${by}`);
      const calendar = `calendar: { from: 2026-03-23, at: "06:00", shifts: [{ start: "06:00", end: "14:00" }] }`;
      const crewed = scenarioOf(dieText(`${repaired}\n${calendar}\ncrew: { operators: 2 }`, "20 s"));
      expect(stopped(crewed, 205)).toEqual(["130 stopped", "160 extruding to regrind"]);
    },
  );
});

describe("the end of a shift", () => {
  it("stops the screw when its parison is complete, and sends no melt to regrind off shift", () => {
    const calendar = `calendar: { from: 2026-03-23, at: "06:00", shifts: [{ start: "06:00", end: "06:02" }, { start: "06:04", end: "06:30" }] }`;
    const changes = changesOf(scenarioOf(dieText(calendar)), "plasticator", 250);
    const off = changes.findIndex((each) => each.endsWith("off shift"));
    const [second] = changes[off]!.split(" ");
    expect(Number(second)).toBeGreaterThanOrEqual(120);
    expect(Number(second)).toBeLessThan(125);
    // A complete parison hangs at the die; the first mold takes it.
    expect(changes[off + 1]).toBe("240 extruding to regrind");
  });
});

describe("the key `stopsScrewAfter`", () => {
  const stops = `stops: [${stop("one", "every station", "100 s", "60 s")}]`;
  const read = (text: string) => readScenario(text, { name: "test", file: "test.yaml" });

  it("is listed as assumed with its reason when a scenario has continuous extrusion and stops", () => {
    const paths = (text: string): readonly string[] => read(text).assumed.map(({ path }) => path);
    const assumed = read(dieText(stops)).assumed.find(({ path }) => path === "delivery.stopsScrewAfter");
    expect(assumed?.value).toBe("never");
    expect(assumed?.reason).toContain("common practice, no published source");
    expect(paths(dieText(stops, "never"))).not.toContain("delivery.stopsScrewAfter");
    expect(paths(dieText(""))).not.toContain("delivery.stopsScrewAfter");
  });
});

interface MeltBalance {
  /** Ticks of tails beyond full parisons, of the parison that grows at the end, and of the stopped screw. */
  readonly tail: number;
  readonly growing: number;
  readonly stopped: number;
  /** Parisons that molds have caught. */
  readonly caught: number;
}

/** An independent balance [C], from the records of the stops and the ticks at which molds catch their parisons. */
function balanceOf(plan: CellPlan, { stops, untilTick }: CellRecord, after: number, parison: number): MeltBalance {
  const { stations, run } = plan.scenario;
  const marked = stations.map(({ name }) => dropsOf(name));
  const simulation = new Simulation(plan.program, { seed: run.seed, replication: 1 }, marked);
  simulation.runUntil(untilTick);
  const stationStops = stations.map(({ name }) => stops.filter(({ resource }) => resource === name));
  const rests = stationStops[0]!.flatMap((one) =>
    stationStops[1]!.flatMap((other) => {
      const from = Math.max(one.fromTick, other.fromTick) + after;
      const until = Math.min(one.untilTick ?? untilTick, other.untilTick ?? untilTick);
      return from < until ? [{ from, until }] : [];
    }),
  );
  const runningTicks = (from: number, until: number): number =>
    until -
    from -
    rests.reduce((sum, each) => sum + Math.max(0, Math.min(each.until, until) - Math.max(each.from, from)), 0);
  const ticks = [...simulation.marks.ticks];
  // A running start has a full parison at the die: all melt before the first catch is its tail.
  const first = runningTicks(0, ticks[0] ?? untilTick);
  const spans = ticks.map((tick, i) => runningTicks(tick, ticks[i + 1] ?? untilTick));
  return {
    tail: first + spans.reduce((sum, each) => sum + Math.max(0, each - parison), 0),
    growing: Math.min(parison, spans.at(-1) ?? 0),
    caught: ticks.length,
    stopped: rests.reduce((sum, { from, until }) => sum + until - from, 0),
  };
}

// Conservation of mass: the die delivers rate × running time.
test("the mass balance is exact to the milligram for random stops of the stations", () => {
  const cells = fc.record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    after: fc.integer({ min: 0, max: 90 }),
    parison: fc.integer({ min: 2, max: 12 }),
    step: fc.constantFrom("finish", "hold", "scrap"),
  });
  const seen = { rests: 0, lost: 0 };
  fc.assert(
    fc.property(cells, ({ seed, after, parison, step }) => {
      const stops = [1, 2].map((k) =>
        stop(`jam ${k}`, `station ${k}`, "{ exponential: 60 s }", "{ exponential: 60 s }", step),
      );
      const scenario = scenarioOf(
        dieText(`stops: [${stops.join(", ")}]`, `${after} s`),
        `run.seed="${seed}"`,
        `delivery.recharge=${parison} s`,
        "stations.steps.cool={ triangular: [5 s, 8 s, 12 s] }",
      );
      const plan = planCell(scenario);
      const record = runCell(plan, { replication: 1 });
      const [P, shot] = [parison * 1e6, 109_200];
      const balance = balanceOf(plan, record, after * 1e6, P);
      const rate = shot / P;
      const rests = record.stateTimes.find(({ resource, state }) => resource === "plasticator" && state === "stopped");
      expect(rests!.ticks).toBe(balance.stopped);
      expect(Math.abs(record.excessMilligrams! - rate * balance.tail)).toBeLessThanOrEqual(0.5);
      const { parts, flash, lost, excess, inMolds, feed } = massBalance(record)!;
      expect(parts + flash + lost + excess + inMolds).toBe(feed);
      const cutOrLost = record.stations.reduce((sum, { shots, lostDrops }) => sum + shots + lostDrops, 0);
      const notYetCut = balance.caught - cutOrLost;
      // At most one mold has caught a parison without having cut it, and each mold holds at most one shot.
      expect(notYetCut).toBeGreaterThanOrEqual(0);
      expect(notYetCut).toBeLessThanOrEqual(1);
      expect(inMolds).toBeGreaterThanOrEqual(0);
      expect(inMolds).toBeLessThanOrEqual(2 * shot);
      const extruded = rate * (record.untilTick - balance.stopped) + shot;
      expect(Math.abs(feed + notYetCut * shot + rate * balance.growing - extruded)).toBeLessThanOrEqual(1);
      seen.rests += balance.stopped > 0 ? 1 : 0;
      seen.lost += record.stations.some(({ lostDrops }) => lostDrops > 0) ? 1 : 0;
    }),
    { seed: 20261210 },
  );
  expect(seen.rests).toBeGreaterThan(caseCount / 4);
  expect(seen.lost).toBeGreaterThan(caseCount / 10);
});

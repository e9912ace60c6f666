// Holds the quarters of an hour of a calendar to sums over the event log of the same run.
import { describe, expect, it } from "vitest";
import { eventRecorder, type EventRecord } from "#cell/records/eventRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { dayUses, type DayUse, type QuarterRecord } from "#cell/records/quarterRecord.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const planned = `crew: { operators: 1 }
stops: [{ name: jam, resource: every station, between: { exponential: 40 min }, repair: { exponential: 4 min }, by: operator }]
calendar: { from: 2026-03-28, at: "20:10", shifts: [{ start: "05:00", end: "13:00", breaks: [{ at: "09:00", time: 20 min }] }], clockChanges: [{ on: 2026-03-29, at: "02:00", by: 1 h }] }
startUp: { afterOff: 6 h, heatUp: 35 min, purge: 3 kg, scrap: 2 cycles }
changes: [{ name: blue, kind: color, on: 2026-03-29, at: "11:05", time: 17 min, residue: 1 % }]`;
const cell = scenarioOf(
  cellText(2, planned).replace("recharge: 4 s,", "recharge: 4 s, holdUp: 2 kg, manifoldHoldUp: 0.3 kg,"),
  "stations.steps.clear={ time: 60 s, by: operator }",
  "run.length=40 h",
  "run.warmup=0 s",
);
const quartersOf = (scenario: Scenario): readonly QuarterRecord[] =>
  runCell(planCell(scenario), { replication: 1 }).quarters ?? [];
const quarters = quartersOf(cell);

interface Stay {
  readonly from: number;
  readonly until: number;
  readonly state: string;
  readonly kind: string;
}

function staysOf(resource: string, events: readonly EventRecord[]): readonly Stay[] {
  const own = events.filter((event) => event.resource === resource);
  return own.map(({ seconds, state, kind }, i) => ({
    from: seconds,
    until: own[i + 1]?.seconds ?? 40 * 3600,
    state,
    kind,
  }));
}

const overlap = (one: Pick<Stay, "from" | "until">, other: Pick<Stay, "from" | "until">): number =>
  Math.max(0, Math.min(one.until, other.until) - Math.max(one.from, other.from));

/** A mapping of state names that is independent of the program's own. */
function useOf({ state, kind }: Stay): DayUse {
  if (state === "changeover") return "changeover";
  if (state === "off shift") return "off";
  if (kind === "set-up") return "start-up";
  if (state === "stopped" || state === "being cleared") return "stopped";
  return kind === "waiting" ? "waiting" : "working";
}

describe("the quarters of an hour of a run on a calendar", () => {
  const events = [...eventRecorder(cell)(1)];
  const screw = staysOf("plasticator", events).filter(({ state }) => state === "heating" || state === "purging");
  const stations = ["station 1", "station 2"].map((name) => staysOf(name, events));

  it("have the station times of the event log, start-up separately", () => {
    const expected = quarters.map((quarter) => {
      const sums: Record<DayUse, number> = { working: 0, waiting: 0, stopped: 0, "start-up": 0, changeover: 0, off: 0 };
      for (const stay of stations.flat()) {
        const inside = { from: Math.max(stay.from, quarter.from), until: Math.min(stay.until, quarter.until) };
        if (inside.until <= inside.from) continue;
        const prepared = stay.state.startsWith("awaiting ")
          ? screw.reduce((sum, each) => sum + overlap(inside, each), 0)
          : 0;
        sums["start-up"] += prepared / 2;
        sums[useOf(stay)] += (inside.until - inside.from - prepared) / 2;
      }
      return dayUses.map((use) => sums[use]);
    });
    expect(quarters.length).toBe(Math.ceil(40 * 4) + 1);
    quarters.forEach(({ seconds }, i) =>
      seconds.forEach((each, use) =>
        expect(each, `${dayUses[use]} of quarter ${i}`).toBeCloseTo(expected[i]![use]!, 4),
      ),
    );
    // Every use must occur, or the comparison would prove nothing.
    for (const use of dayUses.keys()) expect(quarters.some(({ seconds }) => seconds[use]! > 0)).toBe(true);
  });

  it("begin at whole quarters of wall time, with the dates of wall time", () => {
    expect(quarters.slice(1).every(({ second }) => second % 900 === 0)).toBe(true);
    expect(quarters[0]).toMatchObject({ second: 20 * 3600 + 600, from: 0, until: 300 });
    const sunday = quarters.filter(({ day }) => day === Date.UTC(2026, 2, 29) / 86_400_000);
    expect(sunday).toHaveLength(23 * 4);
    expect(sunday.some(({ second }) => second >= 2 * 3600 && second < 3 * 3600)).toBe(false);
  });

  it("count every good part once", () => {
    const record = runCell(planCell(cell), { replication: 1 });
    const good = record.stations.reduce(
      (sum, { parts, rejects }) => sum + parts - rejects.reduce((all, each) => all + each.parts, 0),
      0,
    );
    expect(quarters.reduce((sum, each) => sum + each.good, 0)).toBe(good);
    expect(good).toBeGreaterThan(1000);
  });

  it("are empty without a calendar", () => {
    expect(quartersOf(scenarioOf(cellText(1)))).toEqual([]);
  });
});

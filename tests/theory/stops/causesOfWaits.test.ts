// What a station shows while it waits for melt: heat-up, purge, and stops of screw and valve, from the second at which each begins.
import * as fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { EventLog } from "#engine/run/eventLog.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { changesOf, stoppedCell } from "../../support/calendarStop.ts";
import { caseCount } from "../../support/caseCount.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { disturbed } from "../../support/randomDisturbances.ts";
import { everywhere, randomScenario } from "../../support/randomScenario.ts";

/** From 05:00: off shift for an hour, heat-up for 45 min, then a purge. */
function startUp(more: readonly string[] = [], purge = "2.73 kg"): Scenario {
  const text = cellText(
    2,
    `calendar: { from: 2026-03-23, at: "05:00", shifts: [{ start: "06:00", end: "14:00" }] }
startUp: { afterOff: 30 min, heatUp: 45 min, purge: ${purge}, scrap: 0 cycles }`,
  );
  return scenarioOf(text, "run.warmup=auto", "run.length=3 h", ...more);
}

const head = "kind: accumulator-head, recharge: 4 s, drop: 1.8 s";
const deliveries: readonly (readonly [string, readonly string[]])[] = [
  ["a reciprocating screw", []],
  ["an accumulator head for each station", [`delivery={ ${head}, accumulator: per-station }`]],
  ["a common accumulator", [`delivery={ ${head}, accumulator: common, shotCapacity: 200 g }`]],
  [
    "continuous extrusion",
    [
      "delivery={ kind: continuous, rate: fixed, recharge: 4 s }",
      "valve={ dispatch: first-ready }",
      "stations.steps={ travelIn: 0.5 s, close: 0.6 s, cut: 0.2 s, travelOut: 0.5 s, blow: 0.5 s, cool: 8 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s } }",
    ],
  ],
];

describe("a start of a work shift", () => {
  // By hand [C]: off shift until 3,600 s, heat-up until 6,300 s. A shot of 2 × 54.6 g = 109.2 g takes 4 s (98.28 kg/h), so that
  // 2.73 kg take 100 s.
  it.each(deliveries)("shows heat-up and purge at every station, with %s", (_, set) => {
    for (const station of ["station 1", "station 2"]) {
      const changes = changesOf(startUp(set), station, 7200).filter((each) => Number.parseFloat(each) >= 3600);
      expect(changes.slice(0, 2)).toEqual(["3600 awaiting heat-up", "6300 awaiting purge"]);
      expect(changes[2]).toMatch(/^6400 /u);
    }
  });

  it("shows no purge where there is none", () => {
    const changes = changesOf(startUp([], "0 kg"), "station 1", 7200);
    expect(changes.filter((each) => each.includes("awaiting purge"))).toEqual([]);
    expect(changes).toContain("3600 awaiting heat-up");
  });
});

describe("a station that already waits for melt when the screw or the valve stops", () => {
  // By hand [C]: shift 1 s, drop 2 s, shift back 1 s, recharge 4 s until 8. Station 2 is ready from the beginning.
  const second = (resource: string, step: "finish" | "hold"): readonly string[] =>
    changesOf(stoppedCell({ resource, at: 5, repair: 20, step }, 2), "station 2", 40).slice(0, 4);

  it("shows the stop of the screw from its beginning to its end, and melt before and after it", () => {
    // The recharge is held from 5 to 25 and lasts until 28.
    expect(second("plasticator", "hold")).toEqual([
      "0 awaiting melt",
      "5 screw stopped",
      "25 awaiting melt",
      "28 valve shifting to it",
    ]);
  });

  it("shows melt while a recharge is finished, and then the stop that keeps the full shot from the drop", () => {
    expect(second("plasticator", "finish").slice(0, 3)).toEqual([
      "0 awaiting melt",
      "8 screw stopped",
      "25 valve shifting to it",
    ]);
  });

  it("shows the stop of the valve", () => {
    expect(second("valve", "hold").slice(0, 3)).toEqual([
      "0 awaiting melt",
      "5 valve stopped",
      "25 valve shifting to it",
    ]);
  });
});

describe("a station that becomes ready during a stop", () => {
  // By hand [C]: ready at 14; the screw has been full since 8.
  it("shows the stop, not the step before", () => {
    const cell = stoppedCell({ resource: "plasticator", at: 10, repair: 20, step: "hold" });
    expect(changesOf(cell, "station 1", 31).slice(-3)).toEqual([
      "13 removal",
      "14 screw stopped",
      "30 valve shifting to it",
    ]);
  });
});

const waits = ["awaiting melt", "awaiting turn", "awaiting valve", "screw stopped", "valve stopped"];

test("at every instant of random cells, a station that lacks melt shows a stop exactly while that stop is shown", () => {
  const cells = disturbed(randomScenario({ ...everywhere, length: 150 }));
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(cells, (scenario) => {
      const plan = planCell(scenario);
      const log = new EventLog();
      runCell(plan, { replication: 1, log });
      const { states, table } = plan.program;
      const shown = new Map<string, string>();
      const events = Array.from(log);
      events.forEach(({ time, resource, state }, i) => {
        shown.set(table.resources[resource]!.name, states[state]!.name);
        // All that happens at one instant counts together.
        if (events[i + 1]?.time === time) return;
        for (const { name } of scenario.stations) {
          const wait = shown.get(name)!;
          if (!waits.includes(wait)) continue;
          const [screw, valve] = ["plasticator", "valve"].map((each) => shown.get(each) === "stopped");
          // A wait for the valve alone, or for the turn of others, does not depend on the screw.
          if (wait === "valve stopped") expect(valve).toBe(true);
          else if (wait === "awaiting valve") expect(valve).toBe(false);
          else if (wait !== "awaiting turn") {
            const expected = screw ? "screw stopped" : valve ? "valve stopped" : "awaiting melt";
            expect([time, name, wait]).toEqual([time, name, expected]);
          }
          seen.set(wait, (seen.get(wait) ?? 0) + 1);
        }
      });
    }),
    { seed: 20261130 },
  );
  for (const wait of ["awaiting melt", "screw stopped", "valve stopped"])
    expect(seen.get(wait), wait).toBeGreaterThan(caseCount);
});

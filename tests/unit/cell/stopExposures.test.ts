// The clock of each stop: calendar time without its own stops, the working time of its resource, or cycles.
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const stops = `stops:
  - { name: by time, resource: valve, between: { exponential: 20 min }, clock: calendar, repair: 2 min, by: itself, step: hold }
  - { name: by work, resource: station 1, between: { exponential: 10 min }, repair: 1 min, by: itself, step: hold }
  - { name: by cycles, resource: station 2, cycles: 40, repair: 30 s, by: itself, step: hold }
  - { name: by all cycles, resource: plasticator, cycles: 90, repair: 30 s, by: itself, step: hold }`;

const seconds = (ticks: number): number => ticks / 1e6;

function exposures(): { readonly record: CellRecord; readonly clocks: readonly (number | null)[] } {
  const record = runCell(planCell(scenarioOf(cellText(2, stops), "stations.steps.clear={ time: 30 s, by: machine }")), {
    replication: 1,
  });
  return { record, clocks: record.stopExposures.map(({ clock }) => clock) };
}

describe("the clock of a stop", () => {
  const { record, clocks } = exposures();
  const { fromTick, untilTick } = record;
  const stoppedSeconds = (name: string): number =>
    record.stops
      .filter(({ stop }) => stop === name)
      .reduce((sum, stop) => {
        const within = Math.min(untilTick, stop.untilTick ?? untilTick) - Math.max(fromTick, stop.fromTick);
        return sum + Math.max(0, seconds(within));
      }, 0);

  it("by the calendar is the observed time without its own stops", () => {
    expect(stoppedSeconds("by time")).toBeGreaterThan(0);
    expect(clocks[0]).toBeCloseTo(seconds(untilTick - fromTick) - stoppedSeconds("by time"), 6);
  });

  it("by work is the working time of its resource alone", () => {
    const working = record.stateTimes.filter(({ resource, kind }) => resource === "station 1" && kind === "working");
    const sum = seconds(working.reduce((total, { ticks }) => total + ticks, 0));
    expect(sum).toBeGreaterThan(3600);
    expect(clocks[1]).toBeCloseTo(sum, 6);
    // Neither the observed time nor that of another resource.
    expect(clocks[1]! + 60).toBeLessThan(seconds(untilTick - fromTick));
  });

  it("by cycles is the number of shots: of its station, or of all for what serves all", () => {
    const [one, two] = record.stations.map(({ shots }) => shots);
    expect(one! + two!).toBeGreaterThan(500);
    expect([clocks[2], clocks[3]]).toEqual([two, one! + two!]);
  });
});

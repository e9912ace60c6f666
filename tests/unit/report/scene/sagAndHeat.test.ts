// Sag and wall temperature in the scene against the table of shots.
import { describe, expect, it } from "vitest";
import { shotRecords } from "#cell/records/shotRecord.ts";
import { sceneAt } from "#report/scene/sceneAt.ts";
import { recorded } from "./shippedScenes.ts";

const names = ["large-part", "thin-bottle", "bottle-continuous", "canister-accumulator-head", "two-station"];

describe.each(names)("the shots of %s", (name) => {
  const { scenario, record, events } = recorded(`scenarios/${name}.yaml`, name === "large-part" ? 1 : 0.2);
  const shots = shotRecords(events, scenario).slice(2, 20);
  const moldAt = (station: string, seconds: number) =>
    sceneAt(record, seconds).stations.find((each) => each.name === station)!.mold;

  it("open at the demold temperature of the table, and no part gets colder in the air", () => {
    let compared = 0;
    for (const { station, starts, demoldTemperature } of shots) {
      const opened = starts.get("open");
      if (opened === undefined || demoldTemperature === null) continue;
      expect(Math.abs(moldAt(station, opened).hottest! - demoldTemperature)).toBeLessThan(0.05);
      expect(moldAt(station, opened + 0.1).hottest).toBe(moldAt(station, opened).hottest);
      // The wall is at its hottest until it touches the mold.
      const [blow, drop] = [starts.get("blow")!, starts.get("drop")];
      expect(moldAt(station, blow).hottest!).toBeGreaterThan(demoldTemperature);
      if (drop !== undefined) expect(moldAt(station, (drop + blow) / 2).hottest).toBe(moldAt(station, blow).hottest);
      expect(moldAt(station, (blow + 2 * opened) / 3).hottest!).toBeLessThan(moldAt(station, blow).hottest!);
      compared++;
    }
    expect(compared).toBeGreaterThan(3);
  });

  it("sag as far as the table says when the mold has closed, and never less before", () => {
    let compared = 0;
    for (const { station, starts, hang, sag } of shots) {
      if (sag === null || hang === null) continue;
      const closed = starts.get(name === "bottle-continuous" ? "cut" : "blow")!;
      const [early, late] = [closed - hang / 2, closed].map((seconds) => moldAt(station, seconds).sag!);
      expect(late).toBeCloseTo(sag, 9);
      expect(early).toBeLessThan(late!);
      expect(early).toBeGreaterThan(0);
      compared++;
    }
    expect(compared > 3).toBe(["large-part", "canister-accumulator-head"].includes(name));
  });
});

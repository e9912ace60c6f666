// Scenes of random cells with stops, walks, packing and every kind of delivery but continuous extrusion.
import * as fc from "fast-check";
import { expect, it } from "vitest";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import { recordScene } from "#report/scene/recordScene.ts";
import type { Scene } from "#report/scene/scene.ts";
import { sceneAt } from "#report/scene/sceneAt.ts";
import { resourcesIn, sceneWords } from "#report/scene/sceneWords.ts";
import { wayBack } from "#report/scene/wayBack.ts";
import { caseCount, oneIn } from "../../../support/caseCount.ts";
import { disturbed } from "../../../support/randomDisturbances.ts";
import { everywhere, randomScenario } from "../../../support/randomScenario.ts";

const seconds = 300;

function expectWhole(scene: Scene): void {
  for (const { mold, role, kind, state } of scene.stations) {
    expect(mold.closed).toBeGreaterThanOrEqual(0);
    expect(mold.closed).toBeLessThanOrEqual(1);
    expect(mold.parison).toBeGreaterThanOrEqual(0);
    expect(mold.parison).toBeLessThanOrEqual(1);
    if (kind === "working" && role === "mold.cool") {
      expect(mold).toMatchObject({ closed: 1, content: "part", air: "held", parison: 1 });
    }
    if (kind === "working" && role === "mold.remove")
      expect(mold).toMatchObject({ closed: 0, content: "part", air: "none" });
    if (state.startsWith("awaiting melt")) expect(mold).toMatchObject({ closed: 0, content: "nothing", parison: 0 });
  }
  for (const melt of [scene.screw.melt, ...scene.rams.map((ram) => ram.melt)]) {
    if (!melt) continue;
    expect(melt.share).toBeGreaterThanOrEqual(0);
    expect(melt.share).toBeLessThanOrEqual(1);
    expect(melt.grams).toBeGreaterThanOrEqual(0);
  }
  for (const { before, room } of scene.servers) {
    expect(before).toBeGreaterThanOrEqual(0);
    expect(before).toBeLessThanOrEqual(room!);
  }
  for (const { at, walksTo, kind } of scene.operators) {
    expect([at, walksTo].filter((each) => each !== null).length).toBe(kind === "working" ? 1 : 0);
  }
}

it("has the states of the events, whole molds, and words for everything, at random times", () => {
  let waits = 0;
  const property = fc.property(
    disturbed(randomScenario(everywhere)),
    fc.array(fc.nat(seconds * 10)),
    (scenario, tenths) => {
      const record = recordScene(scenario, { until: seconds });
      const events = [...eventRecorder(scenario)(1)];
      for (const time of tenths.map((each) => each / 10)) {
        const scene = sceneAt(record, time);
        const known = events.filter((event) => event.seconds <= time);
        const states = Object.fromEntries(known.map(({ resource, state }) => [resource, state]));
        expect(Object.fromEntries(resourcesIn(scene).map(({ name, state }) => [name, state]))).toEqual(states);
        expectWhole(scene);
        expect(JSON.stringify(scene)).not.toContain("undefined");
        for (const { name, kind } of resourcesIn(scene)) {
          const words = Object.values(sceneWords(record, scene, name)).filter((each) => typeof each === "string");
          for (const sentence of words) expect(sentence).not.toMatch(/null|undefined|NaN|Infinity/);
          if (kind !== "waiting") continue;
          waits++;
          const { links } = wayBack(record, name, time);
          for (const [i, link] of links.entries()) {
            expect(link.from).toBeLessThanOrEqual(link.until);
            if (i > 0) expect(link.until).toBeLessThanOrEqual(links[i - 1]!.from);
          }
        }
      }
    },
  );
  fc.assert(property, { numRuns: oneIn(2), seed: 20261129 });
  expect(waits).toBeGreaterThan(caseCount);
});

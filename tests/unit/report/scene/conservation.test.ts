// Melt and parts in the scene: nothing comes from nowhere, and nothing is lost.
import { describe, expect, it } from "vitest";
import { sceneAt } from "#report/scene/sceneAt.ts";
import type { Scene } from "#report/scene/scene.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { firstCases } from "../../../support/caseCount.ts";
import { recorded, settledScenario } from "./shippedScenes.ts";
import { recordScene } from "#report/scene/recordScene.ts";
import { commonText } from "./commonCell.ts";
import { scenarioOf } from "../../../support/cellScenario.ts";

/** Without stops, since melt of a shot that is lost goes to regrind. */
const fed = ["two-station", "two-molds", "canister-accumulator-head", "canister-reciprocating", "large-part"];

/** At every moment, and half way to the next one. */
function scenesOf(record: SceneRecord): readonly Scene[] {
  const { moments } = record;
  const times = [...moments].flatMap((seconds, i) => {
    return i + 1 < moments.length ? [seconds, (seconds + moments[i + 1]!) / 2] : [seconds];
  });
  return times.map((seconds) => sceneAt(record, seconds));
}

/** Grams that screw and rams hold. */
const heldGrams = ({ screw, rams }: Scene): number =>
  [screw.melt, ...rams.map(({ melt }) => melt)].reduce((sum, melt) => sum + (melt?.grams ?? 0), 0);

/** Grams delivered since the start, the parisons that drop now included. */
const deliveredGrams = ({ stations }: Scene): number =>
  stations.reduce((sum, { shots, shotGrams, role, mold }) => {
    return sum + (shots + (role === "mold.drop" ? mold.parison : 0)) * (shotGrams ?? 0);
  }, 0);

function expectMeltKept(scenes: readonly Scene[]): void {
  const made = scenes.map((scene) => heldGrams(scene) + deliveredGrams(scene));
  scenes.slice(1).forEach((scene, i) => {
    const gain = made[i + 1]! - made[i]!;
    expect(gain).toBeGreaterThan(-1e-6);
    if (scenes[i]!.screw.state !== "recharging") expect(Math.abs(gain)).toBeLessThan(1e-6);
    else expect(gain).toBeGreaterThan(0);
    expect(scene.seconds).toBeGreaterThanOrEqual(scenes[i]!.seconds);
  });
  const last = scenes.at(-1)!;
  expect(last.stations.reduce((sum, { shots }) => sum + shots, 0)).toBeGreaterThan(10);
}

describe.each(firstCases(fed, 1))("the melt of %s", (name) => {
  const record = recordScene(settledScenario(`scenarios/${name}.yaml`), { until: name === "large-part" ? 1800 : 600 });

  it("comes only while the screw recharges, and goes only where a parison grows", () => {
    expectMeltKept(scenesOf(record));
  });

  it("fills the screw or the heads in proportion to the time", () => {
    const fillingOf = ({ screw, rams }: Scene) =>
      [screw, ...rams].flatMap(({ name: holder, state, since, until, progress, melt }) =>
        (state === "recharging" || state === "filling") && melt && until !== null && until <= record.until
          ? [{ holder, since, until, progress, share: melt.share }]
          : [],
      );
    const shareAt = (seconds: number, holder: string): number => {
      const { screw, rams } = sceneAt(record, seconds);
      return [screw, ...rams].find((each) => each.name === holder)!.melt!.share;
    };
    const filling = scenesOf(record)
      .filter((_, i) => i % 7 === 3)
      .flatMap(fillingOf);
    expect(filling.length).toBeGreaterThan(5);
    for (const { holder, since, until, progress, share } of filling) {
      const start = shareAt(since, holder);
      expect(share).toBeCloseTo(start + (1 - start) * progress, 9);
      expect(shareAt(until, holder)).toBe(1);
    }
  });
});

describe("the melt of a common accumulator", () => {
  it.each(["running", "cold"])("is kept where the cell starts %s", (start) => {
    const record = recordScene(scenarioOf(commonText, `run.start=${start}`), { until: 300 });
    const scenes = scenesOf(record);
    expectMeltKept(scenes);
    for (const { rams } of scenes) {
      expect(rams[0]!.melt.grams!).toBeLessThanOrEqual(rams[0]!.melt.capacityGrams! + 1e-6);
      expect(rams[0]!.melt.grams!).toBeGreaterThanOrEqual(0);
    }
    // While it holds a full shot the largest shot is there.
    const full = scenes.filter(({ rams }) => rams[0]!.state === "holding a full shot");
    expect(full.length).toBeGreaterThan(0);
    for (const { rams } of full) expect(rams[0]!.melt.share).toBeGreaterThan(1 - 1e-6);
  });
});

describe("the parts of scenarios/slow-trimmer.yaml", () => {
  const { record } = recorded("scenarios/slow-trimmer.yaml", 0.25);

  it("are all at a server, before one or past the last, but for rejects", () => {
    let lostSoFar = [0, 0, 0];
    for (const { servers, goodParts } of scenesOf(record)) {
      const lost = servers.slice(1).map(({ before, places, passed }, i) => {
        const held = places.filter(({ state }) => state !== "starved").length;
        return servers[i]!.passed - passed - before - held;
      });
      // Only the leak test refuses parts.
      expect([lost[0], lost[2]]).toEqual([0, 0]);
      expect(lost[1]).toBeGreaterThanOrEqual(lostSoFar[1]!);
      expect(servers.at(-1)!.passed).toBe(goodParts);
      lostSoFar = lost;
    }
    expect(lostSoFar[1]).toBeGreaterThan(0);
  });
});

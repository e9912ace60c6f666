// Words of known moments, and where the way back from them leads.
import { describe, expect, it } from "vitest";
import { recordScene } from "#report/scene/recordScene.ts";
import { sceneAt } from "#report/scene/sceneAt.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { sceneWords } from "#report/scene/sceneWords.ts";
import { waitFrom } from "#report/scene/moments.ts";
import { wayBack } from "#report/scene/wayBack.ts";
import { settledScenario } from "./shippedScenes.ts";

function recordOf(name: string, minutes: number): SceneRecord {
  return recordScene(settledScenario(`scenarios/${name}.yaml`), { until: minutes * 60 });
}

/** Where this resource waits in this state for the n-th time, half of the wait later. */
function inWait(record: SceneRecord, resource: string, state: string, from = 0): number {
  for (let at = waitFrom(record, resource, from, "next"); at !== null; at = waitFrom(record, resource, at, "next")) {
    const scene = sceneAt(record, at);
    const found = [scene.screw, ...scene.stations, ...scene.operators].find(({ name }) => name === resource)!;
    if (found.state === state && found.until !== null) return (found.since + found.until) / 2;
  }
  throw new Error(`${resource} never waits in the state ${state}`);
}

const wordsIn = (record: SceneRecord, resource: string, seconds: number) =>
  sceneWords(record, sceneAt(record, seconds), resource);

describe("a station that waits for melt", () => {
  const record = recordOf("small-screw", 15);
  const seconds = inWait(record, "left", "awaiting melt", 600);
  const words = wordsIn(record, "left", seconds);

  it("needs a full shot, in grams", () => {
    const { screw } = sceneAt(record, seconds);
    expect(screw.state).toBe("recharging");
    expect(words.needs).toBe(`It needs a full shot: ${Math.round(screw.melt!.share * 109.2)} of 109 g.`);
  });

  it("was freed by the screw, and the reader can go to the recharge", () => {
    expect(words.turnedOut).toMatch(/^Freed at \d+\.\d\d s by the screw: recharging\.$/);
    expect(words.freedBy!.resource).toBe("plasticator");
    expect(sceneAt(record, words.freedBy!.seconds).screw).toMatchObject({
      state: "recharging",
      since: words.freedBy!.seconds,
    });
  });

  it("leads back to the screw, which sets the pace", () => {
    const { links, pace } = wayBack(record, "left", seconds);
    expect(links.map(({ words: each }) => each)).toEqual([
      "the screw: recharging",
      "the valve: shifting to neutral",
      "right: parison drop",
      "the valve: shifting to the port",
    ]);
    expect(pace!.resource).toBe("plasticator");
    expect(pace!.words).toMatch(/^The screw sets the pace here: \d+\.\d\d of \d+\.\d\d s of the way back\.$/);
  });
});

describe("a screw that waits for a mold", () => {
  const record = recordOf("one-station", 5);
  const seconds = inWait(record, "plasticator", "holding a full shot", 60);
  const { needs, turnedOut, caution } = wordsIn(record, "plasticator", seconds);

  it("needs an open and empty mold, was freed by the removal, and its melt ages", () => {
    expect(needs).toBe("It needs an open and empty mold: left is cooling.");
    expect(turnedOut).toMatch(/^Freed at \d+\.\d\d s by left: removal\.$/);
    expect(caution).toContain("The melt ages");
  });

  it("leads back through the whole cycle of the mold", () => {
    const { links, pace } = wayBack(record, "plasticator", seconds);
    expect(links.map(({ step }) => step)).toEqual([
      "remove",
      "open",
      "vent",
      "cool",
      "blow",
      "close",
      "drop",
      "shift to port",
    ]);
    for (const [i, link] of links.slice(1).entries()) expect(link.until).toBe(links[i]!.from);
    expect(pace!.resource).toBe("left");
  });
});

describe("a station that waits for an operator", () => {
  it("knows where the operator is, and was freed by that work", () => {
    const record = recordOf("one-operator", 30);
    const seconds = inWait(record, "side 2", "no operator free");
    const at = sceneAt(record, seconds).operators[0]!.at;
    const { needs, turnedOut, freedBy } = wordsIn(record, "side 2", seconds);
    expect(needs).toBe(`It needs an operator: operator 1 is at ${at}.`);
    expect(turnedOut).toMatch(new RegExp(`^Freed at [\\d,.]+ s by ${at}: removal\\.$`, "u"));
    expect(freedBy!.resource).toBe(at);
  });

  it("waits for the walk next", () => {
    const record = recordOf("one-operator-four-molds", 20);
    const seconds = inWait(record, "side 4", "no operator free", 300);
    const called = wordsIn(record, "side 4", seconds);
    const end = sceneAt(record, seconds).stations.find(({ name }) => name === "side 4")!.until!;
    expect(called.turnedOut).toMatch(/^Freed at [\d,.]+ s by (?:packing|side \d: removal)\.$/);
    expect(wordsIn(record, "side 4", end).needs).toBe("It needs operator 1, who walks to it.");
    expect(wordsIn(record, "side 4", end).turnedOut).toMatch(/by an operator's walk to side 4\.$/);
    expect(sceneAt(record, end).operators[0]).toMatchObject({ at: null, walksTo: "side 4", state: "walking" });
  });
});

describe("other waits", () => {
  it("of a head: its own chamber has the grams", () => {
    const record = recordOf("canister-accumulator-head", 30);
    const seconds = inWait(record, "side 2", "awaiting melt", 600);
    const { rams } = sceneAt(record, seconds);
    const { grams, shotGrams } = rams.find(({ of }) => of === "side 2")!.melt;
    expect(wordsIn(record, "side 2", seconds).needs).toBe(
      `It needs a full shot: ${Math.round(grams!)} of ${Math.round(shotGrams!)} g.`,
    );
  });

  it("of a continuous screw: its molds and what they do", () => {
    const record = recordOf("bottle-continuous", 15);
    const seconds = inWait(record, "plasticator", "extruding to regrind", 300);
    expect(sceneAt(record, seconds).screw.parison).toBeGreaterThan(1);
    const { needs, turnedOut } = wordsIn(record, "plasticator", seconds);
    expect(needs).toMatch(/^It needs a mold under the die: .*travels in.*\.$/);
    expect(turnedOut).toMatch(/^Freed at [\d,.]+ s by (?:left|right): travel in\.$/);
  });

  it("of a mold whose parts find no room", () => {
    const record = recordOf("slow-trimmer", 30);
    const seconds = inWait(record, "side 1", "awaiting takeaway", 600);
    const { needs, turnedOut } = wordsIn(record, "side 1", seconds);
    expect(needs).toBe("It needs room at belt: all 12 places are taken.");
    expect(turnedOut).toMatch(/by trim\.$/);
  });

  it("of a stopped station: who repairs it, and when it ended", () => {
    const record = recordOf("stops-and-repairs", 60);
    const scenes = [...record.moments].map((moment) => sceneAt(record, moment));
    const repaired = scenes.find(({ stations }) => stations.some(({ state }) => state === "stopped"))!;
    const { name, until } = repaired.stations.find(({ state }) => state === "stopped")!;
    const words = sceneWords(record, repaired, name);
    expect(words.needs).toBe("It needs the end of the stop: operator 1 repairs it.");
    expect(words.turnedOut).toBe(`The stop ended at ${until!.toFixed(2)} s.`);
    expect(words.caution).toContain("Lock out");
  });

  it("of another station's shot: the one that is full goes elsewhere", () => {
    const record = recordOf("three-station", 5);
    const seconds = record.moments.find((moment) => {
      const { valve, stations } = sceneAt(record, moment);
      return (
        valve!.openTo === "left" && stations.some(({ name, state }) => name !== "left" && state === "awaiting melt")
      );
    })!;
    const other = sceneAt(record, seconds).stations.find(({ state }) => state === "awaiting melt")!;
    expect(wordsIn(record, other.name, seconds).needs).toBe("It needs the next full shot: this one goes to left.");
  });
});

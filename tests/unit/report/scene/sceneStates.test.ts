// The scene of every shipped scenario against the rows of its event log, which is read here without the record.
import { describe, expect, it } from "vitest";
import * as fc from "fast-check";
import { momentNumber, nextMoment, previousMoment, shotFrom, waitFrom } from "#report/scene/moments.ts";
import { sceneAt } from "#report/scene/sceneAt.ts";
import { resourcesIn } from "#report/scene/sceneWords.ts";
import type { EventRecord } from "#cell/records/eventRecord.ts";
import { firstCases, oneIn } from "../../../support/caseCount.ts";
import { beginsAt, recorded, shippedFiles } from "./shippedScenes.ts";

const hours = 2;
const checked = [...firstCases(shippedFiles, 4), "scenarios/stops-and-repairs.yaml", "tests/bench/everything.yaml"];

/** The state of each resource after all events up to a time. */
function statesAt(events: readonly EventRecord[], seconds: number): Record<string, string> {
  const known = events.filter((event) => event.seconds <= seconds);
  return Object.fromEntries(known.map(({ resource, state }) => [resource, state]));
}

/** The first 30 times, each after the one before. */
function timesOf(next: (seconds: number) => number | null, from: number): readonly number[] {
  const times: number[] = [];
  for (let at = next(from); at !== null && times.length < 30; at = next(at)) times.push(at);
  return times;
}

describe.each([...new Set(checked)])("the scene of %s", (path) => {
  const { record, events } = recorded(path, hours, beginsAt(path));
  const times = fc.oneof(
    fc.nat(record.moments.length - 1).map((moment) => record.moments[moment]!),
    fc.double({ min: record.from, max: record.until, noNaN: true }),
  );

  it("has the states of the events at any time", () => {
    const property = fc.property(times, (seconds) => {
      const states = resourcesIn(sceneAt(record, seconds)).map(({ name, state }) => [name, state] as const);
      expect(Object.fromEntries(states)).toEqual(statesAt(events, seconds));
    });
    fc.assert(property, { numRuns: oneIn(2) });
  });

  it("has one moment for each instant of the events", () => {
    const instants = new Set(events.map(({ seconds }) => seconds).filter((seconds) => seconds > record.from));
    expect([...record.moments]).toEqual([record.from, ...instants]);
  });

  it("is the same after some moments on and as many back", () => {
    const property = fc.property(fc.nat(record.moments.length - 1), fc.nat(40), (first, count) => {
      let scene = sceneAt(record, record.moments[first]!);
      const before = JSON.stringify(scene);
      let steps = 0;
      for (let next = nextMoment(record, scene); next !== null && steps < count; next = nextMoment(record, scene)) {
        scene = sceneAt(record, next);
        expect(scene.moment).toBe(first + ++steps);
      }
      for (; steps > 0; steps--) scene = sceneAt(record, previousMoment(record, scene)!);
      expect(JSON.stringify(scene)).toBe(before);
      expect(momentNumber(record, scene.seconds)).toBe(first);
    });
    fc.assert(property, { numRuns: oneIn(10) });
  });

  it("has only shares between 0 and 1, and times that enclose it", () => {
    const property = fc.property(times, (seconds) => {
      const scene = sceneAt(record, seconds);
      for (const { progress, since, until } of resourcesIn(scene)) {
        expect(progress).toBeGreaterThanOrEqual(0);
        expect(progress).toBeLessThanOrEqual(1);
        expect(since).toBeLessThanOrEqual(seconds);
        expect(until ?? Infinity).toBeGreaterThan(seconds);
      }
      for (const { mold } of scene.stations) {
        expect(mold.closed).toBeGreaterThanOrEqual(0);
        expect(mold.closed).toBeLessThanOrEqual(1);
        expect(mold.parison).toBeGreaterThanOrEqual(0);
        if (scene.delivery !== "continuous") expect(mold.parison).toBeLessThanOrEqual(1);
      }
      for (const { before, room } of scene.servers) {
        expect(before).toBeGreaterThanOrEqual(0);
        expect(before).toBeLessThanOrEqual(room ?? Infinity);
      }
    });
    fc.assert(property, { numRuns: oneIn(2) });
  });

  it("has a wait at every next wait, and a new parison at every next shot, forwards as backwards", () => {
    const { screw, stations } = sceneAt(record, record.from);
    for (const { name } of [screw, ...stations]) {
      const stateAt = (seconds: number) => resourcesIn(sceneAt(record, seconds)).find((each) => each.name === name)!;
      const waits = timesOf((seconds) => waitFrom(record, name, seconds, "next"), record.from);
      for (const seconds of waits) expect(stateAt(seconds)).toMatchObject({ kind: "waiting", since: seconds });
      for (const [i, seconds] of waits.slice(1).entries()) {
        expect(waitFrom(record, name, seconds, "previous")).toBe(waits[i]);
      }
      if (name === screw.name) continue;
      const shots = timesOf((seconds) => shotFrom(record, name, seconds, "next"), record.from);
      expect(shots.length).toBeGreaterThan(5);
      for (const seconds of shots) {
        expect(stateAt(seconds).role).toBe(record.delivery === "continuous" ? "mold.close" : "mold.drop");
      }
      for (const [i, seconds] of shots.slice(1).entries()) {
        expect(shotFrom(record, name, seconds, "previous")).toBe(shots[i]);
      }
    }
  });

  it("can be sent to a page and is the same there", () => {
    const sent = structuredClone(record);
    const middle = (record.from + record.until) / 2;
    expect(sceneAt(sent, middle)).toEqual(sceneAt(record, middle));
  });
});

// Records that begin later or end early, and the timing chart of a stretch.
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { cycleTimeline } from "#cell/run/cycleTimeline.ts";
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import { mostMoments, recordScene } from "#report/scene/recordScene.ts";
import { sceneAt } from "#report/scene/sceneAt.ts";
import type { Scene } from "#report/scene/scene.ts";
import { timelineOf } from "#report/scene/timelineOf.ts";
import { firstCases } from "../../../support/caseCount.ts";
import { settledScenario, shippedFiles } from "./shippedScenes.ts";

/** All but what counts from the start of the record. */
function statesOf({ stations, servers, ...scene }: Scene): unknown {
  return {
    ...scene,
    moment: 0,
    moments: 0,
    goodParts: 0,
    stations: stations.map((station) => ({ ...station, shots: 0, parts: 0 })),
    servers: servers.map((server) => ({ ...server, passed: 0 })),
  };
}

describe.each(firstCases(shippedFiles, 6))("a record of %s that begins later", (path) => {
  it("has the same scenes as one from the start", () => {
    const scenario = settledScenario(path);
    const whole = recordScene(scenario, { until: 9000 });
    const part = recordScene(scenario, { from: 7200, until: 9000 });
    expect(part.moments.length).toBe([...whole.moments].filter((each) => each > 7200).length + 1);
    for (let seconds = 7200; seconds < 8999; seconds += 8.7) {
      expect(statesOf(sceneAt(part, seconds))).toEqual(statesOf(sceneAt(whole, seconds)));
    }
    const [before, first, last] = [sceneAt(whole, 7200), sceneAt(part, 7200), sceneAt(part, 8999)];
    expect(first.stations.map(({ shots }) => shots)).toEqual(first.stations.map(() => 0));
    const counted = before.stations.map(({ shots }, i) => shots + last.stations[i]!.shots);
    expect(counted).toEqual(sceneAt(whole, 8999).stations.map(({ shots }) => shots));
  });
});

describe("a record that would have too many moments", () => {
  it("ends at the last of them and says so", () => {
    const record = recordScene(settledScenario("scenarios/thin-bottle.yaml"), { until: 8 * 3600 });
    expect(record.isCutShort).toBe(true);
    expect(record.moments.length).toBe(mostMoments);
    expect(record.until).toBe(record.moments.at(-1));
    expect(sceneAt(record, 1e9)).toMatchObject({ seconds: record.until, moment: mostMoments - 1 });
  });
});

/** Two tasks of an operator one after the other are two bars here, and one in the report where the shots have one number. */
function barsOf({ intervals }: TimelineRecord): readonly string[] {
  return intervals.flatMap(({ resource, state, kind, start, end, isCut }, i) => {
    const [before, after] = [intervals[i - 1], intervals[i + 1]];
    const isSame = (other: typeof before) => other?.resource === resource && other.state === state;
    if (kind === "working" && isSame(before)) return [];
    const last = kind === "working" && isSame(after) ? "…" : `${end.toFixed(6)} ${isCut ? "cut" : "whole"}`;
    return [`${resource} ${state} ${start.toFixed(6)} ${last}`];
  });
}

describe.each(["two-station", "one-operator", "bottle-continuous", "canister-accumulator-head"])(
  "the timing chart of %s",
  (name) => {
    it("is that of the report for the same stretch", () => {
      const scenario = settledScenario(`scenarios/${name}.yaml`);
      const report = cycleTimeline(planCell(scenario), 600)!;
      const record = recordScene(scenario, { until: 1800 });
      const own = timelineOf(record, report.from, Number((report.from + report.seconds).toFixed(6)));
      expect(own.resources).toEqual(report.resources);
      expect(barsOf(own)).toEqual(barsOf(report));
      const path = ({ resource, step, start, end }: (typeof own.chain)[number]) =>
        `${resource} ${step} ${start.toFixed(6)} ${end.toFixed(6)}`;
      // Which way the last shots go is known only later: the report's run ends soon after the stretch, the record does not.
      expect(own.chain.map(path).slice(0, 4)).toEqual(report.chain.map(path).slice(0, 4));
      expect(own.chain[0]!.start).toBe(0);
      own.chain.slice(1).forEach(({ start }, i) => expect(start).toBe(own.chain[i]!.end));
      expect(own.chain.at(-1)!.end).toBe(own.seconds);
    });
  },
);

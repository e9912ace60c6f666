// Records of the shipped scenarios, and what their event log says of the same runs.
import { readdirSync, readFileSync } from "node:fs";
import { readSettled } from "#analysis/study/readSettled.ts";
import { eventRecorder, type EventRecord } from "#cell/records/eventRecord.ts";
import { recordScene } from "#report/scene/recordScene.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import type { Scenario } from "#scenario/scenario.ts";

export const shippedFiles: readonly string[] = [
  ...readdirSync("scenarios")
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => `scenarios/${name}`),
  "tests/bench/everything.yaml",
];

export function settledScenario(path: string): Scenario {
  const { scenario, issues } = readSettled(readFileSync(path, "utf8"), { name: path, file: path });
  if (!scenario) throw new Error(JSON.stringify(issues));
  return scenario;
}

/** Hours of the run: a cell with shifts does nothing before its first shift. */
export const beginsAt = (path: string): number => (/shifts|everything/u.test(path) ? 6.5 : 0);

export interface Recorded {
  readonly scenario: Scenario;
  readonly record: SceneRecord;
  /** Up to the end of the record. */
  readonly events: readonly EventRecord[];
}

export function recorded(path: string, hours: number, from = 0): Recorded {
  const scenario = settledScenario(path);
  const record = recordScene(scenario, { from: from * 3600, until: (from + hours) * 3600 });
  const events: EventRecord[] = [];
  for (const event of eventRecorder(scenario)(1)) {
    if (event.seconds > record.until) break;
    events.push(event);
  }
  return { scenario, record, events };
}

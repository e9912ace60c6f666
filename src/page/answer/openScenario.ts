// Reads a scenario text as every command does, and runs it once for the place Watch.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Issue } from "#foundation/issue.ts";
import type { GivenScenario } from "#page/file/given.ts";
import { paceSentence } from "#report/answers/checkAnswer.ts";
import { questionOf } from "#report/page/questionOf.ts";
import { recordScene } from "#report/scene/recordScene.ts";
import { sceneAt } from "#report/scene/sceneAt.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface OpenedScenario {
  readonly scenario: Scenario;
  readonly question: string | undefined;
  /** The ideal cycle, and what sets the pace. */
  readonly sentence: string;
  /** Mean seconds between two shots of one station. */
  readonly cycle: number;
  /** A stretch of the first replication. */
  readonly record: SceneRecord;
}

/** Undefined where any issue is an error. */
export interface Opening {
  readonly opened: OpenedScenario | undefined;
  readonly issues: readonly Issue[];
}

export interface OpenRequest {
  readonly scenario: GivenScenario;
  /** Seconds of the run at which the stretch begins; where absent, the first work shift or the start of the run. */
  readonly from?: number;
}

/** Seconds of a stretch: some dozens of shots of a usual cell, so that the slider reaches each moment. */
const usualStretch = 600;
/** A slow cell has a longer stretch. */
const fewestCycles = 8;

export function openScenario({ scenario: given, from }: OpenRequest): Opening {
  const { name, file, text, beside, set } = given;
  const readText = (other: string): string | undefined => (Object.hasOwn(beside, other) ? beside[other] : undefined);
  const { scenario, issues } = readSettled(text, { name, file, set, readText });
  if (!scenario) return { opened: undefined, issues };
  const ideal = idealCycle(scenario);
  const sentence = paceSentence({ scenario, ideal });
  const cycle = ideal.secondsPerShot * scenario.stations.length;
  const begin = from ?? firstShift(scenario);
  const record = stretchWithShots(scenario, begin, Math.max(usualStretch, fewestCycles * cycle));
  return { opened: { scenario, question: questionOf(text), sentence, cycle, record }, issues };
}

/** Longer where no shot is made in it, as while a cold screw heats up. */
function stretchWithShots(scenario: Scenario, from: number, length: number): SceneRecord {
  const record = recordScene(scenario, { from, until: from + length });
  const hasShots = sceneAt(record, record.until).stations.some(({ shots }) => shots > 0);
  return hasShots || from + length >= scenario.run.length ? record : stretchWithShots(scenario, from, 3 * length);
}

/** A run may begin in the night before it. */
function firstShift({ calendar }: Scenario): number {
  const [first] = calendar?.off ?? [];
  return first?.from === 0 ? first.until : 0;
}

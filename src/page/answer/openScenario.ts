// Reads a scenario text as every command does, and runs it once for the place Watch.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { eventRecorder, type EventRecord } from "#cell/records/eventRecord.ts";
import type { Issue } from "#foundation/issue.ts";
import type { GivenScenario } from "#page/file/given.ts";
import { paceSentence } from "#report/answers/checkAnswer.ts";
import { questionOf } from "#report/page/questionOf.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface OpenedScenario {
  readonly scenario: Scenario;
  readonly question: string | undefined;
  /** The ideal cycle, and what sets the pace. */
  readonly sentence: string;
  /** Of the first replication. */
  readonly events: readonly EventRecord[];
}

/** Undefined where any issue is an error. */
export interface Opening {
  readonly opened: OpenedScenario | undefined;
  readonly issues: readonly Issue[];
}

export function openScenario({ name, file, text, beside, set }: GivenScenario): Opening {
  const readText = (other: string): string | undefined => (Object.hasOwn(beside, other) ? beside[other] : undefined);
  const { scenario, issues } = readSettled(text, { name, file, set, readText });
  if (!scenario) return { opened: undefined, issues };
  const sentence = paceSentence({ scenario, ideal: idealCycle(scenario) });
  const events = [...eventRecorder(scenario)(1)];
  return { opened: { scenario, question: questionOf(text), sentence, events }, issues };
}

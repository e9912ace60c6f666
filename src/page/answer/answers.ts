// What the page may ask the worker, each by a name; the same functions run wherever they are called.
import { concludeTrial, openTables } from "#page/trial/concludeTrial.ts";
import { openLevers } from "#page/trial/openLevers.ts";
import { openPaceRow } from "#page/trial/openPaceRow.ts";
import { openTrial } from "#page/trial/openTrial.ts";
import { textWith } from "#page/trial/textWith.ts";
import { openDrills } from "./openDrills.ts";
import { openLesson } from "./openLesson.ts";
import { openOrder, openOrderLevers, openOrderRuns } from "#page/promise/openOrder.ts";
import { openPilots, openReplications } from "./openRuns.ts";
import { openScenario } from "./openScenario.ts";

export const answers = {
  openScenario,
  openLesson,
  openDrills,
  openReplications,
  openPilots,
  openOrder,
  openOrderLevers,
  openOrderRuns,
  openLevers,
  openTrial,
  concludeTrial,
  openTables,
  openPaceRow,
  textWith,
} as const;

export type Answers = typeof answers;
export type Question = keyof Answers;

/** What the page sends. */
export interface Asked<Q extends Question = Question> {
  readonly id: number;
  readonly question: Q;
  readonly given: Parameters<Answers[Q]>[0];
}

/** What the worker sends back; `fault` is an error of the program. */
export type Replied =
  | { readonly id: number; readonly answer: ReturnType<Answers[Question]> }
  | { readonly id: number; readonly fault: string };

// What the page may ask the worker, each by a name; the same functions run wherever they are called.
import { openDrills } from "./openDrills.ts";
import { openLesson } from "./openLesson.ts";
import { openScenario } from "./openScenario.ts";

export const answers = { openScenario, openLesson, openDrills } as const;

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

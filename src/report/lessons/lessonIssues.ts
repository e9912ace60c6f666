// Every message code of a lesson that a scenario does not have, with meaning and remedy.
import type { IssueMeaning } from "#foundation/issue.ts";

export const lessonCodes = {
  "lesson-scenario": ["the scenario of a lesson cannot be read", "Correct its name: its way from the lesson's folder."],
  "lesson-name": [
    "a name stands for nothing in the lesson",
    "Write the name of a cell, moment or value of the lesson.",
  ],
  "lesson-value": ["a value has no measure, or several", "Write one measure, such as `{ duration: first drop }`."],
  "lesson-moment": [
    "the record holds no such moment, or one that has not what a value needs",
    "Run the cell longer, or change the moment.",
  ],
  "lesson-choice": ["not exactly one choice of a question is right", "Change the choices, or the value that decides."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export type LessonCode = keyof typeof lessonCodes;

// Reads the shipped lessons and the cells of the drills as the page does.
import { readdirSync, readFileSync } from "node:fs";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { ReadCell } from "#report/drills/drill.ts";
import type { Lesson } from "#report/lessons/lesson.ts";
import { readLesson, type LessonReading } from "#report/lessons/readLesson.ts";
import { solveLesson, type Solution, type SolvedLesson } from "#report/lessons/solveLesson.ts";
import { runOnce, type CellRun } from "#report/lessons/spells.ts";

const folder = "scenarios/lessons/";

export const lessonFiles = readdirSync(folder)
  .filter((name) => name.endsWith(".yaml"))
  .toSorted();

export const textOf = (file: string): string => readFileSync(folder + file, "utf8");

export function readShipped(file: string, text = textOf(file)): LessonReading {
  return readLesson(text, {
    name: file.replace(".yaml", ""),
    file,
    readText: (beside) => (beside.startsWith("../") ? readFileSync(folder + beside, "utf8") : undefined),
  });
}

export interface SolvedShipped {
  readonly lesson: Lesson;
  readonly runs: ReadonlyMap<string, CellRun>;
  readonly solution: Solution;
  readonly solved: SolvedLesson;
}

export function solveShipped(file: string, text?: string): SolvedShipped {
  const { lesson, issues } = readShipped(file, text);
  if (lesson === undefined) throw new Error(JSON.stringify(issues));
  const runs = new Map([...lesson.cells].map(([name, scenario]) => [name, runOnce(scenario)]));
  const solution = solveLesson(lesson, runs);
  if (solution.solved === undefined) throw new Error(JSON.stringify(solution.findings));
  return { lesson, runs, solution, solved: solution.solved };
}

export const readDrillCell: ReadCell = (file, set = []) => {
  const { scenario, issues } = readSettled(readFileSync(`${folder}drills/${file}`, "utf8"), { name: file, file, set });
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return scenario;
};

// Fills a lesson from the records of its cells: times of its charts, texts with numbers, and the key of each question.
import type { Finding, Path } from "#scenario/values/finding.ts";
import type { Exercise } from "./exercise.ts";
import { findMoment } from "./findSpells.ts";
import { findValue, type Findings } from "./findValue.ts";
import type { ChoiceSpec, Lesson, QuestionSpec, StageSpec } from "./lesson.ts";
import type { LessonCode } from "./lessonIssues.ts";
import { wordsOfValue, type LessonValue } from "./lessonValue.ts";
import { filledIn } from "./placeholders.ts";
import type { CellRun, Spell } from "./spells.ts";

export interface SolvedStage {
  /** Name of the cell that the chart shows. */
  readonly cell: string;
  /** The resource whose moment it is. */
  readonly resource: string;
  /** Seconds of the run: where the chart begins, where it ends before the choice, and where after it. */
  readonly from: number;
  readonly at: number;
  readonly until: number;
  readonly look: string;
  readonly predict: Exercise;
  readonly reveal: string;
  readonly explain: string;
}

export interface SolvedLesson {
  readonly title: string;
  readonly goal: string;
  readonly stages: readonly SolvedStage[];
  readonly question: Exercise;
}

export interface Solution {
  /** Absent where there is a finding. */
  readonly solved?: SolvedLesson;
  readonly findings: readonly Finding[];
}

/** `runs` holds every cell of the lesson. */
export function solveLesson(lesson: Lesson, runs: ReadonlyMap<string, CellRun>): Solution {
  const { found, findings } = search(lesson, runs);
  // Texts and keys need every value.
  if (findings.length > 0) return { findings };
  const faults: Finding[] = [];
  const wordsOf = (name: string): string => wordsOfValue(found.value(name)!);
  const solve = (question: QuestionSpec, path: Path): Exercise => {
    const choices = question.choices.map((choice) => ({
      text: "value" in choice ? wordsOf(choice.value) : filledIn(choice.text, wordsOf),
      isRight: isRight(choice, question.by, found.value(question.by)!),
      because: filledIn(choice.because, wordsOf),
    }));
    faults.push(...choiceFaults(choices, wordsOf(question.by), path));
    return { ask: filledIn(question.ask, wordsOf), choices };
  };
  const stages = lesson.stages.map((stage, i): SolvedStage => {
    const path = ["stages", i];
    const times = stageTimes(stage, found);
    if (times.until <= times.at || times.from > times.at) faults.push(emptyChart(path));
    return {
      ...times,
      look: filledIn(stage.look, wordsOf),
      predict: solve(stage.predict, [...path, "predict"]),
      reveal: filledIn(stage.reveal, wordsOf),
      explain: filledIn(stage.explain, wordsOf),
    };
  });
  const question = solve(lesson.question, ["question"]);
  const { title, goal } = lesson;
  return faults.length > 0 ? { findings: faults } : { solved: { title, goal, stages, question }, findings: [] };
}

type Located = Spell & { readonly cell: string };

function search(lesson: Lesson, runs: ReadonlyMap<string, CellRun>): { found: Findings; findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const moments = new Map<string, Located>();
  const values = new Map<string, LessonValue>();
  const found: Findings = {
    run: (cell) => runs.get(cell)!,
    moment: (name) => moments.get(name),
    value: (name) => values.get(name),
  };
  for (const [name, spec] of lesson.moments) {
    const since = spec.after === undefined ? 0 : (moments.get(spec.after)?.start ?? 0);
    const spell = findMoment(spec, found.run(spec.cell), since);
    if (spell !== undefined) moments.set(name, { ...spell, cell: spec.cell });
    else findings.push(missing(`The record of \`${spec.cell}\` holds no moment \`${name}\`.`, ["moments", name]));
  }
  for (const [name, spec] of lesson.values) {
    const value = findValue(spec, found);
    if (value !== undefined) values.set(name, value);
    else if (needsFound(spec, found)) findings.push(missing(`The record does not hold \`${name}\`.`, ["values", name]));
  }
  return { found, findings };
}

/** Whether all that a value is made of was found, so that the fault is its own. */
function needsFound(
  spec: Lesson["values"] extends ReadonlyMap<string, infer Spec> ? Spec : never,
  found: Findings,
): boolean {
  if ("moment" in spec) return found.moment(spec.moment) !== undefined;
  if ("moments" in spec) return spec.moments.every((name) => found.moment(name) !== undefined);
  return "values" in spec ? spec.values.every((name) => found.value(name) !== undefined) : true;
}

function missing(message: string, path: Path): Finding {
  const remedy = "Run the cell longer, change its scenario, or look for something else.";
  return { code: "lesson-moment" satisfies LessonCode, message, remedy, path, at: "key" };
}

/** Seconds shown before the curtain where the lesson names no beginning. */
const usualPast = 12;

function stageTimes(
  { from, at, until }: StageSpec,
  found: Findings,
): Pick<SolvedStage, "cell" | "resource" | "from" | "at" | "until"> {
  const { cell, resource, start } = found.moment(at)!;
  const last = found.moment(until)!;
  return {
    cell,
    resource,
    from: from === undefined ? Math.max(0, start - usualPast) : found.moment(from)!.start,
    at: start,
    until: last.end ?? found.run(cell).scenario.run.length,
  };
}

function emptyChart(path: Path): Finding {
  const message = "The moments of the chart are not in order: `from`, `at`, `until`.";
  const remedy = "Choose other moments for `from`, `at` or `until`.";
  return { code: "lesson-moment" satisfies LessonCode, message, remedy, path: [...path, "at"] };
}

function isRight(choice: ChoiceSpec, by: string, value: LessonValue): boolean {
  if ("value" in choice) return choice.value === by;
  if ("is" in choice) return value.unit === "name" && value.name === choice.is;
  const { from = -Infinity, below = Infinity } = choice;
  return value.unit !== "name" && value.number >= from && value.number < below;
}

function choiceFaults(choices: Exercise["choices"], answer: string, path: Path): readonly Finding[] {
  const code: LessonCode = "lesson-choice";
  const at = [...path, "choices"];
  const right = choices.filter((choice) => choice.isRight).length;
  const texts = new Set(choices.map(({ text }) => text));
  const remedy = "Change the choices, or the value that decides.";
  if (choices.length < 2) return [{ code, message: "There are fewer than two choices.", remedy, path: at }];
  if (texts.size < choices.length) return [{ code, message: "Two choices read the same.", remedy, path: at }];
  if (right === 1) return [];
  const message = `The record gives ${answer}, and ${right === 0 ? "no choice fits" : `${right} choices fit`}.`;
  return [{ code, message, remedy, path: at }];
}

// Reads the text of a lesson with all its cells; never throws and reports all issues together.
import type { Issue } from "#foundation/issue.ts";
import type { IssueCode } from "#scenario/reading/issueCodes.ts";
import { readKeys, type Draft } from "#scenario/reading/reading.ts";
import type { ReadText } from "#scenario/reading/readText.ts";
import { ScenarioText } from "#scenario/reading/scenarioText.ts";
import { Source } from "#scenario/reading/source.ts";
import { parseText } from "#scenario/reading/yamlText.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Finding } from "#scenario/values/finding.ts";
import { checkNames } from "./checkNames.ts";
import type { ChoiceSpec, Lesson, MomentSpec, QuestionSpec, StageSpec, ValueSpec } from "./lesson.ts";
import { readCell } from "./lessonCell.ts";
import { lessonKeys, type WrittenLesson } from "./lessonKeys.ts";
import { resolvePattern, resolveValue } from "./resolveValue.ts";
import { strangeKey } from "./strangeKey.ts";

export interface LessonOptions {
  /** The file's name without folder and ending. */
  readonly name: string;
  /** Name of the file in issues. */
  readonly file: string;
  /** Text of a file, by its way from the lesson's folder. */
  readonly readText?: ReadText;
}

export interface LessonReading {
  /** Absent where there is an issue. */
  readonly lesson?: Lesson;
  /** In the order of the text. */
  readonly issues: readonly Issue[];
  /** The place of a finding that only the records show. */
  readonly toIssue: (finding: Finding) => Issue;
}

export function readLesson(written: string, { name, file, readText }: LessonOptions): LessonReading {
  const text = written.replace(/^\uFEFF/u, "");
  const source = new Source(file, text);
  const parsed = parseText(source);
  if (parsed.document === undefined) return { issues: parsed.issues.map(forLesson), toIssue: nowhere(source) };
  const tree = new ScenarioText(parsed.document, source);
  const read = readKeys<WrittenLesson>(lessonKeys, tree.content(), strangeKey);
  const drafts = read.draft.cells ?? {};
  const cells = Object.keys(drafts).map((cell) => ({
    cell,
    ...readCell(cell, drafts, { text, file, tree, readText }),
  }));
  const scenarios = new Map(cells.flatMap(({ cell, scenario }) => (scenario ? [[cell, scenario] as const] : [])));
  const { lesson, findings } = resolve(name, read.draft, scenarios);
  const toIssue = (finding: Finding): Issue => tree.toIssue(finding);
  const own = [...read.findings, ...findings, ...checkNames(read.draft, scenarios)].map(toIssue);
  const issues = [...parsed.issues, ...own, ...cells.flatMap((cell) => cell.issues)].toSorted(inOrder(file));
  return issues.length > 0 ? { issues, toIssue } : { lesson, issues, toIssue };
}

const forLesson = (issue: Issue): Issue =>
  issue.code === ("file-empty" satisfies IssueCode) ? { ...issue, remedy: "Begin with a shipped lesson." } : issue;

const nowhere =
  (source: Source) =>
  (finding: Finding): Issue => ({
    ...finding,
    severity: "error",
    fate: "file",
    path: "",
    place: source.placeOf(0),
  });

/** Those of the lesson's own text first. */
function inOrder(file: string): (one: Issue, other: Issue) => number {
  const rank = ({ place }: Issue): number => (place?.file === file ? 0 : 1);
  return (one, other) => rank(one) - rank(other) || (one.place?.line ?? 0) - (other.place?.line ?? 0);
}

/** Complete where there are no findings. */
function resolve(
  name: string,
  draft: Draft<WrittenLesson>,
  cells: ReadonlyMap<string, Scenario>,
): { readonly lesson: Lesson; readonly findings: readonly Finding[] } {
  const usual = Object.keys(draft.cells ?? {})[0] ?? "";
  const moments = new Map<string, MomentSpec>();
  for (const [moment, spec] of Object.entries(draft.moments ?? {})) {
    const { occurrence = 1, after } = spec ?? {};
    moments.set(moment, {
      ...resolvePattern(spec ?? {}, usual),
      occurrence,
      ...(after === undefined ? {} : { after }),
    });
  }
  const values = new Map<string, ValueSpec>();
  const findings: Finding[] = [];
  for (const [key, spec] of Object.entries(draft.values ?? {})) {
    const found = resolveValue(spec ?? {}, ["values", key], usual);
    if (found.value !== undefined) values.set(key, found.value);
    // What cannot be read has a finding of its own.
    if (spec !== undefined) findings.push(...found.findings);
  }
  const stages = (draft.stages ?? []).map(stageOf);
  const question = questionOf(draft.question);
  const { title = "", goal = "" } = draft;
  return { lesson: { name, title, goal, cells, moments, values, stages, question }, findings };
}

function stageOf(draft: NonNullable<Draft<WrittenLesson>["stages"]>[number]): StageSpec {
  const { from, at = "", until = "", look = "", predict, reveal = "", explain = "" } = draft ?? {};
  return { ...(from === undefined ? {} : { from }), at, until, look, predict: questionOf(predict), reveal, explain };
}

function questionOf(draft: Draft<WrittenLesson>["question"]): QuestionSpec {
  const { ask = "", by = "", choices = [] } = draft ?? {};
  return { ask, by, choices: choices.map((choice) => choiceOf(choice ?? {})) };
}

type WrittenChoice = NonNullable<NonNullable<NonNullable<Draft<WrittenLesson>["question"]>["choices"]>[number]>;

function choiceOf({ text = "", is, from, below, value, because = "" }: WrittenChoice): ChoiceSpec {
  if (value !== undefined) return { value, because };
  if (is !== undefined) return { text, is, because };
  return { text, ...(from === undefined ? {} : { from }), ...(below === undefined ? {} : { below }), because };
}

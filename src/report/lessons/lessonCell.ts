// Reads the scenario of one cell of a lesson: from a file, or from the place in the lesson where it is written out.
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Draft } from "#scenario/reading/reading.ts";
import type { ReadText } from "#scenario/reading/readText.ts";
import type { ScenarioText } from "#scenario/reading/scenarioText.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { WrittenCell } from "./lessonKeys.ts";

interface ReadCell {
  readonly scenario?: Scenario;
  readonly issues: readonly Issue[];
}

/** What a lesson's text is, and how files beside it are read. */
export interface LessonFile {
  readonly text: string;
  readonly file: string;
  readonly tree: ScenarioText;
  readonly readText?: ReadText | undefined;
}

export function readCell(name: string, cell: Draft<WrittenCell>, lesson: LessonFile): ReadCell {
  const path = ["cells", name, "scenario"];
  const found = typeof cell.scenario === "string" ? fromFile(cell.scenario, lesson) : inline(path, lesson);
  if (found === undefined) {
    if (cell.scenario === undefined) return { issues: [] };
    const remedy = "Correct the name of the file: its way from the folder of the lesson.";
    const message = `The scenario \`${String(cell.scenario)}\` cannot be read.`;
    return { issues: [lesson.tree.toIssue({ code: "lesson-scenario", message, remedy, path })] };
  }
  const { length, seed } = cell;
  const read = readSettled(found.text, {
    name,
    file: found.file,
    set: (cell.set ?? []).filter((each) => each !== undefined),
    run: { replications: "1", ...(length === undefined ? {} : { length }), ...(seed === undefined ? {} : { seed }) },
    ...(lesson.readText === undefined ? {} : { readText: lesson.readText }),
  });
  const errors = read.issues.filter(({ severity }) => severity === "error");
  const issues = errors.map((issue) => inLesson(issue, name, lesson));
  return read.scenario === undefined ? { issues } : { scenario: read.scenario, issues };
}

interface Found {
  readonly text: string;
  readonly file: string;
}

function fromFile(file: string, { readText }: LessonFile): Found | undefined {
  const text = readText?.(file);
  return text === undefined ? undefined : { text, file };
}

/** Lines and columns stay those of the lesson. */
function inline(path: readonly string[], { text, file, tree }: LessonFile): Found | undefined {
  const node = tree.document.getIn(path, true) as { readonly range?: readonly [number, number, number] } | undefined;
  if (!node?.range) return undefined;
  const before = text.slice(0, node.range[0]);
  const column = before.length - before.lastIndexOf("\n") - 1;
  const lines = before.split("\n").length - 1;
  return { text: "\n".repeat(lines) + " ".repeat(column) + text.slice(node.range[0], node.range[1]), file };
}

/** A fault of a setting is a fault of the lesson's entry `set`, `length` or `seed`. */
function inLesson(issue: Issue, name: string, { tree }: LessonFile): Issue {
  const option = /^--(set|length|seed)(?: (\d+))?$/u.exec(issue.place?.file ?? "");
  if (option === null) return { ...issue, path: `cells.${name}.scenario${issue.path === "" ? "" : `.${issue.path}`}` };
  const [, key = "", number] = option;
  const path = ["cells", name, key, ...(number === undefined ? [] : [Number(number) - 1])];
  const { place } = tree.toIssue({ ...issue, path, place: undefined as never });
  return { ...issue, path: path.join("."), ...(place === undefined ? {} : { place }) };
}

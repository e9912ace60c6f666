// Reads the scenario of one cell of a lesson: from a file, or from the place in the lesson where it is written out.
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Draft } from "#scenario/reading/reading.ts";
import type { ReadText } from "#scenario/reading/readText.ts";
import type { ScenarioText } from "#scenario/reading/scenarioText.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Finding } from "#scenario/values/finding.ts";
import type { LessonCode } from "./lessonIssues.ts";
import type { WrittenCell } from "./lessonKeys.ts";

interface ReadCell {
  readonly scenario?: Scenario;
  readonly issues: readonly Issue[];
}

type Cells = Readonly<Record<string, Draft<WrittenCell> | undefined>>;

/** What a lesson's text is, and how files beside it are read. */
export interface LessonFile {
  readonly text: string;
  readonly file: string;
  readonly tree: ScenarioText;
  readonly readText?: ReadText | undefined;
}

export function readCell(name: string, cells: Cells, lesson: LessonFile): ReadCell {
  const own = cells[name] ?? {};
  const [origin, base] = own.like === undefined ? [name, own] : [own.like, cells[own.like]];
  const path = ["cells", origin, "scenario"];
  const { scenario } = base ?? {};
  if (scenario === undefined || (own.like !== undefined && own.scenario !== undefined))
    return { issues: [lesson.tree.toIssue(noScenario(name, own))] };
  const found = typeof scenario === "string" ? fromFile(scenario, lesson) : inline(path, lesson);
  if (found === undefined) {
    const remedy = "Correct the name of the file: its way from the folder of the lesson.";
    const message = `The scenario \`${typeof scenario === "string" ? scenario : name}\` cannot be read.`;
    return { issues: [lesson.tree.toIssue({ code, message, remedy, path })] };
  }
  const { length, seed } = { ...base, ...own };
  const shared = own.like === undefined ? [] : (base?.set ?? []);
  const read = readSettled(found.text, {
    name,
    file: found.file,
    set: [...shared, ...(own.set ?? [])].filter((each) => each !== undefined),
    run: { replications: "1", ...(length === undefined ? {} : { length }), ...(seed === undefined ? {} : { seed }) },
    ...(lesson.readText === undefined ? {} : { readText: lesson.readText }),
  });
  const errors = read.issues.filter(({ severity }) => severity === "error");
  // Faults of a scenario that another cell has as well are reported there.
  const mine = own.like === undefined ? errors : errors.filter(({ place }) => place?.file.startsWith("--") === true);
  const issues = mine.map((issue) => inLesson(issue, name, shared.length, lesson));
  return read.scenario === undefined ? { issues } : { scenario: read.scenario, issues };
}

const code: LessonCode = "lesson-scenario";

function noScenario(name: string, { like, scenario }: Draft<WrittenCell>): Finding {
  const remedy = "Write `scenario` with a file or a scenario, or `like` with a cell that has a `scenario`.";
  const message =
    like !== undefined && scenario !== undefined
      ? "The cell has both `scenario` and `like`."
      : like === undefined
        ? "The cell has no scenario."
        : `No cell \`${like}\` has a scenario.`;
  return {
    code,
    message,
    remedy,
    path: ["cells", name, ...(like === undefined ? [] : ["like"])],
    ...(like === undefined ? { at: "key" } : {}),
  };
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
function inLesson(issue: Issue, name: string, shared: number, { tree }: LessonFile): Issue {
  const option = /^--(set|length|seed)(?: (\d+))?$/u.exec(issue.place?.file ?? "");
  if (option === null) return { ...issue, path: `cells.${name}.scenario${issue.path === "" ? "" : `.${issue.path}`}` };
  const [, key = "", number] = option;
  const path = ["cells", name, key, ...(number === undefined ? [] : [Number(number) - 1 - shared])];
  const { place } = tree.toIssue({ ...issue, path, place: undefined as never });
  return { ...issue, path: path.join("."), ...(place === undefined ? {} : { place }) };
}

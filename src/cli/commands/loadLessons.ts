// Reads the lessons of a call with the scenarios that they name, runs their cells once, and prints what does not fit.
import type { Options } from "#cli/call/command.ts";
import { exitCodeOf } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import type { Issue } from "#foundation/issue.ts";
import type { GivenLesson } from "#page/file/given.ts";
import { readLesson } from "#report/lessons/readLesson.ts";
import { solveLesson } from "#report/lessons/solveLesson.ts";
import { runOnce } from "#report/lessons/spells.ts";
import { scenarioName } from "./loadScenarios.ts";

interface LoadedLessons {
  readonly lessons: readonly GivenLesson[];
  /** 0 where all can be shown. */
  readonly code: number;
}

export function loadLessons({ lesson: files = [] }: Options, host: Host): LoadedLessons {
  const loaded = files.map((file) => loadLesson(file, host));
  const issues = loaded.flatMap((each) => each.issues);
  printIssues(issues, host);
  return { lessons: loaded.flatMap(({ lesson }) => lesson ?? []), code: exitCodeOf(issues) };
}

function loadLesson(file: string, host: Host): { readonly lesson?: GivenLesson; readonly issues: readonly Issue[] } {
  const content = host.readText(file);
  if ("issue" in content) return { issues: [content.issue] };
  const folder = file.replace(/[^/\\]*$/, "");
  const beside = new Map<string, string>();
  const readText = (other: string): string | undefined => {
    const found = host.readText(folder + other);
    if (!("text" in found)) return undefined;
    beside.set(other, found.text);
    return found.text;
  };
  const name = scenarioName(file);
  const { lesson, issues, toIssue } = readLesson(content.text, { name, file, readText });
  if (!lesson) return { issues };
  const runs = new Map([...lesson.cells].map(([cell, scenario]) => [cell, runOnce(scenario)]));
  const found = solveLesson(lesson, runs).findings.map(toIssue);
  if (found.length > 0) return { issues: found };
  const { title } = lesson;
  // Without its folder: the page may leave this machine.
  const given = {
    name,
    file: file.slice(folder.length),
    title,
    text: content.text,
    beside: Object.fromEntries(beside),
  };
  return { lesson: given, issues: [] };
}

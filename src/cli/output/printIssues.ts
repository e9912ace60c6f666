// Prints all issues of a text in the order of the text.
import type { Issue, Severity } from "#foundation/issue.ts";
import { exitCodeOf } from "#cli/machine/exitCode.ts";
import type { Host, Paint } from "#cli/machine/host.ts";
import { issueWords } from "#report/words/issueWords.ts";

const paintOf: Readonly<Record<Severity, Paint>> = { error: "red", warning: "yellow", hint: "cyan" };

function inOrderOfText(left: Issue, right: Issue): number {
  const [here, there] = [left.place, right.place];
  if (here === undefined || there === undefined) return Number(here !== undefined) - Number(there !== undefined);
  if (here.file !== there.file) return here.file < there.file ? -1 : 1;
  return here.line - there.line || here.column - there.column;
}

function describe(issue: Issue, host: Host): string {
  const { place, message, details } = issueWords(issue);
  const severity = host.paint("error", paintOf[issue.severity], issue.severity);
  const code = host.paint("error", "dim", `[${issue.code}]`);
  const lines = details.map(([label, words]) => `    ${label.padEnd(8)}  ${words}\n`);
  return `${place}: ${severity}: ${message} ${code}\n${lines.join("")}`;
}

function count(issues: readonly Issue[], severity: Severity): string[] {
  const found = issues.filter((issue) => issue.severity === severity).length;
  return found === 0 ? [] : [`${found} ${severity}${found === 1 ? "" : "s"}`];
}

const mostCodes = 3;

/** The call that explains the codes, each once; of many only the first. */
function moreLine(issues: readonly Issue[]): string {
  const codes = [...new Set(issues.map(({ code }) => code))];
  const rest = codes.length > mostCodes ? " …" : "";
  return `More: blowcell explain ${codes.slice(0, mostCodes).join(" ")}${rest}\n`;
}

/** All to standard error, then their number where there are several, and last where their codes are explained. */
export function printIssues(issues: readonly Issue[], host: Host): void {
  const inOrder = issues.toSorted(inOrderOfText);
  for (const issue of inOrder) host.report(describe(issue, host));
  if (issues.length === 0) return;
  const counts = (["error", "warning", "hint"] as const).flatMap((severity) => count(issues, severity));
  if (issues.length > 1) host.report(`${counts.join(", ")}\n`);
  host.report(moreLine(inOrder));
}

/** Prints what keeps a command from its work; returns its exit code. */
export function refuse(issues: readonly Issue[], host: Host): number {
  printIssues(issues, host);
  return exitCodeOf(issues);
}

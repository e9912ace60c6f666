// The command `match`: holds a model against a log from the floor.
import { matchLog, readingOf, type MatchReading } from "#analysis/match/matchLog.ts";
import { mostStretches } from "#analysis/match/lineLog.ts";
import { verdictOf, type Verdict } from "#analysis/match/verdict.ts";
import type { LogMatch } from "#analysis/match/logMatch.ts";
import { issueOf, logIssueCodes } from "#analysis/log/logColumns.ts";
import type { LogSummary } from "#analysis/log/logReader.ts";
import type { Act, Options } from "#cli/call/command.ts";
import { marginOf, matchIssue, renamesOf } from "#cli/call/matchOptions.ts";
import { runName } from "#cli/call/runName.ts";
import { readLog } from "#cli/log/readLog.ts";
import { zoneNamed } from "#cli/log/zonedTime.ts";
import { exitCode } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { version } from "#cli/machine/version.ts";
import { earlierRun, folderIssues } from "#cli/output/earlierRun.ts";
import { printAnswer } from "#cli/output/printAnswer.ts";
import { printIssues, refuse } from "#cli/output/printIssues.ts";
import type { Issue } from "#foundation/issue.ts";
import { plainText } from "#foundation/plainText.ts";
import { matchAnswer, type MatchFinding } from "#report/match/matchAnswer.ts";
import { matchPage } from "#report/match/matchPage.ts";
import { matchTable } from "#report/match/matchTable.ts";
import { toCsv } from "#report/tables/csv.ts";
import { dataPackage, type RunOrigin } from "#report/tables/dataPackage.ts";
import { resultJson } from "#report/tables/resultJson.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { problemIssues, tooWide, zoneIssue } from "./fit.ts";
import { loadScenarios } from "./loadScenarios.ts";

const exitOf = { agrees: exitCode.done, differs: exitCode.cannotWork, undecided: exitCode.undecided } as const;

export const match: Act = async ([file = "", path = ""], options, host) => {
  if (isTable(file)) return refuse([logFirst(file)], host);
  const { loaded, code } = loadScenarios([file], options, host);
  const [first] = loaded;
  if (first === undefined || code !== exitCode.done) return code;
  const { scenario } = first;
  const margin = marginOf(options);
  const { renames, issues } = renamesOf(options);
  const zone = options.zone === undefined ? undefined : zoneNamed(options.zone);
  const origin = originOf(scenario, path, options);
  const folder = options.out ?? `reports/${runName(`${scenario.name}-match`, options.set ?? [], options.name?.trim())}`;
  const refused = [
    ...(typeof margin === "object" ? [margin] : []),
    ...issues,
    ...(options.zone !== undefined && zone === undefined ? [zoneIssue(options.zone)] : []),
    ...folderIssues(folder, [origin], options, host),
  ];
  const reading = readingOf(scenario, renames);
  refused.push(...reading.unknown.map(unknownName));
  if (refused.length > 0 || typeof margin === "object") return refuse(refused, host);
  const summary = await readLog(
    { path, columns: options.column ?? [], stops: options.stop ?? [], steps: options.step ?? [], zone },
    { take: reading.take, isRefused: () => reading.line.isTooWide },
    host,
  );
  const faults = faultsOf(summary, reading, scenario, path);
  const rowWarnings = [...reading.unused().map(unusedName), ...problemIssues(summary, path)];
  if (faults.length > 0) return refuse([...faults, ...rowWarnings], host);
  const warnings = [...unmatchedIssues(reading, path), ...lateIssues(reading, path), ...rowWarnings];
  if (options.quiet !== true) printIssues(warnings, host);
  const found = await matchLog(scenario, reading, margin, () => host.breathe());
  const finding = { match: found, verdict: verdictOf(found), scenario, words: summary.words };
  await report({ finding, warnings, folder, origin }, options, host);
  return exitOf[finding.verdict.agreement];
};

export const isTable = (path: string): boolean => /\.(?:csv|txt|tsv|xlsx?)$/iu.test(path);

const logFirst = (file: string): Issue =>
  matchIssue("log-first", "A log is no scenario.", { place: { file, line: 1, column: 1 } });

function originOf(scenario: Scenario, path: string, options: Options): RunOrigin {
  const { column = [], stop = [], step = [], rename = [], margin, zone } = options;
  const own = [
    `log ${path.replace(/^.*[/\\]/u, "")}`,
    ...column.map((text) => `column ${text}`),
    ...stop.map((text) => `stop ${text}`),
    ...step.map((text) => `step ${text}`),
    ...rename.map((text) => `rename ${text}`),
    ...(margin === undefined ? [] : [`margin ${margin}`]),
    ...(zone === undefined ? [] : [`zone ${zone}`]),
  ];
  const { call } = scenario;
  return call === undefined ? scenario : { ...scenario, call: { ...call, options: [...(call.options ?? []), ...own] } };
}

function faultsOf(summary: LogSummary, reading: MatchReading, { stations }: Scenario, path: string): readonly Issue[] {
  if (summary.issues.length > 0) return summary.issues;
  const place = { file: path, line: 1, column: 1 };
  if (reading.line.stretches().length === 0 && reading.line.untimed > 0)
    return [matchIssue("log-times", "No row of the log has a time.", { place })];
  if (summary.rows === 0)
    return [issueOf("log-empty", "The log has a header and no rows.", logIssueCodes["log-empty"][1], { place })];
  if (reading.line.isTooWide) return [tooWide(path)];
  if (reading.anchors().length > 0) return [];
  const unmatched = reading.unmatched();
  const named = unmatched.length === 0 ? "Its steps are not those of the model." : `It has ${shortList(unmatched)}.`;
  const message = `The log has no step of a station of the model. ${named}`;
  const expected = `a station of ${shortList(stations.map(({ name }) => name))} and its steps`;
  return [matchIssue("log-shots", message, { place, expected })];
}

const shownMost = 5;

function shortList(names: readonly string[]): string {
  const rest = names.length - shownMost;
  return `${names.slice(0, shownMost).join(", ")}${rest > 0 ? ` and ${rest} more` : ""}`;
}

const unknownName = (value: string): Issue =>
  matchIssue("rename-unknown", `The model has no station, resource or step "${value}".`, { option: "--rename", value });

const unusedName = (value: string): Issue =>
  matchIssue("rename-unused", `The log has no "${value}".`, { option: "--rename", value, severity: "warning" });

/** The rest of the log is used. */
function unmatchedIssues(reading: MatchReading, path: string): readonly Issue[] {
  const unmatched = reading.unmatched();
  if (unmatched.length === 0) return [];
  const message = `Not in the model, and left out: ${shortList(unmatched)}.`;
  return [matchIssue("log-unmatched", message, { severity: "warning", place: { file: path, line: 1, column: 1 } })];
}

/** Rows of stretches that are too many. */
function lateIssues({ line: { late } }: MatchReading, path: string): readonly Issue[] {
  if (late === 0) return [];
  const message = `Of more than ${mostStretches} stretches of the log the first are used: ${late} rows are left out.`;
  return [matchIssue("log-stretches", message, { severity: "warning", place: { file: path, line: 1, column: 1 } })];
}

interface Report {
  readonly finding: MatchFinding & { readonly match: LogMatch; readonly verdict: Verdict };
  readonly warnings: readonly Issue[];
  readonly folder: string;
  readonly origin: RunOrigin;
}

async function report({ finding, warnings, folder, origin }: Report, options: Options, host: Host): Promise<void> {
  const table = matchTable(finding.match);
  const scenarios = [finding.scenario];
  if (options.json === true)
    host.print(resultJson({ command: "match", version, scenarios, warnings, tables: [table] }));
  else printAnswer(() => matchAnswer(finding, host.width), options, host);
  const files = [
    { name: "match.csv", text: toCsv(table) },
    { name: "match.html", text: matchPage(finding, warnings, version) },
    {
      name: "datapackage.json",
      text: dataPackage({ name: origin.name, tables: [table], scenarios: [origin], version }),
    },
  ];
  const obsolete = (earlierRun(folder, host)?.tables ?? []).filter((name) => !files.some((each) => each.name === name));
  await host.writeFiles(folder, files, obsolete);
  if (options.quiet !== true) host.report(`${plainText(`match.html and match.csv are in ${folder}`)}\n`);
}

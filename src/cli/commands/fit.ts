// The command `fit`: distributions of the steps and stops of a log, as a table, a page and values of a scenario.
import { LogCollector, type Fit, type LogFit } from "#analysis/fit/logFit.ts";
import { issueOf, logIssueCodes } from "#analysis/log/logColumns.ts";
import type { LogSummary } from "#analysis/log/logReader.ts";
import { logProblems, mostGroups } from "#analysis/log/logRecord.ts";
import type { Act, Options } from "#cli/call/command.ts";
import { nameIssues } from "#cli/call/nameIssues.ts";
import { runName } from "#cli/call/runName.ts";
import { openStages } from "#cli/labor/stages.ts";
import { readLog } from "#cli/log/readLog.ts";
import { zoneNamed } from "#cli/log/zonedTime.ts";
import { exitCode, exitCodeOf } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { plainText } from "#foundation/plainText.ts";
import { version } from "#cli/machine/version.ts";
import { earlierRun, folderIssues } from "#cli/output/earlierRun.ts";
import { printAnswer } from "#cli/output/printAnswer.ts";
import { printIssues, refuse } from "#cli/output/printIssues.ts";
import type { Issue } from "#foundation/issue.ts";
import { fitAnswer } from "#report/fit/fitAnswer.ts";
import { fitPage } from "#report/fit/fitPage.ts";
import { fitTable } from "#report/fit/fitTable.ts";
import { toCsv } from "#report/tables/csv.ts";
import { dataPackage, type RunOrigin } from "#report/tables/dataPackage.ts";
import { resultJson } from "#report/tables/resultJson.ts";
import { targetOf, writeInto } from "./fitInto.ts";
import { scenarioName } from "./loadScenarios.ts";

export const fit: Act = async ([path = ""], options, host) => {
  const name = scenarioName(path);
  const folder = options.out ?? `reports/${runName(`${name}-fit`, [], options.name?.trim())}`;
  const origin = originOf(name, path, options);
  const zone = options.zone === undefined ? undefined : zoneNamed(options.zone);
  const target = targetOf(options, host);
  const refused = [
    ...nameIssues(options),
    ...(options.zone !== undefined && zone === undefined ? [zoneIssue(options.zone)] : []),
    ...(target !== undefined && "issues" in target ? target.issues : []),
    ...folderIssues(folder, [origin], options, host),
  ];
  if (refused.length > 0) return refuse(refused, host);
  const stages = openStages(options, host);
  const collector = new LogCollector();
  const summary = await readLog(
    { path, columns: options.column ?? [], stops: options.stop ?? [], steps: options.step ?? [], zone },
    { take: (record) => collector.take(record), isRefused: () => collector.isTooWide },
    host,
  );
  stages.report(`${summary.rows} rows`);
  const rowWarnings = problemIssues(summary, path);
  const faults = [...summary.issues, ...emptiness(summary, collector, path)];
  if (faults.length > 0) return refuse([...faults, ...rowWarnings], host);
  const found: LogFit = { ...summary, name, waits: collector.waits, fits: await allFits(collector, host) };
  stages.report(`${found.fits.length} fits`);
  const isInto = target !== undefined && !("issues" in target);
  const intoIssues = isInto ? await writeInto(target, found.fits, options, host) : [];
  const warnings = [...rowWarnings, ...intoIssues];
  printIssues(options.quiet === true ? warnings.filter(({ severity }) => severity === "error") : warnings, host);
  if (exitCodeOf(warnings) !== exitCode.done) return exitCodeOf(warnings);
  const tables = [fitTable(found)];
  if (options.json === true) host.print(resultJson({ command: "fit", version, scenarios: [], warnings, tables }));
  else printAnswer(() => fitAnswer(found, host.width), options, host);
  await writeFit({ folder, found, warnings, origin }, options, host);
  return exitCode.done;
};

/** What makes the results of one log different from those of another. */
function originOf(name: string, path: string, { column = [], stop = [], step = [], zone }: Options): RunOrigin {
  const file = path.replace(/^.*[/\\]/u, "");
  const options = [
    ...column.map((text) => `column ${text}`),
    ...stop.map((text) => `stop ${text}`),
    ...step.map((text) => `step ${text}`),
    ...(zone === undefined ? [] : [`zone ${zone}`]),
  ];
  return { name, title: `fit of ${file}`, call: { file, settings: [], options } };
}

async function allFits(collector: LogCollector, host: Host): Promise<readonly Fit[]> {
  const bar = await host.showProgress(collector.count, "fits");
  const fits: Fit[] = [];
  let done = 0;
  for (const each of collector.fits()) {
    fits.push(each);
    if (each.kind !== "between") done += 1;
    bar?.show(done);
    await host.breathe();
  }
  bar?.end();
  return fits;
}

interface Written {
  readonly folder: string;
  readonly found: LogFit;
  readonly warnings: readonly Issue[];
  readonly origin: RunOrigin;
}

async function writeFit({ folder, found, warnings, origin }: Written, options: Options, host: Host): Promise<void> {
  const table = fitTable(found);
  const files = [
    { name: "fit.csv", text: toCsv(table) },
    { name: "fit.html", text: fitPage(found, warnings, version) },
    {
      name: "datapackage.json",
      text: dataPackage({ name: origin.name, tables: [table], scenarios: [origin], version }),
    },
  ];
  const obsolete = (earlierRun(folder, host)?.tables ?? []).filter((name) => !files.some((file) => file.name === name));
  await host.writeFiles(folder, files, obsolete);
  if (options.quiet !== true) host.report(`${plainText(`fit.html and fit.csv are in ${folder}`)}\n`);
}

const setBack = "Look at this line, the first of them; where clocks were set back there, name the zone with --zone.";
const remedies: Readonly<Partial<Record<LogSummary["problems"][number]["problem"], string>>> = {
  "earlier than the row before": setBack,
  "time goes back": setBack,
};

/** One warning a kind, with its number and its first line. */
export function problemIssues({ problems }: LogSummary, path: string): readonly Issue[] {
  return problems.map(({ problem, count, line, value }) => {
    const rows = `${count} ${count === 1 ? "row" : "rows"}`;
    const message = `${rows}: ${problem}; ${logProblems[problem]}.`;
    const place = { file: path, line, column: 1 };
    const remedy = remedies[problem] ?? "Look at this line, the first of them; correct the log if it matters.";
    return {
      ...issueOf("log-rows", message, remedy, { place, ...(value === "" ? {} : { value }) }),
      severity: "warning",
    };
  });
}

function emptiness({ rows, issues }: LogSummary, { count, isTooWide }: LogCollector, path: string): readonly Issue[] {
  if (issues.length > 0) return [];
  if (isTooWide) return [tooWide(path)];
  if (count > 0) return [];
  const place = { file: path, line: 1, column: 1 };
  const message = rows === 0 ? "The log has a header and no rows." : `None of ${rows} rows can be fitted.`;
  return [issueOf("log-empty", message, logIssueCodes["log-empty"][1], { place })];
}

export function tooWide(path: string): Issue {
  const message = `The log has more than ${mostGroups} stations times steps.`;
  const place = { file: path, line: 1, column: 1 };
  return issueOf("log-groups", message, logIssueCodes["log-groups"][1], { place });
}

export function zoneIssue(zone: string): Issue {
  const expected = "a name of the time zone database, such as Europe/Berlin";
  return issueOf("log-zone", "There is no such time zone.", "Write a name such as `Europe/Berlin`.", {
    option: "--zone",
    value: zone,
    expected,
  });
}

// The command `sweep`: simulates all combinations of varied values with common random numbers; it continues where it was stopped.
import type { PointOutcome } from "#analysis/study/sweepPoint.ts";
import type { Act, Options } from "#cli/call/command.ts";
import { nameIssues } from "#cli/call/nameIssues.ts";
import { callTexts } from "#cli/call/options.ts";
import { runName } from "#cli/call/runName.ts";
import { withLabor } from "#cli/labor/withLabor.ts";
import { exitCodeOf } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { openJournal, readJournal } from "#cli/machine/journal.ts";
import { plainText } from "#foundation/plainText.ts";
import { version } from "#cli/machine/version.ts";
import { folderIssues, unfinishedIssues } from "#cli/output/earlierRun.ts";
import { printIssues, refuse } from "#cli/output/printIssues.ts";
import { readGrid, type Grid } from "#cli/sweep/points.ts";
import { reportSweep, scenarioOfShare } from "#cli/sweep/reportSweep.ts";
import {
  journalName,
  parseRecord,
  type PointRecord,
  type SweepPlan,
  type SweepRecord,
} from "#cli/sweep/sweepRecord.ts";
import { aloneIssues, choose } from "./choose.ts";
import { scenarioName } from "./loadScenarios.ts";
import { pointReader, sharedScenario, type ReadPoint } from "./readPoints.ts";

export const sweep: Act = async (files, options, host) => {
  if (options.best === true) return choose(files, options, host);
  const [file = ""] = files;
  const grid = readGrid(options);
  const content = host.readText(file);
  const issues = [
    ...nameIssues(options),
    ...aloneIssues(options),
    ...("paths" in grid ? [] : grid),
    ...("issue" in content ? [content.issue] : []),
  ];
  if (issues.length > 0 || !("paths" in grid)) return refuse(issues, host);
  const read = pointReader(file, grid, options, host);
  const points: ReadPoint[] = [];
  for (const point of grid.points) {
    points.push(read(point));
    await host.breathe();
  }
  const plan = planOf(file, grid, read, options);
  if (plan === undefined) return refuseAll(points, grid, options, host);
  const folder = options.out ?? `reports/${plan.name}${shardWords(options)}`;
  const path = `${folder}/${journalName}`;
  const earlier = readJournal(path).map(parseRecord);
  const isContinued = earlier.some((record) => JSON.stringify(record) === JSON.stringify(plan));
  if (isContinued) host.prepareFolder(folder);
  const wanted = scenarioOfShare(plan);
  const inTheWay = isContinued ? [] : [...folderIssues(folder, [wanted], options, host)];
  const begun = earlier.find((record) => record.kind === "plan");
  // Finished points that this sweep has no use for are not thrown away unasked.
  if (inTheWay.length === 0 && begun && finishedPoints(earlier, points).length < pointsOf(earlier).length)
    inTheWay.push(...unfinishedIssues(folder, [scenarioOfShare(begun), wanted], options));
  printIssues(inTheWay, host);
  if (inTheWay.length > 0) return exitCodeOf(inTheWay);
  return withLabor(options, host, async (labor, stages) => {
    const kept = options.replace === true ? [] : finishedPoints(earlier, points);
    const records = [...kept];
    const journal = openJournal(
      folder,
      journalName,
      [plan, ...kept].map((record) => JSON.stringify(record)),
    );
    const add = ({ index, values, key }: ReadPoint, outcome: PointOutcome): void => {
      // From the text, so that a continued sweep sees the same numbers.
      const text = JSON.stringify({ kind: "point", index, values, key, outcome } satisfies PointRecord);
      journal.add(text);
      records.push(parseRecord(text) as PointRecord);
    };
    const finished = new Set(kept.map(({ index }) => index));
    const left = points.filter(({ index }) => !finished.has(index));
    const runnable = left.filter(({ scenario }) => scenario !== undefined);
    for (const point of left) if (point.scenario === undefined) add(point, { kind: "refused", issues: point.issues });
    if (kept.length > 0 && options.quiet !== true)
      host.report(`${plainText(`${kept.length} of ${points.length} points are kept from ${path}`)}\n`);
    await labor.study(
      runnable.map(({ scenario }) => scenario!),
      (outcome, i) => add(runnable[i]!, withIssues(outcome, runnable[i]!)),
    );
    journal.close();
    stages.report(`${runnable.length} points`);
    return reportSweep(plan, records, folder, options, host);
  });
};

/** The warnings of the reader come before those of the run. */
function withIssues(outcome: PointOutcome, { issues }: ReadPoint): PointOutcome {
  const warnings = issues.filter(({ severity }) => severity === "warning");
  return outcome.kind === "found" ? { ...outcome, warnings: [...warnings, ...outcome.warnings] } : outcome;
}

function planOf(
  file: string,
  { paths, total, pointAt }: Grid,
  read: (point: ReturnType<Grid["pointAt"]>) => ReadPoint,
  options: Options,
): SweepPlan | undefined {
  const texts = [...callTexts(options), ...(options.vary ?? [])];
  const shard = options.shard?.trim();
  const name = runName(`${scenarioName(file)}-sweep`, texts, options.name?.trim());
  // The first point of all shares that can run, so that each share has the same plan.
  for (let index = 0; index < total; index += 1) {
    const scenario = sharedScenario(read(pointAt(index)), options);
    if (scenario)
      return { kind: "plan", version, name, paths, points: total, scenario, ...(shard === undefined ? {} : { shard }) };
  }
  return undefined;
}

function refuseAll(points: readonly ReadPoint[], { paths }: Grid, options: Options, host: Host): number {
  const issues = points.flatMap((point) => point.issues);
  const errors = issues.filter(({ severity }) => severity === "error");
  const [first] = points;
  const isSame = (code: string): boolean => code === errors[0]?.code;
  const shown = first?.issues.filter(({ severity }) => options.quiet !== true || severity === "error") ?? [];
  printIssues(shown, host);
  const more = errors.some(({ code }) => !isSame(code)) ? ", some for other reasons" : "";
  const all = `All ${points.length} points of ${paths.join(" and ")} are refused`;
  host.report(`${plainText(`${all}${more}; nothing is written`)}\n`);
  return exitCodeOf(issues);
}

function shardWords({ shard }: Options): string {
  return shard === undefined ? "" : `-shard-${shard.trim().replace("/", "-of-")}`;
}

const pointsOf = (records: readonly SweepRecord[]): readonly PointRecord[] =>
  records.filter((record) => record.kind === "point");

/** Points of an earlier call whose scenario is the same to the last value. */
function finishedPoints(records: readonly SweepRecord[], points: readonly ReadPoint[]): readonly PointRecord[] {
  const wanted = new Map(points.map((point) => [point.key, point]));
  const kept = new Map<number, PointRecord>();
  for (const record of pointsOf(records)) {
    const point = wanted.get(record.key);
    if (point) kept.set(point.index, { ...record, index: point.index, values: point.values });
  }
  return [...kept.values()];
}

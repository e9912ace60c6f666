// Reads a log for a model, runs the model as long as the log, and holds both against each other.
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { planCell, slowestTurn, type CellPlan } from "#cell/layers/planCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { anchorsOf, type Anchor } from "./deliveries.ts";
import { LineLog, type Stretch } from "./lineLog.ts";
import { logMatch, type LogMatch } from "./logMatch.ts";
import { modelLine } from "./modelLine.ts";
import { modelNames, type NamedLog } from "./modelNames.ts";
import { stepsInLog, tracedRun } from "./traced.ts";
import { TracedPart } from "./tracedPart.ts";

export interface MatchReading extends Pick<NamedLog, "unmatched" | "unused" | "unknown"> {
  readonly plan: CellPlan;
  readonly line: LineLog;
  readonly part: TracedPart;
  readonly take: (record: StepRecord) => void;
  /** Empty where no shot of the log is known. */
  readonly anchors: () => readonly Anchor[];
}

const [fewestRuns, mostRuns] = [5, 20];
/** Seconds of the model's runs: the longest stretch of the log, within these. */
const [shortest, longest] = [2 * 3600, 100 * 3600];
/** Turns of the cell until its start is forgotten, where the scenario names no warm-up. */
const turnsToWarmUp = 20;
const TICKS = 1e6;
/** Cells of a station and step: of a log, and of each run of the model. A shorter one has each time by itself. */
const [keptOfLog, keptOfRun] = [16_384, 4096];

export function readingOf(scenario: Scenario, renames: ReadonlyMap<string, string>): MatchReading {
  const plan = planCell(scenario);
  const [line, part] = [new LineLog(keptOfLog), new TracedPart()];
  const { named, ...names } = modelNames(plan, renames);
  return {
    plan,
    line,
    part,
    ...names,
    take: (record) => {
      const known = named(record);
      line.take(known);
      part.take(known);
    },
    anchors: () => anchorsOf(plan, line.stretches()),
  };
}

/** `breathe` is awaited between runs. */
export async function matchLog(
  scenario: Scenario,
  { plan, line, part, anchors }: MatchReading,
  margin: number,
  breathe: () => Promise<void>,
): Promise<LogMatch> {
  const log = line.stretches();
  const model: Stretch[] = [];
  const runs = Math.min(mostRuns, Math.max(fewestRuns, scenario.run.replications));
  for (let replication = 1; replication <= runs; replication++) {
    const run = modelLine({ plan, replication, kept: keptOfRun, ...spanOf(plan, log) });
    if (run) model.push(run);
    await breathe();
  }
  const found = anchors();
  const tracedLog = part.stretches();
  const traced = tracedRun(scenario, tracedLog, found);
  const steps = stepsInLog(scenario, tracedLog);
  return logMatch({ log, model, tracedLog, isTracedWhole: part.isWhole, traced, anchors: found, steps, margin });
}

/** A calendar begins with the run, so that nothing of it is left out. */
function spanOf(plan: CellPlan, log: readonly Stretch[]): { readonly from: number; readonly until: number } {
  const { calendar, run } = plan.scenario;
  const length = Math.max(0, ...log.map(({ from, until }) => until - from));
  const observed = Math.min(longest, Math.max(shortest, length));
  const settled = run.warmup === "auto" ? (turnsToWarmUp * slowestTurn(plan)) / TICKS : run.warmup;
  const from = calendar ? 0 : settled;
  return { from, until: from + observed };
}

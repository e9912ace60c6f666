// What holds of every cell that the reader accepts: `check` and `run` answer, and their numbers are possible.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { stepTimes } from "#analysis/ideal/stepTimes.ts";
import { doWork } from "#analysis/replication/work.ts";
import {
  beginStudy,
  concludeStudy,
  nextWanted,
  settleInOneCall,
  studyOfSettled,
  withAnswers,
  type StudyOutcome,
} from "#analysis/study/study.ts";
import type { SettledScenario } from "#analysis/statistics/warmUpSearch.ts";
import { stationRanges } from "#analysis/window/stationRanges.ts";
import { stationWindows } from "#analysis/window/stationWindow.ts";
import { checkAnswer } from "#report/answers/checkAnswer.ts";
import { runAnswer } from "#report/answers/runAnswer.ts";
import { toCsv } from "#report/tables/csv.ts";
import { circuitsTable, idealCycleTable } from "#report/tables/idealTables.ts";
import { studyTables, windowTables } from "#report/tables/studyTables.ts";
import type { Table } from "#report/tables/table.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { faultsOfTables } from "./tableOracle.ts";

/** What `check` does with an accepted scenario. */
export function judgeCheck(scenario: Scenario): readonly string[] {
  const ideal = idealCycle(scenario);
  const windows = stationWindows(scenario, ideal);
  const found = { scenario, ideal, windows, ranges: stationRanges(scenario, ideal) };
  const answer = checkAnswer({ ...found, times: stepTimes(scenario) }, 80);
  const tables = [idealCycleTable([found]), circuitsTable([found]), ...windowTables([found])];
  return [...faultsOfTables(tables), ...faultsOfWords(answer)];
}

/** What `run` does with it in a short run of two replications. */
export function judgeRun(scenario: Scenario): readonly string[] {
  const settled = settleInOneCall({ ...scenario, run: shortRun(scenario) });
  const outcome = studyOfSettled(settled, "off");
  if (outcome.kind === "stuck") return [`check accepts what run does not: ${outcome.issue.message}`];
  const tables = studyTables([outcome.study]);
  const other = studyInOtherOrder(settled);
  return [
    ...faultsOfTables(tables),
    ...faultsOfWords(runAnswer(outcome.study)),
    ...(other.kind === "found" && isSame(tables, studyTables([other.study])) ? [] : ["other tables in another order"]),
  ];
}

/** About forty shots a station, of a cell whose work a test can wait for. */
function shortRun(scenario: Scenario): Scenario["run"] {
  const { secondsPerShot } = idealCycle(scenario);
  const length = Math.min(scenario.run.length, 40 * scenario.stations.length * Math.max(secondsPerShot, 0.01));
  const warmup = scenario.run.warmup === "auto" ? 0 : Math.min(scenario.run.warmup, length / 4);
  const { precision: _, ...run } = scenario.run;
  return { ...run, length, warmup, replications: 2 };
}

/** As with several workers: one replication a piece, the last one first. */
function studyInOtherOrder({ scenario, warnings }: SettledScenario): StudyOutcome {
  let state = beginStudy(scenario, "off");
  for (let tasks = nextWanted(state); tasks.length > 0; tasks = nextWanted(state)) {
    const answers = tasks.toReversed().flatMap((task) => doWork({ kind: "replications", scenario, tasks: [task] }));
    state = withAnswers(state, answers);
  }
  return concludeStudy(state, warnings);
}

function isSame(tables: readonly Table[], others: readonly Table[]): boolean {
  return tables.map(toCsv).join() === others.map(toCsv).join();
}

function faultsOfWords(answer: string): readonly string[] {
  const line = answer.split("\n").find((each) => /\b(?:NaN|Infinity|undefined)\b|∞|\[object/u.test(each));
  return line === undefined ? [] : [`the answer says: ${line}`];
}

// Concludes the runs of a changed cell as `run` does, in the words of `run`, and as its CSV files.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Issue } from "#foundation/issue.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import type { SettledScenario } from "#analysis/statistics/warmUpSearch.ts";
import { beginStudy, concludeStudy, withAnswers, type Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { runRows } from "#report/answers/runRows.ts";
import { timeUseRows } from "#report/answers/timeUse.ts";
import { toCsv } from "#report/tables/csv.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import { withVariants } from "#report/tables/variantColumn.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";
import { bottleneckWords } from "#report/words/bottleneckWords.ts";
import { costWords } from "#report/words/costWords.ts";
import { withInterval } from "#report/words/digits.ts";
import { headline, madeSentence, runWords } from "#report/words/madeWords.ts";

export interface MadeRuns {
  readonly settled: SettledScenario;
  readonly answers: readonly ReplicationAnswer[];
}

export type Conclusion = { readonly kind: "stuck"; readonly issue: Issue } | Finding;

export interface Finding {
  readonly kind: "found";
  /** The first sentence of the answer to `run`. */
  readonly sentence: string;
  readonly issues: readonly Issue[];
  /** Good parts an hour; undefined where no replication has a value. */
  readonly parts: Pick<Interval, "mean" | "halfWidth"> | undefined;
  /** What has quantities: in both, so that another choice shows at once. */
  readonly inUnits: Readonly<Record<UnitSystem, FindingInUnits>>;
  /** The names of the columns, then a row for each resource. */
  readonly timeUse: readonly (readonly string[])[];
  /** For a table of variants: good parts an hour, seconds a shot, what sets the pace, cost. */
  readonly inShort: Readonly<Record<string, string>>;
  readonly runWords: readonly string[];
}

interface FindingInUnits {
  /** Of the process window. */
  readonly warnings: readonly string[];
  /** The rows of the answer to `run`. */
  readonly rows: readonly (readonly string[])[];
}

export interface CsvFile {
  readonly name: string;
  readonly text: string;
}

export function concludeTrial(made: MadeRuns): Conclusion {
  const outcome = concluded(made);
  if (outcome.kind === "stuck") return outcome;
  const { study } = outcome;
  return {
    kind: "found",
    sentence: madeSentence(study),
    issues: study.warnings,
    parts: measureOf(study.measures, CELL, headline)?.interval,
    inUnits: { si: inUnits(study, "si"), us: inUnits(study, "us") },
    timeUse: timeUseRows(study),
    inShort: inShort(study),
    runWords: runWords(study),
  };
}

function inUnits(study: Study, units: UnitSystem): FindingInUnits {
  const { windows, spreads, scenario } = study;
  const warnings = windowWarnings(windows, spreads, scenario.stations.length, units);
  return { warnings: warnings.filter((line) => line !== ""), rows: runRows(study, units) };
}

/** All tables of a call without changes and without single events. */
export function openTables(made: MadeRuns): readonly CsvFile[] {
  const outcome = concluded(made);
  if (outcome.kind === "stuck") return [];
  const { study } = outcome;
  return withVariants(studyTables([study]), [study.scenario]).map((table) => ({
    name: `${table.name}.csv`,
    text: toCsv(table),
  }));
}

function concluded({ settled: { scenario, warnings }, answers }: MadeRuns): ReturnType<typeof concludeStudy> {
  return concludeStudy(withAnswers(beginStudy(scenario), answers), warnings);
}

function inShort(study: Study): Readonly<Record<string, string>> {
  const words = (measure: string): string => {
    const found = measureOf(study.measures, CELL, measure);
    return found ? withInterval(found.interval) : "none";
  };
  return {
    "Good parts an hour": words(headline),
    "Seconds a shot": words("seconds per shot"),
    ...(study.scenario.quality ? { "Reject share": words("reject share") } : {}),
    "Sets the pace": bottleneckWords(study),
    ...(study.costs ? { Cost: costWords(study.costs) } : {}),
  };
}

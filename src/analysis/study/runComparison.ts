// The studies of a comparison in one call and one thread.
import { doWork } from "#analysis/replication/work.ts";
import type { SettledScenario } from "#analysis/statistics/warmUpSearch.ts";
import { withPairedPrecision } from "./pairedPrecision.ts";
import { beginStudy, concludeStudy, nextWanted, withAnswers, type StudyOutcome, type StudyState } from "./study.ts";

/** The base first. */
export function runComparison(settled: readonly SettledScenario[]): readonly StudyOutcome[] {
  let states: readonly StudyState[] = settled.map(({ scenario }) => beginStudy(scenario));
  for (;;) {
    states = withPairedPrecision(states);
    const wanted = states.map(nextWanted);
    if (wanted.every((tasks) => tasks.length === 0)) break;
    states = states.map((state, i) =>
      withAnswers(state, doWork({ kind: "replications", scenario: state.scenario, tasks: wanted[i]! })),
    );
  }
  return states.map((state, i) => concludeStudy(state, settled[i]!.warnings));
}

// Runs the replications that the studies of a comparison want until all are finished.
import { withPairedPrecision } from "#analysis/study/pairedPrecision.ts";
import {
  beginStudy,
  concludeStudy,
  nextWanted,
  withAnswers,
  type StudyOutcome,
  type StudyState,
} from "#analysis/study/study.ts";
import type { SettledScenario } from "#analysis/statistics/warmUpSearch.ts";
import type { Labor } from "./labor.ts";
import type { Stages } from "./stages.ts";

/** In the order of the call; `against` names the pairs whose differences a wanted precision aims at. */
export async function conductComparison(
  settled: readonly SettledScenario[],
  labor: Labor,
  stages: Stages,
  against?: string,
): Promise<readonly StudyOutcome[]> {
  const states: StudyState[] = settled.map(({ scenario }) => beginStudy(scenario));
  for (;;) {
    const current = withPairedPrecision(states, against);
    const wanted = current.map(nextWanted);
    if (wanted.every((tasks) => tasks.length === 0)) {
      return current.map((state, i) => concludeStudy(state, settled[i]!.warnings));
    }
    const works = current.map(({ scenario }, i) => ({ kind: "replications", scenario, tasks: wanted[i]! }) as const);
    const answers = await labor.doAll(works);
    current.forEach((state, i) => (states[i] = withAnswers(state, answers[i]!)));
    const count = wanted.reduce((sum, tasks) => sum + tasks.length, 0);
    stages.report(`${count} replications of ${wanted.filter((tasks) => tasks.length > 0).length} scenarios`);
  }
}

// The report of a run or of a comparison, made of findings alone.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { comparisonSection } from "./comparisonSection.ts";
import { comparisonFinding, studyFinding } from "#report/answers/findingWords.ts";
import { htmlPage, type Section } from "./htmlPage.ts";
import { inputSection } from "./inputSection.ts";
import type { Placing, ReportedScenario, ReportInput } from "./reported.ts";
import { comparedSettings } from "#report/words/settingsWords.ts";
import { questionOf } from "./questionOf.ts";
import { studySections } from "./studySections.ts";
import { timingSection } from "./timingSection.ts";

export function reportPage({ version, scenarios, comparison, units = "si" }: ReportInput): string {
  const placing = (index: number): Placing => placingOf(scenarios, index, units);
  const studies = scenarios.map(({ study }) => study);
  const isCompared = comparison.length > 0;
  return htmlPage({
    version,
    title: titleOf(scenarios),
    questions: [
      ...new Set(scenarios.flatMap(({ text }) => questionOf(text) ?? [])),
      ...comparedSettings(studies.map(({ scenario }) => scenario)),
    ],
    finding: isCompared ? comparisonFinding(studies, comparison) : studies.flatMap(studyFinding),
    sections: [
      ...timings(scenarios, placing),
      ...(isCompared ? [comparisonSection(comparison, units)] : []),
      ...scenarios.flatMap((reported, i) => studySections(reported, placing(i))),
      ...scenarios.map((reported, i) => inputSection(reported, placing(i))),
    ],
  });
}

function titleOf(scenarios: readonly ReportedScenario[]): string {
  const [first] = scenarios;
  if (scenarios.length === 1 && first) return first.study.scenario.title;
  return scenarios.map(({ study }) => study.scenario.name).join(" against ");
}

/** All timing charts have the same scale. */
function timings(scenarios: readonly ReportedScenario[], placing: (index: number) => Placing): readonly Section[] {
  const span = scenarios.reduce((longest, { shots }) => Math.max(longest, shots.timeline?.seconds ?? 0), 0);
  return scenarios.map((reported, i) => timingSection(reported, placing(i), span > 0 ? span : undefined));
}

/** The id has a number, since a name may contain any letters. */
function placingOf(scenarios: readonly ReportedScenario[], index: number, units: UnitSystem): Placing {
  const name = scenarios[index]?.study.scenario.name ?? "";
  return { id: `scenario-${index + 1}`, of: scenarios.length > 1 ? `: ${name}` : "", units };
}

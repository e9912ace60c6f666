// The report of a run or of a comparison, made of findings alone.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { comparisonSection } from "./comparisonSection.ts";
import { comparisonFinding, studyFinding } from "#report/answers/findingWords.ts";
import { htmlPage } from "./htmlPage.ts";
import { inputSection } from "./inputSection.ts";
import type { Placing, ReportedScenario, ReportInput } from "./reported.ts";
import { comparedSettings } from "#report/words/settingsWords.ts";
import { questionOf } from "./questionOf.ts";
import { pageWarnings, type PageWarnings } from "./pageWarnings.ts";
import { detailSections } from "./detailSections.ts";
import { studySections } from "./studySections.ts";

export function reportPage({ version, scenarios, comparison, units = "si" }: ReportInput): string {
  const placing = (index: number): Placing => placingOf(scenarios, index, units);
  const studies = scenarios.map(({ study }) => study);
  const isCompared = comparison.length > 0;
  const span = longestStretch(scenarios);
  return htmlPage({
    version,
    title: titleOf(scenarios),
    questions: [
      ...new Set(scenarios.flatMap(({ text }) => questionOf(text) ?? [])),
      ...comparedSettings(studies.map(({ scenario }) => scenario)),
    ],
    finding: isCompared ? comparisonFinding(studies, comparison) : studies.flatMap(studyFinding),
    warnings: allWarnings(scenarios, units),
    sections: [
      ...(isCompared ? [comparisonSection(comparison, units)] : []),
      ...scenarios.flatMap((reported, i) => studySections(reported, placing(i), span)),
      ...scenarios.map((reported, i) => inputSection(reported, placing(i))),
      ...scenarios.flatMap((reported, i) => detailSections(reported, placing(i))),
    ],
  });
}

function allWarnings(scenarios: readonly ReportedScenario[], units: UnitSystem): PageWarnings {
  const found = scenarios.map((reported) => {
    const { warnings, unusual } = pageWarnings(reported, units);
    const name = scenarios.length > 1 ? `${reported.study.scenario.name}: ` : "";
    const named = (line: string): string => `${name}${line}`;
    return { warnings: warnings.map(named), unusual: unusual.map(named) };
  });
  return {
    warnings: found.flatMap(({ warnings }) => warnings),
    unusual: found.flatMap(({ unusual }) => unusual),
  };
}

function titleOf(scenarios: readonly ReportedScenario[]): string {
  const [first] = scenarios;
  if (scenarios.length === 1 && first) return first.study.scenario.title;
  return scenarios.map(({ study }) => study.scenario.name).join(" against ");
}

/** All timing charts have the same scale, in seconds. */
function longestStretch(scenarios: readonly ReportedScenario[]): number | undefined {
  const span = scenarios.reduce((longest, { shots }) => Math.max(longest, shots.timeline?.seconds ?? 0), 0);
  return span > 0 ? span : undefined;
}

/** The id has a number, since a name may contain any letters. */
function placingOf(scenarios: readonly ReportedScenario[], index: number, units: UnitSystem): Placing {
  const name = scenarios[index]?.study.scenario.name ?? "";
  return { id: `scenario-${index + 1}`, of: scenarios.length > 1 ? `: ${name}` : "", units };
}

// The report of a run or of a comparison, made of findings alone.
import type { Comparison } from "#analysis/study/comparison.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { differencesSection, layoutsSection } from "./comparisonSection.ts";
import { layoutDetails } from "./layoutDetails.ts";
import { comparisonFinding, studyFinding } from "#report/answers/findingWords.ts";
import { htmlPage, type Section } from "./htmlPage.ts";
import { inputSection } from "./inputSection.ts";
import type { Placing, ReportedScenario, ReportInput } from "./reported.ts";
import { comparedSettings } from "#report/words/settingsWords.ts";
import { questionOf } from "./questionOf.ts";
import { pageWarnings, type PageWarnings } from "./pageWarnings.ts";
import { detailSections } from "./detailSections.ts";
import { studySections } from "./studySections.ts";

/** The sections of more scenarios are folded, a scenario each. */
const mostOpen = 2;
/** The page of more scenarios would be too large. */
const mostFolded = 12;

export function reportPage({ version, scenarios, comparison, paybacks = [], units = "si" }: ReportInput): string {
  const studies = scenarios.map(({ study }) => study);
  const isCompared = comparison.length > 0;
  const compared = { studies, rows: comparison, paybacks };
  return htmlPage({
    version,
    title: titleOf(scenarios),
    questions: [
      ...(scenarios.length > mostOpen ? [] : new Set(scenarios.flatMap(({ text }) => questionOf(text) ?? []))),
      ...comparedSettings(studies.map(({ scenario }) => scenario)),
    ],
    finding: isCompared ? comparisonFinding(compared, units) : studies.flatMap(studyFinding),
    // Of many layouts the finding itself has them, merged.
    warnings: scenarios.length > mostOpen ? { warnings: [], unusual: [] } : allWarnings(scenarios, units),
    sections: scenarios.length > mostOpen ? manyLayouts(compared, scenarios, units) : open(compared, scenarios, units),
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

/** The differences first, then the findings, the input and the details of each scenario. */
function open(compared: Comparison, scenarios: readonly ReportedScenario[], units: UnitSystem): readonly Section[] {
  const placing = (index: number): Placing => placingOf(scenarios, index, units);
  const span = longestStretch(scenarios);
  const differences = [layoutsSection, differencesSection].map((section) => section(compared, units));
  return [
    ...(compared.rows.length > 0 ? differences : []),
    ...scenarios.flatMap((reported, i) => studySections(reported, placing(i), span)),
    ...scenarios.map((reported, i) => inputSection(reported, placing(i))),
    ...scenarios.flatMap((reported, i) => detailSections(reported, placing(i))),
  ];
}

/** The layouts side by side, then what is folded. */
function manyLayouts(
  compared: Comparison,
  scenarios: readonly ReportedScenario[],
  units: UnitSystem,
): readonly Section[] {
  const sideBySide = [layoutsSection(compared), differencesSection(compared, units)];
  if (scenarios.length > mostFolded) return sideBySide;
  const span = longestStretch(scenarios);
  const details = scenarios.map((reported, i) => {
    const placing = placingOf(scenarios, i, units);
    const found = studySections(reported, placing, span);
    const sections = [...found, inputSection(reported, placing), ...detailSections(reported, placing)];
    return { name: reported.study.scenario.name, sections };
  });
  return [...sideBySide, layoutDetails(details)];
}

function titleOf(scenarios: readonly ReportedScenario[]): string {
  const [first] = scenarios;
  if (scenarios.length === 1 && first) return first.study.scenario.title;
  if (scenarios.length > mostOpen && first)
    return `${first.study.scenario.name} and ${scenarios.length - 1} other layouts`;
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

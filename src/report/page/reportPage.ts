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
import { studySections } from "./studySections.ts";
import { timingSection } from "./timingSection.ts";

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
    sections: scenarios.length > mostOpen ? manyLayouts(compared, scenarios, units) : open(compared, scenarios, units),
  });
}

/** The timing charts first, then all findings of each scenario. */
function open(compared: Comparison, scenarios: readonly ReportedScenario[], units: UnitSystem): readonly Section[] {
  const placing = (index: number): Placing => placingOf(scenarios, index, units);
  const differences = [layoutsSection, differencesSection].map((section) => section(compared, units));
  return [
    ...timings(scenarios, placing),
    ...(compared.rows.length > 0 ? differences : []),
    ...scenarios.flatMap((reported, i) => studySections(reported, placing(i))),
    ...scenarios.map((reported, i) => inputSection(reported, placing(i))),
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
  const placing = (index: number): Placing => placingOf(scenarios, index, units);
  const timing = timings(scenarios, placing);
  const details = scenarios.map((reported, i) => ({
    name: reported.study.scenario.name,
    sections: [timing[i]!, ...studySections(reported, placing(i)), inputSection(reported, placing(i))],
  }));
  return [...sideBySide, layoutDetails(details)];
}

function titleOf(scenarios: readonly ReportedScenario[]): string {
  const [first] = scenarios;
  if (scenarios.length === 1 && first) return first.study.scenario.title;
  if (scenarios.length > mostOpen && first)
    return `${first.study.scenario.name} and ${scenarios.length - 1} other layouts`;
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

// The findings of one study in reading order: what sets the pace, cycles, time by state, process window, cost and calendar.
import type { Study } from "#analysis/study/study.ts";
import { waitingWords } from "#report/answers/findingWords.ts";
import { bottleneckChart } from "#report/charts/bottleneckChart.ts";
import { stateChart } from "#report/charts/stateChart.ts";
import { bottleneckTable, timeByStateTable } from "#report/tables/studyTables.ts";
import { bottleneckWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { slackMeaning } from "#report/words/idealWords.ts";
import { calendarSections } from "./calendarSection.ts";
import { changesSections, lostSections } from "./changesSection.ts";
import type { Section } from "./htmlPage.ts";
import { numbers, pictured } from "./pictured.ts";
import type { Placing, ReportedScenario } from "./reported.ts";
import { slackSections } from "./slackSection.ts";
import { timingSection } from "./timingSection.ts";
import { costSections } from "./unitSections.ts";
import { windowSections } from "./windowSection.ts";

/** `span` is the length of the axis of all timing charts in seconds. */
export function studySections(reported: ReportedScenario, placing: Placing, span?: number): readonly Section[] {
  const { study } = reported;
  return [
    bottleneckSection(study, placing),
    ...changesSections(study, placing),
    ...lostSections(study, placing),
    ...slackSections(study, placing),
    timingSection(reported, placing, span),
    statesSection(study, placing),
    ...windowSections(study, placing),
    ...costSections(study, placing),
    ...calendarSections(study, placing),
  ];
}

function bottleneckSection(study: Study, { id, of, units }: Placing): Section {
  const found = `Bottleneck: ${bottleneckWords(study)}; next ${runnerUpWords(study)}.`;
  return pictured({
    id: `${id}-bottleneck`,
    heading: `What sets the pace${of}`,
    description: `Shares of the critical path with 95 % intervals, the largest first. ${found}`,
    picture: (words) => bottleneckChart(study, words),
    caption: [
      `${found} ${slackMeaning(study.ideal)} `,
      "A step that keeps several resources busy belongs to the one that it waited for.",
    ],
    tables: [numbers(bottleneckTable([study]), study, { id, units })],
  });
}

function statesSection(study: Study, { id, of, units }: Placing): Section {
  const waits = waitingWords(study);
  const base = study.scenario.calendar ? ", of all time including off shift" : "";
  return pictured({
    id: `${id}-states`,
    heading: `Where the time goes${of}`,
    description: `Share of time that each resource spends in each state, stacked to 100 %. ${waits}`,
    picture: (words) => stateChart(study.states, words),
    caption: [`Work is on the left, waiting on the right${base}. ${waits}`],
    tables: [numbers(timeByStateTable([study]), study, { id, units })],
  });
}

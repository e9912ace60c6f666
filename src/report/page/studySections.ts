// The pictures and tables of one study, a section each: time by state, bottleneck, circuits, throughput, cycle times.
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { outsideWindow } from "#analysis/window/stationWindow.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { bottleneckChart } from "#report/charts/bottleneckChart.ts";
import { bottleneckWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { figure, type ChartWords } from "#report/charts/chart.ts";
import { calendarSections } from "./calendarSection.ts";
import { changesSections, lostSections } from "./changesSection.ts";
import { circuitChart } from "#report/charts/circuitChart.ts";
import { cycleBins, cycleBinsTable } from "#report/tables/cycleBins.ts";
import { cycleChart } from "#report/charts/cycleChart.ts";
import { withInterval } from "#report/words/digits.ts";
import { waitingWords } from "#report/answers/findingWords.ts";
import type { Section } from "./htmlPage.ts";
import { circuitsTable } from "#report/tables/idealTables.ts";
import { circuitWords, idealName, idealWords, slackMeaning } from "#report/words/idealWords.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { replicationChart } from "#report/charts/replicationChart.ts";
import type { Placing, ReportedScenario } from "./reported.ts";
import { stateChart } from "#report/charts/stateChart.ts";
import {
  bottleneckTable,
  replicationsTable,
  throughputTable,
  timeByStateTable,
  windowTables,
} from "#report/tables/studyTables.ts";
import type { Table } from "#report/tables/table.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";
import { rowsOfScenario, tableMarkup } from "./tableMarkup.ts";
import { slackSections } from "./slackSection.ts";
import { unitSections } from "./unitSections.ts";

export function studySections({ study }: ReportedScenario, placing: Placing): readonly Section[] {
  return [
    ...calendarSections(study, placing),
    statesSection(study, placing),
    bottleneckSection(study, placing),
    ...changesSections(study, placing),
    ...lostSections(study, placing),
    circuitsSection(study, placing),
    ...slackSections(study, placing),
    throughputSection(study, placing),
    cyclesSection(study, placing),
    ...unitSections(study, placing),
    ...windowSections(study, placing),
  ];
}

interface Pictured {
  readonly id: string;
  readonly heading: string;
  readonly description: string;
  readonly picture: (words: ChartWords) => Markup;
  readonly caption: readonly Child[];
  readonly tables: readonly Markup[];
}

function pictured({ id, heading, description, picture, caption, tables }: Pictured): Section {
  const words = { id: `${id}-chart`, title: heading, description };
  return {
    id,
    heading,
    body: [figure(heading, { picture: picture(words), caption, table: element("div", {}, ...tables) })],
  };
}

function numbers(table: Table, { scenario }: Study, { id, units }: Pick<Placing, "id" | "units">): Markup {
  return tableMarkup(rowsOfScenario(table, scenario.name), { id: `${id}-${table.name}`, file: table.name, units });
}

/** None where no material is named. */
function windowSections(study: Study, { id, of, units }: Placing): readonly Section[] {
  const outside = outsideWindow(study.windows).filter(({ isPractice }) => !isPractice).length;
  const some = outside === 1 ? "1 value is outside its limits." : `${outside} values are outside their limits.`;
  const found = outside === 0 ? "All computed values are inside their limits." : some;
  const warned = windowWarnings(study.windows, study.spreads, study.scenario.stations.length, units).filter(
    (line) => line !== "",
  );
  return windowTables([study]).map((table) => ({
    id: `${id}-window`,
    heading: `Process window${of}`,
    body: [
      element(
        "p",
        {},
        `Limits of wall, resin and machine at mean step times. ${found} Computed times are never safe limits.`,
      ),
      ...(warned.length === 0 ? [] : [element("ul", {}, ...warned.map((line) => element("li", {}, line.trim())))]),
      numbers(table, study, { id, units }),
    ],
  }));
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

function bottleneckSection(study: Study, { id, of, units }: Placing): Section {
  const found = `Bottleneck: ${bottleneckWords(study)}; next ${runnerUpWords(study)}.`;
  return pictured({
    id: `${id}-bottleneck`,
    heading: `What sets the pace${of}`,
    description: `Shares of the critical path with 95 % intervals, the largest first. ${found}`,
    picture: (words) => bottleneckChart(study, words),
    caption: [
      `${found} ${slackMeaning(study.ideal)}`,
      "A step that keeps several resources busy belongs to the one that it waited for.",
    ],
    tables: [numbers(bottleneckTable([study]), study, { id, units })],
  });
}

function circuitsSection(study: Study, { id, of, units }: Placing): Section {
  const { ideal } = study;
  const found = `${idealName(ideal)}: ${idealWords(ideal)}.`;
  return pictured({
    id: `${id}-circuits`,
    heading: `${idealName(ideal)}${of}`,
    description: `Seconds a shot of each circuit, the slowest first. ${found}`,
    picture: (words) => circuitChart(ideal, words),
    caption: [`${found} ${circuitWords(ideal)}`],
    tables: [numbers(circuitsTable([study]), study, { id, units })],
  });
}

const headline = "good parts per hour";

function throughputSection(study: Study, { id, of, units }: Placing): Section {
  const heading = `Good parts per hour${of}`;
  const summary = measureOf(study.measures, CELL, headline);
  if (!summary) return { id: `${id}-throughput`, heading, body: [element("p", {}, "No part was made.")] };
  const found = `${withInterval(summary.interval)} good parts an hour over ${study.replications} replications.`;
  return pictured({
    id: `${id}-throughput`,
    heading,
    description: `A dot for each replication, their mean and its 95 % interval. ${found}`,
    picture: (words) => replicationChart(summary, words),
    caption: [`${found} Each dot is one replication with its own random numbers. The axis does not begin at 0.`],
    tables: [
      numbers(throughputTable([study]), study, { id, units }),
      numbers(onlyHeadline(replicationsTable([study])), study, { id, units }),
    ],
  });
}

/** The CSV file has the other measures of each replication. */
function onlyHeadline(table: Table): Table {
  const [resource, measure] = ["resource", "measure"].map((wanted) =>
    table.columns.findIndex(({ name }) => name === wanted),
  );
  return { ...table, rows: table.rows.filter((row) => row[resource ?? 0] === CELL && row[measure ?? 0] === headline) };
}

function cyclesSection({ cycles }: Study, { id, of }: Placing): Section {
  const bins = cycleBins(cycles);
  const medians = cycles.flatMap(({ station, spread }) => (spread ? [`${station} ${spread.p50.toFixed(2)} s`] : []));
  return pictured({
    id: `${id}-cycles`,
    heading: `Cycle times${of}`,
    description: `How often each cycle time occurred, by station. Medians: ${medians.join(", ")}.`,
    picture: (words) => cycleChart(cycles, bins, words),
    caption: [
      `From shot to shot of one station, all cycles of replication 1; the triangle is the median.${
        bins.some(({ isBeyond }) => isBeyond) ? " Interrupted cycles are listed, not plotted." : ""
      }`,
    ],
    tables: [tableMarkup(cycleBinsTable(bins), { id: `${id}-cycle-times` })],
  });
}

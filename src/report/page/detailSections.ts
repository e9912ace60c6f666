// The details of one study at the end of its report: ideal cycle, cycle times, stops, indicators and replications.
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { circuitChart } from "#report/charts/circuitChart.ts";
import { cycleChart } from "#report/charts/cycleChart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { replicationChart } from "#report/charts/replicationChart.ts";
import { cycleBins, cycleBinsTable } from "#report/tables/cycleBins.ts";
import { circuitsTable } from "#report/tables/idealTables.ts";
import { replicationsTable, throughputTable } from "#report/tables/studyTables.ts";
import type { Table } from "#report/tables/table.ts";
import { withInterval } from "#report/words/digits.ts";
import { circuitWords, idealName, idealWords } from "#report/words/idealWords.ts";
import { headline } from "#report/words/madeWords.ts";
import type { Section } from "./htmlPage.ts";
import { numbers, pictured } from "./pictured.ts";
import type { Placing, ReportedScenario } from "./reported.ts";
import { tableMarkup } from "./tableMarkup.ts";
import { kpiSection, stopsSections } from "./unitSections.ts";

export function detailSections({ study }: ReportedScenario, placing: Placing): readonly Section[] {
  return [
    circuitsSection(study, placing),
    cyclesSection(study, placing),
    ...stopsSections(study, placing),
    kpiSection(study, placing),
    throughputSection(study, placing),
  ];
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

function throughputSection(study: Study, { id, of, units }: Placing): Section {
  const heading = `Good parts of each replication${of}`;
  const summary = measureOf(study.measures, CELL, headline);
  if (!summary) return { id: `${id}-throughput`, heading, body: [element("p", {}, "No part was made.")] };
  const found = `${withInterval(summary.interval)} good parts an hour over ${study.replications} replications.`;
  const { body, ...section } = pictured({
    id: `${id}-throughput`,
    heading,
    description: `A dot for each replication, their mean and its 95 % interval. ${found}`,
    picture: (words) => replicationChart(summary, words),
    caption: [`Each dot is one replication with its own random numbers. The axis does not begin at 0.`],
    tables: [
      numbers(throughputTable([study]), study, { id, units }),
      numbers(onlyHeadline(replicationsTable([study])), study, { id, units }),
    ],
  });
  return { ...section, body: [element("p", {}, found), folded("A dot for each replication", body)] };
}

function folded(summary: string, content: readonly Child[]): Markup {
  return element("details", {}, element("summary", {}, summary), ...content);
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
      "From shot to shot of one station, all cycles of replication 1; the triangle is the median. ",
      "The axis holds at least 99 % of the cycles of each station; the others are counted beside it.",
    ],
    tables: [tableMarkup(cycleBinsTable(bins), { id: `${id}-cycle-times` })],
  });
}

// The first picture of a report: a few cycles as they were run, all resources on one axis of time.
import { figure } from "./chart.ts";
import { waitingWords } from "./findingWords.ts";
import { seconds } from "./digits.ts";
import type { Section } from "./htmlPage.ts";
import { element } from "./markup.ts";
import type { Placing, ReportedScenario } from "./reported.ts";
import { tableMarkup } from "./tableMarkup.ts";
import { pathTable, timelineTable } from "./timelineTables.ts";
import { timingChart } from "./timingChart.ts";

const howToRead =
  "The heavy line is the binding path: it runs under the step for which all that follows was waiting. " +
  "Shorten that step, and the next shot comes sooner; shorten another, and it does not. Orange hatching is waiting.";

/** `span`: seconds that the axis covers, where several charts share a scale. */
export function timingSection({ study, shots }: ReportedScenario, { id, of }: Placing, span?: number): Section {
  const { timeline } = shots;
  const heading = `A few cycles${of}`;
  if (!timeline)
    return { id: `${id}-timing`, heading, body: [element("p", {}, "The cell makes too few shots to show any.")] };
  const place = `${seconds(timeline.seconds)} of replication ${timeline.replication}, from ${seconds(timeline.from)} on.`;
  const waits = waitingWords(study.states);
  const description = `${place} One row a resource; its bars are the states that it goes through. ${waits}`;
  const given = { id: `${id}-timing-chart`, title: heading, description };
  const caption = [`${howToRead} ${waits} Shown are ${place}`];
  const tables = element(
    "div",
    {},
    tableMarkup(timelineTable(timeline), { id: `${id}-timeline` }),
    tableMarkup(pathTable(timeline), { id: `${id}-binding-path` }),
  );
  return {
    id: `${id}-timing`,
    heading,
    body: [figure(heading, { picture: timingChart(timeline, given, span), caption, table: tables })],
  };
}

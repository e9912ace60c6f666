// The first picture of a report: a few simulated cycles, all resources on one time axis.
import { isTypical, leadingInCycle } from "#analysis/study/firstShots.ts";
import type { Study } from "#analysis/study/study.ts";
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { spokenWallTime } from "#scenario/resolving/wallTime.ts";
import { stepName } from "#report/words/bottleneckWords.ts";
import { figure } from "#report/charts/chart.ts";
import { waitingWords } from "#report/answers/findingWords.ts";
import { percent, seconds } from "#report/words/digits.ts";
import type { Section } from "./htmlPage.ts";
import { element, type Markup } from "#report/charts/markup.ts";
import type { Placing, ReportedScenario } from "./reported.ts";
import { tableMarkup } from "./tableMarkup.ts";
import { pathTable, timelineTable } from "#report/tables/timelineTables.ts";
import { timingChart } from "#report/charts/timingChart.ts";

const howToRead =
  "The heavy line is the critical path: the chain of steps for which the following steps waited. " +
  "Only a shorter step on this path makes the next shot earlier. " +
  "Orange hatching is waiting that holds parts back; a dotted line is idle time that costs no output.";

/** `span` is the length of the axis in seconds where several charts share a scale. */
export function timingSection({ study, shots }: ReportedScenario, { id, of }: Placing, span?: number): Section {
  const { timeline, stop } = shots;
  const heading = `A few cycles${of}`;
  if (!timeline)
    return { id: `${id}-timing`, heading, body: [element("p", {}, "The cell makes too few shots for a chart.")] };
  const waits = waitingWords(study);
  const place = placeWords(timeline, study);
  const caption = `${howToRead} ${waits} Shown are ${place}${typicalWords({ study, shots })}`;
  const usual = timingFigure(timeline, { id: `${id}-timing`, heading, description: waits, caption, place }, span);
  const stopped = stop ? [stopFigure(stop, study, { id: `${id}-stop`, of })] : [];
  return { id: `${id}-timing`, heading, body: [usual, ...stopped] };
}

function stopFigure(stop: TimelineRecord, study: Study, { id, of }: Pick<Placing, "id" | "of">): Markup {
  const heading = "A stop and the cycles around it";
  const place = placeWords(stop, study);
  const caption = `${heading}: ${place}`;
  return timingFigure(stop, { id, heading: `${heading}${of}`, description: "", caption, place });
}

interface TimingWords {
  readonly id: string;
  readonly heading: string;
  readonly description: string;
  readonly caption: string;
  readonly place: string;
}

function timingFigure(timeline: TimelineRecord, words: TimingWords, span?: number): Markup {
  const { id, heading, caption, place } = words;
  const description = `${place} One row a resource; its bars are its states. ${words.description}`.trim();
  const table = element(
    "div",
    {},
    tableMarkup(timelineTable(timeline), { id: `${id}-timeline` }),
    tableMarkup(pathTable(timeline), { id: `${id}-critical-path` }),
  );
  const picture = timingChart(timeline, { id: `${id}-chart`, title: heading, description }, span);
  return figure(heading, { picture, caption: [caption], table });
}

function placeWords(timeline: TimelineRecord, study: Study): string {
  return `${seconds(timeline.seconds)} of replication ${timeline.replication}, ${beginningOf(timeline.from, study)}.`;
}

function beginningOf(from: number, { scenario }: Study): string {
  if (scenario.calendar) return `from ${spokenWallTime(from, scenario.calendar)} on`;
  return from === 0 ? "from its start" : `from ${formatQuantity(from, "time", { digits: 4 })} after its start`;
}

/** Where the shown cycles begin if not after the warm-up, and whether they differ from the whole run. */
function typicalWords({ study, shots }: Pick<ReportedScenario, "study" | "shots">): string {
  const leading = leadingInCycle(study);
  if (!leading || leading.share.mean <= 0) return "";
  const name = stepName(leading);
  if (isTypical(shots, leading)) {
    return shots.isFromTheStart
      ? ""
      : ` The first cycles after the start are left out: ${name} does not yet set the pace in them.`;
  }
  const share = `${percent(shots.leadingShare ?? 0)} of the path, over the whole run ${percent(leading.share.mean)}`;
  return ` These few cycles are not typical of the run: ${name} has ${share}.`;
}

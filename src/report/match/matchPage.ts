// The report of a match: differences of all measures as bars, each with its interval, and the table.
import type { Comparison, MeasureKind } from "#analysis/match/logMatch.ts";
import type { Issue } from "#foundation/issue.ts";
import { figure } from "#report/charts/chart.ts";
import { rankedBars } from "#report/charts/rankedBars.ts";
import { htmlPage, type Section } from "#report/page/htmlPage.ts";
import { tableMarkup } from "#report/page/tableMarkup.ts";
import { warningLine } from "#report/fit/fitWords.ts";
import { fillTable } from "#report/tables/table.ts";
import { shareWords } from "#report/words/digits.ts";
import { matchNotes, type MatchFinding } from "./matchAnswer.ts";
import { matchTable } from "./matchTable.ts";
import { differenceText, matchFinding, measureName, signed } from "./matchWords.ts";

const headings: readonly (readonly [heading: string, measures: readonly MeasureKind[], explained: string])[] = [
  ["Output and cycles", ["throughput", "cycle"], "These decide."],
  ["Step times", ["step"], "Mean times of the steps that the log has."],
  ["Waits", ["wait"], "In shares of the time, by what a resource waits for."],
  ["Other time", ["time"], "In shares of the time."],
];
/** A longer list is slow to read; match.csv has all. */
const mostBars = 40;

export function matchPage(finding: MatchFinding, warnings: readonly Issue[], version: string): string {
  const { match, verdict, scenario } = finding;
  return htmlPage({
    version,
    title: `Match of ${scenario.title}`,
    questions: ["Does the model do what the line did, and if not, why?"],
    finding: [...matchFinding(match, verdict), ...matchNotes(finding)],
    warnings: { warnings: warnings.map(warningLine), unusual: [] },
    sections: headings.flatMap(([heading, measures, explained], i) =>
      sectionOf(finding, { heading, measures, explained, id: `match-${i + 1}` }),
    ),
  });
}

interface Part {
  readonly heading: string;
  readonly measures: readonly MeasureKind[];
  readonly explained: string;
  readonly id: string;
}

function sectionOf({ match }: MatchFinding, { heading, measures, explained, id }: Part): readonly Section[] {
  const meant = match.comparisons.filter(({ measure, result }) => measures.includes(measure) && result !== undefined);
  if (meant.length === 0) return [];
  const shown = meant.toSorted((one, other) => far(other) - far(one)).slice(0, mostBars);
  const picture = rankedBars(
    shown.map((each) => ({
      name: measureName(each),
      fill: measures.includes("wait") ? "wait" : "planned",
      value: each.result!.difference,
      halfWidth: (each.result!.high - each.result!.low) / 2,
      remark: `${differenceText(each.result)}, ${each.result!.agreement}`,
    })),
    { label: "model less log, with 90 % intervals", tick: signed },
    {
      id,
      title: heading,
      description: shown.map((each) => `${measureName(each)} ${differenceText(each.result)}`).join("; "),
    },
  );
  const table = matchTable({ ...match, comparisons: meant, spreads: measures.includes("cycle") ? match.spreads : [] });
  const caption = `${explained} The model agrees where the interval lies within ± ${shareWords(match.margin)}.`;
  const numbers = tableMarkup(fillTable(table, table.rows), { id, file: "match" });
  return [{ id: `${id}-section`, heading, body: [figure(heading, { picture, caption: [caption], table: numbers })] }];
}

const far = ({ result }: Comparison): number => Math.abs(result?.difference ?? 0);

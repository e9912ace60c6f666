// The report of a choice: the answer, the ranking, output against cost as a chart, and the layouts with their settings.
import type { RankedLayout } from "#analysis/choice/choiceResult.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { element, type Markup } from "#report/charts/markup.ts";
import { htmlPage, type Section } from "#report/page/htmlPage.ts";
import { tableMarkup } from "#report/page/tableMarkup.ts";
import { chooseTable } from "#report/tables/asked/chooseTable.ts";
import { mixNote } from "#report/words/layoutWords.ts";
import { variantOf } from "#scenario/variantOf.ts";
import { columnWords, rankingRows, type ChoiceAnswer } from "./chooseAnswer.ts";
import {
  choiceSentence,
  nameOf,
  needWords,
  procedureSentences,
  rareSentences,
  simplerSentences,
  withinSentences,
} from "./choiceSentences.ts";

import { efficiencySections } from "./efficiencySections.ts";

export interface ChoicePageParts extends ChoiceAnswer {
  readonly version: string;
  readonly warnings: readonly string[];
  readonly units: UnitSystem;
}

const mostRows = 100;

export function choicePage({ version, warnings, units, ...answer }: ChoicePageParts): string {
  const { choice, leftOut, usesDefault } = answer;
  const [first] = choice.ranking;
  const table = chooseTable(choice, leftOut);
  const need = needWords(choice);
  return htmlPage({
    version,
    title: `${first?.layout.scenario.title ?? ""}: which layout is best?`,
    questions: need === "" ? [] : [`Needed: ${need}.`],
    finding: [choiceSentence(choice, units), ...withinSentences(choice, units), ...simplerSentences(choice)],
    warnings: {
      warnings: [...warnings, ...rareSentences(choice), ...mixNote(choice.ranking.map(({ layout }) => layout))],
      unusual: [],
    },
    sections: [
      {
        id: "ranking",
        heading: "The ranking",
        body: [
          rankingMarkup(rankingRows(choice, units, mostRows)),
          ...[...procedureSentences(choice, units, usesDefault), ...columnWords(choice)].map((sentence) =>
            element("p", {}, sentence),
          ),
          tableMarkup(table, { id: "choose", file: "choose", units }),
        ],
      },
      ...efficiencySections(choice, table, units),
      layoutsSection(choice.ranking),
    ],
  });
}

/** A row a layout: rank, name, numbers, and the result in words. */
function rankingMarkup([heading = [], ...rows]: readonly (readonly string[])[]): Markup {
  const look = (i: number): string | undefined => (i === 1 || i === heading.length - 1 ? undefined : "number");
  return element(
    "div",
    { class: "numbers", tabindex: "0", role: "region", "aria-label": "The ranking of the layouts" },
    element(
      "table",
      {},
      element(
        "thead",
        {},
        element(
          "tr",
          {},
          heading.map((name, i) => element("th", { scope: "col", class: look(i) }, name)),
        ),
      ),
      element(
        "tbody",
        {},
        rows.map((cells) =>
          element(
            "tr",
            {},
            cells.map((cell, i) =>
              element(i === 1 ? "th" : "td", { scope: i === 1 ? "row" : undefined, class: look(i) }, cell),
            ),
          ),
        ),
      ),
    ),
  );
}

function layoutsSection(ranking: readonly RankedLayout[]): Section {
  const rows = ranking.map((ranked) => {
    const variant = variantOf(ranked.layout.scenario);
    const file = ranked.layout.scenario.call?.file ?? "";
    return [nameOf(ranked), variant === "" ? `${file} as it stands` : `${file} with ${variant}`] as const;
  });
  const list = rows.flatMap(([name, words]) => [element("dt", {}, name), element("dd", {}, words)]);
  return { id: "layouts", heading: "The layouts", body: [element("dl", {}, ...list)] };
}

// The section of a report about tested slack.
import type { Study } from "#analysis/study/study.ts";
import { element } from "#report/charts/markup.ts";
import { slackHeading, slackStep, slackWords } from "#report/answers/slackLines.ts";
import { slackTables } from "#report/tables/asked/slackTable.ts";
import type { Section } from "./htmlPage.ts";
import type { Placing } from "./reported.ts";
import { rowsOfScenario, tableMarkup } from "./tableMarkup.ts";

/** None where no slack was tested. */
export function slackSections(study: Study, { id, of, units }: Placing): readonly Section[] {
  const { slack = [], scenario } = study;
  const items = slack.map((row) => element("li", {}, `${slackStep(row)}: ${slackWords(row)}`));
  return slackTables([study]).map((table) => ({
    id: `${id}-slack`,
    heading: `Tested slack${of}`,
    body: [
      element("p", {}, slackHeading),
      element("ul", {}, ...items),
      tableMarkup(rowsOfScenario(table, scenario.name), { id: `${id}-slack-table`, file: table.name, units }),
    ],
  }));
}

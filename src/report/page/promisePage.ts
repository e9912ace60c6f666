// The report of an order: the answer, its finish dates, what would make it fit, and what it uses.
import type { OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Issue } from "#foundation/issue.ts";
import { chanceBars } from "#report/charts/order/chanceBars.ts";
import { finishBins } from "#report/charts/order/finishBins.ts";
import { finishChart } from "#report/charts/order/finishChart.ts";
import { element } from "#report/charts/markup.ts";
import { promiseLeversSpec, promiseLeversTables } from "#report/tables/asked/promiseLeversTable.ts";
import { integer, number, text } from "#report/tables/columns.ts";
import { fillTable, type Table, type TableSpec } from "#report/tables/table.ts";
import { grouped, shareWords, withInterval } from "#report/words/digits.ts";
import { momentWords } from "#report/words/momentWords.ts";
import { settingsWords } from "#report/words/settingsWords.ts";
import { spokenUnit } from "#report/words/shownUnits.ts";
import { htmlPage, type Section } from "./htmlPage.ts";
import { pictured } from "./pictured.ts";
import { rowsOfScenario, tableMarkup } from "./tableMarkup.ts";

export interface PromisePageParts {
  readonly version: string;
  readonly study: OrderStudy;
  /** Null where no change was run. */
  readonly levers: OrderLevers | null;
  /** The answer, then what is behind it: a paragraph each. */
  readonly finding: readonly string[];
  /** All that are written; that of the changes stands below their picture. */
  readonly tables: readonly Table[];
  /** Of the reading and of the runs. */
  readonly warnings: readonly Issue[];
  readonly units: UnitSystem;
}

export function promisePage(parts: PromisePageParts): string {
  const { version, study, levers, finding, warnings, units } = parts;
  return htmlPage({
    version,
    title: `${study.scenario.title}: ${study.order.name.replaceAll(/\d+(?= parts)/gu, grouped)}`,
    questions: settingsWords(study.scenario),
    finding,
    warnings: { warnings: warnings.map(({ message, remedy }) => `${message} ${remedy}`), unusual: [] },
    sections: [finishSection(parts), ...leverSections(study, levers, units), ...usesSections(study)],
  });
}

const binsSpec: TableSpec = {
  name: "finish-dates",
  meaning: "Number of runs that finish in each interval of the picture.",
  columns: [
    text("after", "Start of the interval, excluded"),
    text("until", "End of the interval, included"),
    integer("runs", "Runs that finish in it"),
  ],
};

function finishSection({ study, tables, units }: PromisePageParts): Section {
  const { scenario, order, finish, replications, due } = study;
  const bins = finishBins(finish, order.due).map(({ from, until, runs }) => [
    momentWords(from, scenario),
    momentWords(until, scenario),
    runs,
  ]);
  const late = due === null ? "" : `, ${due.onTime} of them by the due date`;
  return pictured({
    id: "finish",
    heading: "When it is done",
    description: `Histogram of the finish dates of ${replications} runs${late}.`,
    picture: (words) => finishChart(study, words),
    caption: [
      `Each of the ${replications} runs has its own random numbers: the spread is that from one run of the order to the next. `,
      ...(due === null ? [] : ["Solid line: due date. Green: on time; amber: late. "]),
      "Dashed lines: dates by which 50, 80 and 95 % of the runs are done.",
    ],
    tables: [
      ...tables
        .filter(({ name }) => name !== promiseLeversSpec.name)
        .map((table) =>
          tableMarkup(rowsOfScenario(table, scenario.name), { id: `finish-${table.name}`, file: table.name, units }),
        ),
      tableMarkup(fillTable(binsSpec, bins), { id: "finish-dates", units }),
    ],
  });
}

function leverSections(study: OrderStudy, levers: OrderLevers | null, units: UnitSystem): readonly Section[] {
  const { order, due } = study;
  return promiseLeversTables(study, levers).map((table) =>
    pictured({
      id: "levers",
      heading: "What would make it fit",
      description: `Chance of the due date with each change and its 95 % interval; ${shareWords(order.chance)} is wanted.`,
      picture: (words) =>
        chanceBars([...(due === null ? [] : [{ name: "as it is", due }]), ...levers!.rows], order.chance, words),
      caption: [
        `${runsOf(levers!)} runs of each change with the same random numbers, ${levers!.by === "effort" ? "the least usual effort first" : "the cheapest first"}. `,
        "A change fits where its whole interval lies above the wanted chance. What the change itself costs is not in the cost difference.",
      ],
      tables: [
        tableMarkup(rowsOfScenario(table, study.scenario.name), {
          id: "levers",
          file: table.name,
          units,
        }),
      ],
    }),
  );
}

function runsOf({ rows }: OrderLevers): string {
  const counts = rows.map(({ due }) => due.replications);
  const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
  return fewest === most ? `${most}` : `${fewest} to ${most}`;
}

const usesSpec: TableSpec = {
  name: "what-it-uses",
  meaning:
    "What the order uses up to its last part: the mean over the runs, and the range in which 9 of 10 single runs lie.",
  columns: [
    text("quantity", "What is used"),
    text("unit", "Unit of the numbers"),
    text("mean", "Mean with its 95 % interval"),
    number("single_low", "5 % of single runs lie below"),
    number("single_high", "5 % of single runs lie above"),
  ],
};

function usesSections({ uses, missing }: OrderStudy): readonly Section[] {
  if (uses.length === 0) return [];
  const rows = uses.map(({ quantity, unit, mean, single }) => [
    quantity,
    spokenUnit(unit),
    withInterval(mean),
    single?.low ?? null,
    single?.high ?? null,
  ]);
  const keys = [...new Set(missing.flatMap((each) => each.keys))];
  const rest = keys.length === 0 ? "" : `More with ${keys.join(", ")}.`;
  return [
    {
      id: "uses",
      heading: "What it uses",
      body: [tableMarkup(fillTable(usesSpec, rows), { id: "uses", isOpen: true }), element("p", {}, rest)],
    },
  ];
}

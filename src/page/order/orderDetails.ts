// What stands behind the answer of an order: dates, parts and cost, the histogram, and the notes of the command.
import { useMemo } from "preact/hooks";
import { h, type ComponentChild } from "preact";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { dateRows, notes, partLines, useRows } from "#report/answers/promiseAnswer.ts";
import { figure } from "#report/charts/chart.ts";
import { element } from "#report/charts/markup.ts";
import { finishChart } from "#report/charts/order/finishChart.ts";
import { finishWords } from "#report/charts/order/finishWords.ts";
import { useUnits } from "#page/units/unitsOfPage.ts";
import { PlainTable } from "./plainTable.ts";

/** Drawn anew only with another study or other units, not with each piece of the work. */
export function OrderDetails({ study }: { readonly study: OrderStudy }): ComponentChild {
  const units = useUnits();
  return useMemo(() => h(Details, { study, units }), [study, units]);
}

interface DetailsProps {
  readonly study: OrderStudy;
  readonly units: UnitSystem;
}

function Details({ study, units }: DetailsProps): ComponentChild {
  const [dateHeads = [], ...dates] = dateRows(study);
  const [useHeads = [], ...uses] = useRows(study, units);
  return [
    h(
      "section",
      { "aria-labelledby": "order-uses" },
      h("h2", { id: "order-uses" }, "Dates, parts and cost"),
      h(PlainTable, { caption: "Dates by which a share of the runs is done", heads: dateHeads, rows: dates }),
      partLines(study)
        .filter((words) => words !== "")
        .map((words) => h("p", {}, words)),
      uses.length === 0
        ? null
        : h(PlainTable, {
            caption: "What it uses up to the last part",
            heads: ["Quantity", ...useHeads.slice(1)],
            rows: uses,
          }),
    ),
    h("h2", {}, heading),
    h("div", { dangerouslySetInnerHTML: { __html: finishPicture(study) } }),
  ];
}

function finishPicture(study: OrderStudy): string {
  const { description, caption } = finishWords(study);
  const picture = finishChart(study, { id: "order-finish-chart", title: heading, description });
  return figure(heading, { picture, caption, table: element("div", {}) }).code;
}

const heading = "When it is done";

export function OrderNotes({ study }: { readonly study: OrderStudy }): ComponentChild {
  return h(
    "details",
    {},
    h("summary", {}, "How the runs were made"),
    notes(study).map((words) => h("p", {}, words)),
  );
}

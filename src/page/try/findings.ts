// The findings of the final answer: the rows of the answer to `run`, and how each resource spends its time.
import { h, type ComponentChild } from "preact";
import { useUnits } from "#page/units/unitsOfPage.ts";
import { findingOf } from "./answerView.ts";
import type { Trying } from "./trying.ts";

/** Nothing until the answer is final. */
export function Findings({ trying: { shown } }: { readonly trying: Trying }): ComponentChild {
  const finding = findingOf(shown.value);
  const units = useUnits();
  if (!finding) return null;
  const { inUnits, timeUse } = finding;
  const { rows } = inUnits[units];
  const [head = [], ...uses] = timeUse;
  return [
    h("h2", {}, "In detail"),
    h(
      "dl",
      { class: "rows" },
      rows.map(([name, words]) => [h("dt", {}, name), h("dd", {}, words)]),
    ),
    h(
      "div",
      { class: "numbers", tabIndex: 0, role: "region", "aria-label": "Where time goes" },
      h(
        "table",
        {},
        h("caption", {}, "Where time goes"),
        h(
          "thead",
          {},
          h(
            "tr",
            {},
            ["resource", ...head.slice(1)].map((each) => h("th", { scope: "col" }, each)),
          ),
        ),
        h(
          "tbody",
          {},
          uses.map(([name, ...cells]) =>
            h(
              "tr",
              { key: name },
              h("th", { scope: "row" }, name),
              cells.map((each) => h("td", {}, each)),
            ),
          ),
        ),
      ),
    ),
  ];
}

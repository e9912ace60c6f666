// What would make the order fit, each with a button that applies it, and those that were applied.
import { h, type ComponentChild } from "preact";
import type { LeverRow, OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import type { DueChance, OrderStudy } from "#analysis/promise/orderStudy.ts";
import { leverCells, notFittingWords } from "#report/answers/leverLines.ts";
import { percent } from "#report/words/digits.ts";
import type { AppliedChange } from "./kept.ts";
import { PlainTable } from "./plainTable.ts";

interface OrderChangesProps {
  readonly study: OrderStudy;
  readonly levers: OrderLevers;
  readonly apply: (change: AppliedChange) => void;
}

/** What to do where the order does not fit: each change that makes it fit with its button, else the words of the command. */
export function OrderRemedy({ study, levers, apply }: OrderChangesProps): ComponentChild {
  const fitting = levers.rows.filter(({ due }) => due.verdict === "yes");
  if (study.due?.verdict === "yes" || levers.rows.length === 0) return null;
  return h(
    "div",
    { class: "remedy" },
    fitting.length === 0
      ? notFittingWords(study, levers).map((words) => h("p", {}, words))
      : [
          h(
            "p",
            {},
            `What to do: ${fitting.length === 1 ? "this change makes" : "each of these changes makes"} it fit.`,
          ),
          h(
            "ul",
            {},
            fitting.map((row) =>
              h("li", { key: row.name }, `${row.name}: chance ${percent(row.due.share)} `, applyButton(row, apply)),
            ),
          ),
        ],
  );
}

export function OrderChanges({ study, levers, apply }: OrderChangesProps): ComponentChild {
  return h(
    "section",
    { "aria-labelledby": "order-changes" },
    h("h2", { id: "order-changes" }, "What would make it fit"),
    levers.rows.length === 0
      ? h("p", {}, "No change of the scenario is known that could make it fit.")
      : h(ChangesTable, { study, levers, apply }),
  );
}

function ChangesTable({ study, levers, apply }: OrderChangesProps): ComponentChild {
  const { heads, asItIs, rows } = leverCells(study, levers);
  const named = ["Change", "", ...heads.slice(1, -1), "fits", "95 % interval", "runs"];
  const byCost =
    levers.by === "effort"
      ? "the least usual effort first"
      : "the cheapest first, without premiums for overtime, molds and machines";
  return h(PlainTable, {
    caption: `The same random numbers; ${byCost}`,
    heads: named,
    rows: [
      withButton(asItIs, study.due, ""),
      ...levers.rows.map((row, i) => withButton(rows[i]!, row.due, applyButton(row, apply))),
    ],
  });
}

/** The cells of the command, with a button behind the name, and the interval with its runs. */
function withButton(
  [name, ...cells]: readonly string[],
  due: DueChance | null,
  button: ComponentChild,
): readonly ComponentChild[] {
  const interval = due ? [`${percent(due.low)} to ${percent(due.high)}`, String(due.replications)] : [];
  return [name, button, ...cells, ...interval];
}

function applyButton({ name, settings }: LeverRow, apply: OrderChangesProps["apply"]): ComponentChild {
  return h(
    "button",
    { type: "button", "aria-label": `Apply ${name}`, onClick: () => apply({ name, settings }) },
    "Apply",
  );
}

interface AppliedListProps {
  readonly applied: readonly AppliedChange[];
  readonly remove: (index: number) => void;
}

export function AppliedList({ applied, remove }: AppliedListProps): ComponentChild {
  if (applied.length === 0) return null;
  return h(
    "section",
    { class: "applied", "aria-label": "Applied changes" },
    h("p", {}, "Applied changes:"),
    h(
      "ul",
      {},
      applied.map(({ name, settings }, i) =>
        h(
          "li",
          { key: name },
          h("span", {}, `${name} `),
          h("code", {}, settings.join("; ")),
          h("button", { type: "button", "aria-label": `Remove ${name}`, onClick: () => remove(i) }, "Remove"),
        ),
      ),
    ),
  );
}

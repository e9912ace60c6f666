// What would make the order fit, each with a button that applies it, and those that were applied.
import { h, type ComponentChild } from "preact";
import type { LeverRow, OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import type { DueChance, OrderStudy } from "#analysis/promise/orderStudy.ts";
import { leverCells } from "#report/answers/leverLines.ts";
import { percent } from "#report/words/digits.ts";
import type { AppliedChange } from "./kept.ts";
import { PlainTable } from "./plainTable.ts";

interface OrderChangesProps {
  readonly study: OrderStudy;
  readonly levers: OrderLevers;
  readonly apply: (change: AppliedChange) => void;
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
  const byCost = levers.by === "effort" ? "the least usual effort first" : "the cheapest first";
  return [
    h(PlainTable, {
      caption: `The same random numbers; ${byCost}`,
      heads: named,
      rows: [
        withButton(asItIs, study.due, ""),
        ...levers.rows.map((row, i) => withButton(rows[i]!, row.due, applyButton(row, apply))),
      ],
    }),
    levers.by === "effort"
      ? null
      : h("p", { class: "quiet" }, "Premiums for overtime, molds and machines are not in the cost difference."),
  ];
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

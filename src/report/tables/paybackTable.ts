// Fills the table of the payback: one pair of layouts a row.
import type { Payback } from "#analysis/study/payback.ts";
import { number, text } from "./columns.ts";
import { fillTable, type Table, type TableSpec } from "./table.ts";

export const paybackSpec: TableSpec = {
  name: "payback",
  meaning:
    "When a scenario earns back its extra investment over a base. Simple payback: no interest, no tax. Only where `costs.investment` is given.",
  columns: [
    text("base", "Name of the scenario that is compared with"),
    text("other", "Name of the scenario that is compared"),
    text("currency", "Unit of all amounts in this row"),
    text(
      "rule",
      "`margin`: more margin at the price of a good part. `saving`, without a price: lower cost per good part, times the good parts an hour that both make",
    ),
    number("extra_investment", "Investment of the other − that of the base; a base without one counts as 0"),
    number("gain_per_hour", "Gain of the other over the base by that rule, in an hour of the observed time"),
    number("simultaneous_half_width_95", "Half width at which the gains of all pairs hold together, Bonferroni"),
    number("payback_h", "extra_investment / gain_per_hour; empty where it never pays back or no gain is seen", "h"),
    number("shortest_h", "Payback at the largest gain of the interval", "h"),
    number("longest_h", "Payback at the smallest gain of the interval", "h"),
    text(
      "verdict",
      "`pays back`, `no payback` (the gain is below 0), `no gain seen` (the interval includes 0), `nothing to pay back` or `one pair, no interval`",
    ),
  ],
};

/** None where no layout gives an investment. */
export function paybackTables(paybacks: readonly Payback[]): readonly Table[] {
  if (paybacks.length === 0) return [];
  const rows = paybacks.map((each) => [
    each.base,
    each.other,
    each.currency,
    each.rule,
    each.extraInvestment,
    each.gain,
    each.halfWidth,
    each.hours,
    each.shortest,
    each.longest,
    each.verdict,
  ]);
  return [fillTable(paybackSpec, rows)];
}

// Phrases for the cost of a thousand good parts, its largest items, and the keys for the items left out.
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import { areComparable, COST_MEASURE, type CostStudy } from "#analysis/indicators/costStudy.ts";
import type { Study } from "#analysis/study/study.ts";
import { percent, plainNumber, withInterval } from "./digits.ts";

/** "84.10 ± 0.12 EUR per 1,000 good parts: resin 71 %, machine 20 %". */
export function costWords({ currency, rows, total }: CostStudy): string {
  if (rows.length === 0) return "no item can be computed";
  if (!total.perThousand) return `${withInterval(total.perHour)} ${currency} an hour, without a good part`;
  const most = rows
    .filter(({ perHour }) => perHour.mean > 0)
    .toSorted((one, other) => other.perHour.mean - one.perHour.mean)
    .slice(0, 2)
    .map(({ item, share }) => `${item} ${percent(share ?? 0)}`);
  return `${withInterval(total.perThousand)} ${currency} per 1,000 good parts: ${most.join(", ")}`;
}

const mostKeys = 3;

/** A line with the keys for the items left out; none where all items are there. */
export function missingCostWords(costs: CostStudy | null): readonly string[] {
  if (!costs || costs.missing.length === 0) return [];
  const keys = [...new Set(costs.missing.flatMap((each) => each.keys))].map((key) => `\`${key}\``);
  const rest = keys.length - mostKeys;
  const named = rest > 1 ? `${keys.slice(0, mostKeys).join(", ")} and ${rest} more keys` : keys.join(", ");
  const count = costs.missing.length;
  return [`${count} more cost ${count === 1 ? "row" : "rows"} with ${named}`];
}

/** The paired difference in cost. */
function costDifferenceWords(row: ComparisonRow): readonly string[] {
  const { base, other, unit, difference, simultaneousHalfWidth, verdict } = row;
  const change = withInterval({ mean: Math.abs(difference), halfWidth: simultaneousHalfWidth });
  const said = {
    more: `${other} costs ${change} ${unit} more per 1,000 good parts than ${base}.`,
    less: `${other} costs ${change} ${unit} less per 1,000 good parts than ${base}.`,
    "no difference seen": `${other} and ${base} show no difference in cost (${change} ${unit} per 1,000 good parts).`,
    "one pair, no interval": `${other} costs ${plainNumber(Math.abs(difference))} ${unit} ${difference < 0 ? "less" : "more"} per 1,000 good parts than ${base} in one replication, which gives no interval.`,
  };
  return [said[verdict]];
}

/** The costs of a comparison: each difference, or the reason why there is none. */
export function costComparison(studies: readonly Study[], rows: readonly ComparisonRow[]): readonly string[] {
  const [base, ...others] = studies;
  if (!base || studies.every(({ costs }) => !costs)) return [];
  const apart = others
    .filter((other) => !areComparable(base.costs, other.costs))
    .map(
      ({ scenario }) =>
        `The costs of ${scenario.name} and ${base.scenario.name} have different items and are not compared.`,
    );
  return [...rows.filter(({ measure }) => measure === COST_MEASURE).flatMap(costDifferenceWords), ...apart];
}

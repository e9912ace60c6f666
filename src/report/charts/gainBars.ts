// Gains of changes and parts lost by cause as bars; what lies within its interval is gray.
import type { ChartWords } from "./chart.ts";
import type { Markup } from "./markup.ts";
import { rankedBars, type RankedBar } from "./rankedBars.ts";
import { grouped, withInterval } from "#report/words/digits.ts";
import type { Fill } from "#report/words/stateLook.ts";

export interface EffectRow {
  readonly label: string;
  readonly value: number;
  /** Null with one pair of replications. */
  readonly halfWidth: number | null;
  /** More about the value, behind it; empty where there is nothing to add. */
  readonly note: string;
}

const mostRows = 12;

/** Good parts that each change gains, in the order of the rows. */
export function gainBars(rows: readonly EffectRow[], unit: string, given: ChartWords): Markup {
  return effectBars(rows, unit, given, { more: "good", less: "poor" });
}

/** Parts lost by each cause; a cause that gains parts lies left of zero. */
export function lostBars(rows: readonly EffectRow[], unit: string, given: ChartWords): Markup {
  return effectBars(rows, unit, given, { more: "poor", less: "good" });
}

interface Fills {
  readonly more: Fill;
  readonly less: Fill;
}

function effectBars(rows: readonly EffectRow[], unit: string, given: ChartWords, { more, less }: Fills): Markup {
  const bars = rows.slice(0, mostRows).map(({ label, value, halfWidth, note }): RankedBar => {
    const isSeen = Math.abs(value) > (halfWidth ?? 0);
    const amount = withInterval({ mean: Math.abs(value), halfWidth });
    const sign = value < 0 ? "−" : value > 0 ? "+" : "";
    const remark = `${sign}${amount}${note === "" ? "" : `, ${note}`}${isSeen ? "" : ", no difference seen"}`;
    return { name: label, fill: isSeen ? (value < 0 ? less : more) : "off", value, halfWidth, remark };
  });
  return rankedBars(bars, { label: unit, tick: grouped }, given);
}

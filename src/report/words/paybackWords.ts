// Phrases for the payback of a layout.
import type { GainRule, Payback } from "#analysis/study/payback.ts";
import { grouped, withInterval } from "./digits.ts";

const hoursPerWeek = 168;
const digits = 3;

/** "5,120 h (5,080 to 5,170 h), 30.5 weeks of 168 h". */
function periodWords({ hours, shortest, longest }: Payback): string {
  if (hours === null) return "";
  const [least, most] = [rounded(shortest ?? hours), rounded(longest ?? hours)];
  const range = least === most ? "" : ` (${least} to ${most} h)`;
  return `${rounded(hours)} h${range}, ${rounded(hours / hoursPerWeek)} weeks of 168 h`;
}

const rounded = (value: number): string => grouped(Number(value.toPrecision(digits)));

/** For a column: "5,120 h", or why there is none. */
export function paybackCell(payback: Payback | undefined): string {
  if (!payback) return "";
  const { hours, verdict } = payback;
  return hours === null ? (verdict === "nothing to pay back" ? "no extra" : verdict) : `${rounded(hours)} h`;
}

/** One sentence a pair. */
export function paybackSentence(payback: Payback): string {
  const { base, other, currency, extraInvestment, gain, halfWidth, verdict, shortest } = payback;
  const extra = `${grouped(Math.abs(extraInvestment))} ${currency}`;
  const gained = `${withInterval({ mean: Math.abs(gain), halfWidth })} ${currency} an hour`;
  const words = {
    "pays back": `${other} pays back ${extra} more investment than ${base} in ${periodWords(payback)}: it gains ${gained}.`,
    "no payback": `${other} never pays back ${extra} more investment than ${base}: it ${gain < 0 ? `loses ${gained}` : "gains nothing"}.`,
    "no gain seen": `No payback seen for ${extra} more investment of ${other} than of ${base}: the interval of its gain includes 0${shortest === null ? "" : `, and it takes at least ${rounded(shortest)} h`}.`,
    "nothing to pay back": `${other} needs ${extraInvestment < 0 ? `${extra} less` : "no more"} investment than ${base}; it ${gain < 0 ? "loses" : "gains"} ${gained}.`,
    "one pair, no interval": `${other} ${payback.hours === null ? `does not pay back ${extra}` : `pays back ${extra} in ${periodWords(payback)}`} against ${base} in one replication, which gives no interval.`,
  };
  return words[verdict];
}

/** What the payback counts, and its limits. */
export const gainRules: Readonly<Record<GainRule, string>> = {
  margin: "Payback counts margin: price times good parts, less cost; all parts must sell. No interest, no tax.",
  saving:
    "Payback counts the lower cost of the good parts an hour that both layouts make; more parts count only with `costs.price`. No interest, no tax.",
};

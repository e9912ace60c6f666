// When a layout earns back what it costs more to buy than another one.
import { areComparable } from "#analysis/indicators/costStudy.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";
import type { Pair } from "./against.ts";
import type { Study } from "./study.ts";
import { measureOf } from "./summarizeMeasures.ts";

/** What counts as gain: more margin at given prices, or a lower cost for the parts that both layouts make. */
export type GainRule = "margin" | "saving";

type PaybackVerdict = "pays back" | "no payback" | "no gain seen" | "nothing to pay back" | "one pair, no interval";

export interface Payback {
  readonly base: string;
  readonly other: string;
  readonly currency: string;
  readonly rule: GainRule;
  /** Investment of the other less that of the base. */
  readonly extraInvestment: number;
  /** Of the other over the base, in an hour of the observed time. */
  readonly gain: number;
  /** Holds for all pairs at once; null where there is one pair of replications. */
  readonly halfWidth: number | null;
  /** Hours to earn back the extra investment at the mean gain; null without payback. */
  readonly hours: number | null;
  /** With the largest and the smallest gain of the interval; null where that does not pay back. */
  readonly shortest: number | null;
  readonly longest: number | null;
  readonly verdict: PaybackVerdict;
}

/** One a pair of which the other gives an investment; a base without one stands there already and costs nothing. */
export function paybacks(pairs: readonly Pair[]): readonly Payback[] {
  const bought = pairs.filter(
    ([base, other]) => other.scenario.costs?.investment !== undefined && areComparable(base.costs, other.costs),
  );
  return bought.flatMap((pair) => paybackOf(pair, bought.length) ?? []);
}

function paybackOf([base, other]: Pair, comparisons: number): Payback | undefined {
  const hasPrices = [base, other].every(({ scenario }) => scenario.costs?.price !== undefined);
  const rule = hasPrices ? "margin" : "saving";
  const gains = hasPrices ? marginGains(base, other) : savings(base, other);
  if (gains.length === 0) return undefined;
  const none = gains.map(() => 0);
  const { mean, simultaneousHalfWidth } = pairedDifference(gains, none, { comparisons });
  const extra = investmentOf(other) - investmentOf(base);
  return {
    base: base.scenario.name,
    other: other.scenario.name,
    currency: other.scenario.costs?.currency ?? "",
    rule,
    extraInvestment: extra,
    gain: mean,
    halfWidth: simultaneousHalfWidth,
    ...periodOf(extra, mean, simultaneousHalfWidth),
  };
}

const investmentOf = ({ scenario }: Study): number => scenario.costs?.investment ?? 0;

type Period = Pick<Payback, "hours" | "shortest" | "longest" | "verdict">;

function periodOf(extra: number, gain: number, halfWidth: number | null): Period {
  const none = { hours: null, shortest: null, longest: null };
  if (extra <= 0) return { ...none, verdict: "nothing to pay back" };
  const hoursAt = (each: number): number | null => (each > 0 ? extra / each : null);
  if (halfWidth === null) return { ...none, hours: hoursAt(gain), verdict: "one pair, no interval" };
  if (gain < -halfWidth || (gain === 0 && halfWidth === 0)) return { ...none, verdict: "no payback" };
  if (gain <= halfWidth) return { ...none, shortest: hoursAt(gain + halfWidth), verdict: "no gain seen" };
  const [shortest, longest] = [hoursAt(gain + halfWidth), hoursAt(gain - halfWidth)];
  return { hours: hoursAt(gain), shortest, longest, verdict: "pays back" };
}

/** Price times good parts less cost, of the other less that of the base, in each replication. */
function marginGains(base: Study, other: Study): readonly number[] {
  const [before, after] = [margins(base), margins(other)];
  return after.flatMap((value, i) => (before[i] === undefined ? [] : [value - before[i]]));
}

function margins({ scenario, costs, ...study }: Study): readonly number[] {
  const good = goodParts(study);
  const price = scenario.costs?.price ?? 0;
  return (costs?.perHourOf ?? []).map((cost, i) => price * (good[i] ?? 0) - cost);
}

/** The lower cost of a good part, times the good parts an hour that both layouts make. */
function savings(base: Study, other: Study): readonly number[] {
  const [goodBefore, goodAfter] = [goodParts(base), goodParts(other)];
  const [before, after] = [base, other].map(({ costs }) => costs?.perThousandOf ?? []);
  return goodBefore.flatMap((good, i) => {
    const [one, two] = [before?.[i] ?? null, after?.[i] ?? null];
    return one === null || two === null ? [] : [((one - two) / 1000) * Math.min(good, goodAfter[i] ?? 0)];
  });
}

function goodParts({ measures }: Pick<Study, "measures">): readonly number[] {
  return (measureOf(measures, CELL, "good parts per hour")?.values ?? []).map((value) => value ?? 0);
}

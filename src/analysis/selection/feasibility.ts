// Which layouts meet a need with the wanted chance, by a sequential decision on each one.
import { invariant } from "#foundation/invariant.ts";

export interface NeedGoal {
  /** The least chance of a run that meets the need. */
  readonly chance: number;
  /** Probability of any wrong decision among all layouts outside the zone. */
  readonly errorShare: number;
  /** No layout gets more. */
  readonly mostReplications: number;
}

export interface NeedVerdict {
  /** `open`: more replications are needed; `undecided`: the cap was reached. */
  readonly kind: "kept" | "dropped" | "open" | "undecided";
  /** Replications that the decision has used, and those among them that met the need. */
  readonly replications: number;
  readonly met: number;
}

export interface Feasibility {
  /** Of each layout. */
  readonly verdicts: readonly NeedVerdict[];
  /** Replications that each open layout needs next; 0 where none is open. */
  readonly more: number;
  /** A layout whose true chance lies between these may be kept or dropped. */
  readonly zone: { readonly low: number; readonly high: number };
}

/** Part of the allowed error that a need takes; the selection among the layouts that meet it keeps the rest. */
export const needShare = 0.5;

/** The zone goes from half of the odds to double: 90.5 to 97.4 % for a wanted chance of 95 %. */
const oddsOfZone = 2;

/**
 * Wald's sequential test of each layout. The likelihood ratio of the high end of the zone to its low end changes by the factor
 * high / low with a run that meets the need, and by (1 − high) / (1 − low) with another one. The layout is kept at 1/β or above, and
 * dropped at β or below, with β = error share / number of layouts (Bonferroni). Outcomes are yes or no, so that no distribution of
 * good parts is assumed. Runs of a layout are independent; layouts may share random numbers.
 *
 * Guarantee: with a probability of at least 1 − error share, all layouts with a chance at or above the high end are kept and all at or
 * below the low end are dropped. The bounds 1/β and β are not Wald's approximation: by Ville's inequality a nonnegative martingale of
 * mean 1 exceeds 1/β with a probability of at most β.
 *
 * Shape: `outcomes[layout][replication − 1]`, whether the run met the need; a decided layout needs no further outcomes.
 *
 * Source: Wald, Annals of Mathematical Statistics 16 (1945) 117 (from memory).
 */
export function feasibility(outcomes: readonly (readonly boolean[])[], goal: NeedGoal): Feasibility {
  const { chance, errorShare, mostReplications } = goal;
  invariant(chance > 0 && chance < 1, "a wanted chance lies between 0 and 1", { chance });
  const test = testOf(chance, errorShare / outcomes.length);
  const states = outcomes.map((each) => decided(each.slice(0, mostReplications), test));
  const verdicts = states.map(({ kind, replications, met }) => {
    const isCapped = kind === "open" && replications === mostReplications;
    return { kind: isCapped ? ("undecided" as const) : kind, replications, met };
  });
  const waiting = states.filter((_, layout) => verdicts[layout]!.kind === "open");
  const needed = waiting.map((state) => Math.min(mostReplications - state.replications, leastMore(state, test)));
  return { verdicts, more: needed.length === 0 ? 0 : Math.min(...needed), zone: test.zone };
}

interface NeedTest {
  readonly zone: Feasibility["zone"];
  /** Factors of the likelihood ratio. */
  readonly met: number;
  readonly missed: number;
  /** The ratio that keeps a layout; its inverse drops it. */
  readonly bound: number;
  readonly chance: number;
}

/** With odds o = p / (1 − p), 1 − p is 1 / (1 + o). */
function testOf(chance: number, beta: number): NeedTest {
  const odds = chance / (1 - chance);
  const [low, high] = [odds / oddsOfZone, odds * oddsOfZone];
  const missed = (1 + low) / (1 + high);
  const zone = { low: low / (1 + low), high: high / (1 + high) };
  return { zone, met: (high / low) * missed, missed, bound: 1 / beta, chance };
}

interface NeedState extends NeedVerdict {
  readonly ratio: number;
}

function decided(outcomes: readonly boolean[], test: NeedTest): NeedState {
  let [ratio, met] = [1, 0];
  for (const [place, hasMet] of outcomes.entries()) {
    met += hasMet ? 1 : 0;
    ratio *= hasMet ? test.met : test.missed;
    const state = { replications: place + 1, met, ratio };
    if (ratio >= test.bound) return { kind: "kept", ...state };
    if (ratio * test.bound <= 1) return { kind: "dropped", ...state };
  }
  return { kind: "open", replications: outcomes.length, met, ratio };
}

/** Runs until a decision, if all of them meet the need, or all miss it where too few have met it so far. */
function leastMore({ ratio, replications, met }: NeedState, test: NeedTest): number {
  const isHigh = met >= test.chance * replications;
  let [more, next] = [0, ratio];
  while (next < test.bound && next * test.bound > 1) {
    next *= isHigh ? test.met : test.missed;
    more++;
  }
  return more;
}

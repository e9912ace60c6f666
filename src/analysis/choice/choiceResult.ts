// What a choice finds: the ranking with its verdicts, and how sure it is.
import type { NeedVerdict } from "#analysis/selection/feasibility.ts";
import type { RareStops } from "#analysis/study/rareStops.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import type { ChoiceGoal } from "./choice.ts";
import type { Layout } from "./layout.ts";
import type { Observation } from "./observed.ts";

export type LayoutVerdict =
  "best" | "equal to the best" | "not decided" | "dropped" | "cannot meet the need" | "left out";

/** Null where the layout has no such cost, or cannot be chosen. */
export interface Efficiency {
  readonly perHour: boolean | null;
  readonly investment: boolean | null;
}

export interface RankedLayout {
  readonly layout: Layout;
  readonly verdict: LayoutVerdict;
  /** Null where it was left out. The intervals of one measure hold for all layouts together. */
  readonly value: Interval | null;
  readonly goodParts: Interval | null;
  /** Null without costs of the same items. */
  readonly costPerHour: Interval | null;
  readonly costPerThousand: Interval | null;
  /** By how much the first layout of the ranking is better; null for itself, and where it was left out. */
  readonly behind: Interval | null;
  /** Whether that interval lies below the worthwhile difference; null where there is none, or where the layout cannot be chosen. */
  readonly isWithin: boolean | null;
  readonly dropped: { readonly at: number; readonly by: string } | null;
  readonly need: NeedVerdict | null;
  readonly replications: number;
  /** Why it was left out. */
  readonly leftOut: string | null;
  readonly efficiency: Efficiency;
  readonly observations: readonly Observation[];
}

/** The next simpler layout than the first one. */
export interface Simpler {
  readonly ranked: RankedLayout;
  /** What it saves: investment in the currency, or stations. */
  readonly by: "investment" | "stations";
  readonly saved: number;
  /** Good parts an hour fewer than those of the first layout; below 0 where it makes more. */
  readonly partsLost: Interval;
}

export interface Choice {
  readonly goal: ChoiceGoal;
  /** In the unit of the criterion; a share is one of the layout `base`. */
  readonly worthwhile: number;
  readonly base: string;
  /** `none`: no layout can meet the need, or all were left out. */
  readonly verdict: "chosen" | "none" | "undecided";
  /** Best first. */
  readonly ranking: readonly RankedLayout[];
  readonly simpler: Simpler | null;
  /** All that were made. */
  readonly replications: number;
  /** Those that the selection used, and those that one of fixed size needs; null where there is nothing to select. */
  readonly spent: { readonly used: number; readonly layouts: number; readonly each: number } | null;
  /** Chances between these may be judged either way; null without a need. */
  readonly zone: { readonly low: number; readonly high: number } | null;
  readonly rareStops: readonly RareStops[];
}

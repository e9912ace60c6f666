// What the selection keeps of each two layouts: how far one is behind the other, and the lead that drops it.
import { sampleVariance } from "simple-statistics";
import { differenceOf } from "#analysis/statistics/pairedDifference.ts";
import { selectionConstants } from "./selectionConstants.ts";

export interface PairGoal {
  readonly better: "more" | "less";
  /** A difference below this does not matter; in the unit of the values, above 0. */
  readonly worthwhile: number;
  /** Of a correct selection. */
  readonly confidence: number;
  /** All layouts get these; the variances of the differences come from them alone. */
  readonly firstReplications: number;
}

/** One of the two directions of a pair. */
export interface LayoutPair {
  readonly layout: number;
  readonly rival: number;
  /** Sum of the paired differences by which the rival is better. */
  behind: number;
  /** h² S² / D²: beyond this number of replications any difference of the sums drops a layout. */
  readonly closing: number;
}

/** All pairs of the candidates, in both directions, after the first stage. */
export function layoutPairs(
  values: readonly (readonly number[])[],
  candidates: readonly number[],
  { better, confidence, firstReplications, worthwhile }: PairGoal,
): readonly LayoutPair[] {
  const { h2 } = selectionConstants(values.length, confidence, firstReplications);
  return candidates.flatMap((layout) =>
    candidates
      .filter((rival) => rival !== layout)
      .map((rival) => {
        const leads = Array.from({ length: firstReplications }, (_, place) =>
          leadOf(values, { layout, rival }, place, better),
        );
        const behind = leads.reduce((sum, lead) => sum + lead, 0);
        return { layout, rival, behind, closing: (h2 * sampleVariance(leads)) / (worthwhile * worthwhile) };
      }),
  );
}

/** By how much the rival is better in one replication. */
export function leadOf(
  values: readonly (readonly number[])[],
  { layout, rival }: Pick<LayoutPair, "layout" | "rival">,
  place: number,
  better: PairGoal["better"],
): number {
  const lead = differenceOf(values[rival]![place]!, values[layout]![place]!);
  return better === "more" ? lead : -lead;
}

/** The lead that drops a layout after r replications: W(r) = max(0, D/2 (h² S² / D² − r)). */
export function boundaryAt({ closing }: LayoutPair, replications: number, worthwhile: number): number {
  return Math.max(0, (worthwhile / 2) * (closing - replications));
}

/** The number of replications at which the first lead reaches its boundary, if all leads go on to grow as they did on average. */
export function nextDrop(pairs: readonly LayoutPair[], replications: number, worthwhile: number): number {
  const ends = pairs.map(({ behind, closing }) => {
    const growth = Math.abs(behind) / replications;
    return Math.ceil(((worthwhile / 2) * closing) / (growth + worthwhile / 2));
  });
  return Math.max(replications + 1, Math.min(...ends));
}

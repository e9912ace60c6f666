// The pairs of studies that a comparison shows.
import type { Study } from "./study.ts";

/** A base, and the study that is compared with it. */
export type Pair = readonly [base: Study, other: Study];

/** Words for what each layout is compared with; any other word is the name of a layout. */
export const againstWords = ["first", "previous", "all"] as const;

/** In the order of the studies; the earlier one is the base, except against a name. */
export function pairsAgainst<S extends Pick<Study, "scenario">>(
  studies: readonly S[],
  against = "first",
): readonly (readonly [base: S, other: S])[] {
  if (against === "all")
    return studies.flatMap((other, i) => studies.slice(0, i).map((base) => [base, other] as const));
  if (against === "previous") return studies.slice(1).map((other, i) => [studies[i]!, other] as const);
  const base = against === "first" ? studies[0] : studies.find(({ scenario }) => scenario.name === against);
  return base ? studies.filter((other) => other !== base).map((other) => [base, other] as const) : [];
}

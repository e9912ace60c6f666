// The smallest difference that matters to a choice.
import { mean } from "simple-statistics";

/** In the unit of the criterion, or as a share of the first layout. */
export type Worthwhile =
  { readonly by: "amount"; readonly value: number } | { readonly by: "share"; readonly value: number };

/** Where the call names none: below it, the error of step times from a stopwatch is larger than the difference. */
export const usualWorthwhile: Worthwhile = { by: "share", value: 0.01 };

const digits = 2;

/** `first`: the values of the first layout in the first stage. Where these are all 0, any difference matters. */
export function worthwhileOf({ by, value }: Worthwhile, first: readonly number[]): number {
  if (by === "amount") return value;
  const size = first.length === 0 ? 0 : Math.abs(mean(first.slice()));
  // With few digits, so that the number that is printed is the one that is used.
  return size === 0 ? 1 : Number((value * size).toPrecision(digits));
}

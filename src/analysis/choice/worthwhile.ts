// The smallest difference that matters to a choice.
import { mean } from "simple-statistics";

/** In the unit of the criterion, or as a share of the first layout. */
export type Worthwhile =
  { readonly by: "amount"; readonly value: number } | { readonly by: "share"; readonly value: number };

/** Where the call names none: below it, the error of step times from a stopwatch is larger than the difference. */
export const usualWorthwhile: Worthwhile = { by: "share", value: 0.01 };

const digits = 2;

export interface UsedWorthwhile {
  readonly difference: number;
  /** Place of the layout that a share is of. */
  readonly base: number;
}

/**
 * `values`: of each layout in the first stage. A share is one of the first layout, or of the first one whose mean is not 0; where all
 * are 0, the layouts are equal and any difference does.
 */
export function worthwhileOf({ by, value }: Worthwhile, values: readonly (readonly number[])[]): UsedWorthwhile {
  const sizes = values.map((each) => (each.length === 0 ? 0 : Math.abs(mean(each.slice()))));
  const base = Math.max(
    0,
    sizes.findIndex((size) => size > 0),
  );
  if (by === "amount") return { difference: value, base };
  // With few digits, so that the number that is printed is the one that is used.
  return { difference: Number((value * (sizes[base] || 1)).toPrecision(digits)), base };
}

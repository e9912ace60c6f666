// The values of a measure under control variates, and the error of their mean that the replications do not show.

/** The effect of a stop at its own rate may differ by this share from that at a high rate. */
const allowance = 0.1;

/** The effect of one stop on one measure. */
export interface ControlTerm {
  /** Name and resource of the stop. */
  readonly stop: string;
  /** Change of the measure for each share of time that the stop is repaired, with its standard error. */
  readonly slope: number;
  readonly error: number;
  /** Known standard deviation of that share, as a mean over the replications. */
  readonly spread: number;
  /** Standard error of the mean from what single stops cost beyond their repair time. */
  readonly rest: number;
}

export interface Controlled {
  /** One a replication: what it would be with the mean repair time of each controlled stop. */
  readonly values: readonly number[];
  readonly terms: readonly ControlTerm[];
}

/** The terms of the difference other − base: a stop of both sides has the same random numbers in both. */
export function differenceOfTerms(
  base: readonly ControlTerm[] = [],
  other: readonly ControlTerm[] = [],
): readonly ControlTerm[] {
  const shared = other.map((term) => {
    const same = base.find(({ stop }) => stop === term.stop);
    if (!same) return term;
    const spread = Math.max(term.spread, same.spread);
    const [error, rest] = [root([term.error, same.error]), root([term.rest, same.rest])];
    return { ...term, slope: term.slope - same.slope, error, spread, rest };
  });
  return [...shared, ...base.filter(({ stop }) => other.every((term) => term.stop !== stop))];
}

/** Standard error of the mean that the terms add. */
export function errorOf(terms: readonly ControlTerm[]): number {
  return root(terms.flatMap(({ slope, error, spread, rest }) => [spread * error, spread * allowance * slope, rest]));
}

/** Of the sum of squares; `Math.hypot` is not the same in every engine. */
const root = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));

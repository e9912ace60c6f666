// The number of replications for a wanted precision, of the output of a cell or of its difference from another.
import { CONFIDENCE } from "#analysis/statistics/interval.ts";
import { requiredReplications } from "#analysis/statistics/requiredReplications.ts";
import { errorOf } from "./controlled.ts";
import type { MeasureSummary } from "./summarizeMeasures.ts";

/** From fewer the interval is not reliable: from 2 to 5 it ends the search too often on a small spread by chance. */
const fewestReplications = 10;
const mostReplications = 2000;

export interface OutputSample {
  /** Good parts an hour, one a replication. */
  readonly values: readonly number[];
  /** Standard error of their mean from what the replications do not show. */
  readonly unseen: number;
  /** The precision is a share of this; null: of the mean of the values. */
  readonly reference: number | null;
  readonly confidence: number;
}

/** Good parts an hour of one cell. */
export function sampleOf(output: MeasureSummary | undefined): OutputSample {
  const values = output?.controlled?.values ?? output?.values ?? [];
  return {
    values: values.filter((value) => value !== null),
    unseen: errorOf(output?.controlled?.terms ?? []),
    reference: null,
    confidence: CONFIDENCE,
  };
}

/** At least the number made, and at most twice as many. */
export function replicationsFrom(sample: OutputSample, precision: number): number {
  const made = sample.values.length;
  const needed = Math.max(fewestReplications, neededFor(sample, precision) ?? made);
  return Math.max(made, Math.min(needed, Math.max(fewestReplications, 2 * made), mostReplications));
}

export function isPrecise(sample: OutputSample, precision: number): boolean {
  const needed = neededFor(sample, precision);
  return needed !== null && Math.max(needed, fewestReplications) <= sample.values.length;
}

function neededFor({ values, ...options }: OutputSample, precision: number): number | null {
  return values.length === 0 ? null : requiredReplications(values, precision, options);
}

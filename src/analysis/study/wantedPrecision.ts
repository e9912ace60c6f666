// The number of replications for a wanted precision, of the output of a cell or of its difference from another.
import { CELL } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { requiredReplications } from "#analysis/statistics/requiredReplications.ts";
import { errorOf, type StopControl } from "./stopControl.ts";
import { measureOf, summarizeMeasures } from "./summarizeMeasures.ts";

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
}

export function sampleOf(answers: readonly ReplicationAnswer[], control: StopControl): OutputSample {
  const output = measureOf(summarizeMeasures(answers), CELL, "good parts per hour");
  const summary = output && control.apply(output);
  const { values = [], terms = [] } = summary?.controlled ?? {};
  const plain = summary?.values.filter((value) => value !== null) ?? [];
  return { values: summary?.controlled ? values : plain, unseen: errorOf(terms), reference: null };
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

function neededFor({ values, unseen, reference }: OutputSample, precision: number): number | null {
  return values.length === 0 ? null : requiredReplications(values, precision, { unseen, reference });
}

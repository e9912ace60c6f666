// What reading a distribution gives: a distribution to draw from, or one that still waits for the values of its column.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Dimension } from "#foundation/dimension.ts";

/** What the key that a distribution stands behind asks of it. */
export interface DistributionKey {
  readonly dimension: Dimension;
  /** A rate of zero would last for ever. */
  readonly positive: boolean;
}

/** A distribution whose values stand in a column of a CSV file, not yet read. */
export interface ColumnDistribution extends DistributionKey {
  readonly kind: "column";
  readonly file: string;
  readonly column: string;
  /** Of values that carry none themselves. */
  readonly unit?: string;
}

export type DistributionReading = Distribution | ColumnDistribution;

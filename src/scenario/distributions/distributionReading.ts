// What reading a distribution gives: a distribution to draw from, or one that still waits for the values of its column.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Dimension } from "#foundation/dimension.ts";

/** The requirements of the key of a distribution. */
export interface DistributionKey {
  readonly dimension: Dimension;
  /** A rate of zero gives an endless time. */
  readonly positive: boolean;
}

/** A distribution with values in a column of a CSV file that is not yet read. */
export interface ColumnDistribution extends DistributionKey {
  readonly kind: "column";
  readonly file: string;
  readonly column: string;
  /** Of values that carry none themselves. */
  readonly unit?: string;
}

export type DistributionReading = Distribution | ColumnDistribution;

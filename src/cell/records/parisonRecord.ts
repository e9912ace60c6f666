// What is kept of the parisons of one station in one replication: a fair sample of their times, and the longest of them.

export interface ParisonRecord {
  readonly station: string;
  /** Parisons on which the mold closed within the observed time. */
  readonly parisons: number;
  /** Seconds of the drop and of the hang until the mold has closed, parison by parison of the sample. */
  readonly drops: readonly number[];
  readonly hangs: readonly number[];
  /** Seconds at heat of those of the sample of which it is known. */
  readonly timesAtHeat: readonly number[];
  /** Of all parisons, not of the sample alone; null where there is none. */
  readonly longestHang: number | null;
  readonly longestAtHeat: number | null;
  /** The one that sags most, to first order. */
  readonly mostSagging: { readonly drop: number; readonly hang: number } | null;
}

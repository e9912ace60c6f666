// What is kept of the parisons of one station in one replication: a fair sample of their times, and the longest of them.

/** How long the walls of the shots of one station touched the mold before it began to open. */
export interface ContactRecord {
  readonly shots: number;
  /** Shots hotter than the limit; of all shots, not of the sample alone. */
  readonly underCooled: number;
  /** Seconds, shot by shot of the sample. */
  readonly contacts: Float64Array;
  /** Seconds, of all shots; null where there is none. */
  readonly shortest: number | null;
}

export interface ParisonRecord {
  readonly station: string;
  /** Parisons on which the mold closed within the observed time. */
  readonly parisons: number;
  /** Seconds of the drop and of the hang until the mold has closed, parison by parison of the sample. */
  readonly drops: Float64Array;
  readonly hangs: Float64Array;
  /** Seconds at heat of those of the sample of which it is known. */
  readonly timesAtHeat: Float64Array;
  /** Of all parisons, not of the sample alone; null where there is none. */
  readonly longestHang: number | null;
  readonly longestAtHeat: number | null;
  /** The one that sags most, to first order. */
  readonly mostSagging: { readonly drop: number; readonly hang: number } | null;
  /** Absent where the cooling of the station is not known. */
  readonly contact?: ContactRecord;
}

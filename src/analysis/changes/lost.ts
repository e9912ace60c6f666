// The parts that were not made, by cause: the results as the tables, the answer and the page read them.

export type LostKind = "stop" | "start-up" | "break" | "change" | "operator" | "reject" | "rest";

export interface LostRow {
  /** In plain words, such as `stuck flash` or `cold starts`. */
  readonly cause: string;
  readonly kind: LostKind;
  /** Good parts in the observed time of one replication, mean; negative where the cause gains parts. */
  readonly parts: number;
  readonly halfWidth: number | null;
  /** Of all lost parts; null where none was lost. */
  readonly share: number | null;
}

export interface Lost {
  /** Seconds of planned time in one replication, mean. */
  readonly plannedSeconds: number;
  /** Parts at the ideal cycle in the planned time, and good parts made; ideal − made is the sum of the rows. */
  readonly ideal: number;
  readonly made: number;
  /** The largest first; the rest comes last. */
  readonly rows: readonly LostRow[];
}

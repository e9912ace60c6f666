// The parts that were not made, by cause: the results as the tables, the answer and the page read them.

export type LostKind =
  | "stop"
  | "start-up"
  | "break"
  | "change"
  | "reject"
  /** Times that vary, and waits that the ideal cycle does not have. */
  | "variation"
  /** What the causes lose together more than one by one, or less. */
  | "together"
  /** Parts that have left the mold and not the last server. */
  | "takeaway";

export interface LostRow {
  /** In plain words, such as `stuck flash` or `cold starts`. */
  readonly cause: string;
  readonly kind: LostKind;
  /** In the unit of `Lost`; negative where it adds parts. */
  readonly parts: number;
  readonly halfWidth: number | null;
  /** Of ideal − made; null where that is 0. */
  readonly share: number | null;
}

export interface Lost {
  /** With a calendar the parts of the whole run. */
  readonly unit: "parts per hour" | "parts in the run";
  /** Seconds of planned time in one replication: all work shifts with their breaks; without a calendar all observed time. */
  readonly plannedSeconds: number;
  /** Parts of the ideal cycle in the planned time, and good parts made; ideal − made is the sum of the rows. */
  readonly ideal: number;
  readonly made: number;
  /** Causes by their size, then what remains. */
  readonly rows: readonly LostRow[];
  /** Causes that were not run, because all together would take too long; they are in the rest. */
  readonly notRun: readonly string[];
}

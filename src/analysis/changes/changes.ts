// What one change of the cell buys: the results as the tables, the answer and the page read them.
import type { Interval } from "#analysis/statistics/interval.ts";

export interface Change {
  /** In plain words, such as `cooling −5 %`. */
  readonly name: string;
  /** The values of `--set` that make the change. */
  readonly settings: readonly string[];
  /** The options of `run` that repeat the changed cell exactly, warm-up and number of replications included. */
  readonly options: string;
  /** Good parts of the changed cell, in the unit of `Changes`. */
  readonly good: number;
  /** Changed cell − cell, replication by replication, in the unit of `Changes`. */
  readonly gain: Interval;
  /** Half width that holds for all changes at once (Bonferroni); null with one pair. */
  readonly simultaneousHalfWidth: number | null;
  /** gain / good parts of the cell in the same replications; null where that is 0. */
  readonly relativeGain: number | null;
  /** Changed cell − cell, cost of 1,000 good parts; null where rates are missing or the items differ. */
  readonly costPerThousand: Interval | null;
  /** What sets the pace after the change, identical resources together; null where no shot was made. */
  readonly paceSetter: { readonly group: string; readonly resources: readonly string[] } | null;
  /** Judged by the simultaneous interval. */
  readonly verdict: "more" | "less" | "no difference seen" | "one pair, no interval";
}

export interface Changes {
  /** With a calendar the parts of the whole run. */
  readonly unit: "good parts per hour" | "good parts in the run";
  readonly currency: string | null;
  /** Length of each replication; shorter than that of the study where many changes would take too long. */
  readonly seconds: number;
  /** The largest gain first. */
  readonly rows: readonly Change[];
  /** Changes that were not run, because all together would take too long; the most promising first. */
  readonly notRun: readonly {
    readonly name: string;
    /** Relative gain that it cannot exceed while the order of service stays; null where the run gives no such bound. */
    readonly atMost: number | null;
  }[];
}

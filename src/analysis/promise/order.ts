// An order as plain data: what the cell makes one after another, and when it is due.
import type { ChangeSpec, Scenario } from "#scenario/scenario.ts";

/** Good parts that are wanted. */
export interface OrderQuantity {
  /** Null: parts of any product. */
  readonly product: string | null;
  readonly quantity: number;
}

/** Work between two campaigns; every mold is empty and the screw waits, as in a planned change without `station`. */
export type OrderChange = Omit<ChangeSpec, "at" | "station">;

/** What one set-up of the cell makes; several quantities are made at the same time, at different stations. */
export interface Campaign {
  /** Read and settled, as the call gives it. Its length and warm-up do not count. */
  readonly scenario: Scenario;
  readonly quantities: readonly OrderQuantity[];
  /** Null for the first campaign, and where nothing must be changed. */
  readonly change: OrderChange | null;
}

export interface Order {
  /** As tables call it, such as `200000 parts`. */
  readonly name: string;
  /** One or more; the first begins at the start of the calendar, each of the others after the one before. */
  readonly campaigns: readonly Campaign[];
  /** Seconds after the start; null where only dates are asked for. */
  readonly due: number | null;
  /** Wanted chance of the due date, above 0 and below 1. */
  readonly chance: number;
  /** The number of runs that the call wants; null: as many as the decision needs. */
  readonly replications: number | null;
}

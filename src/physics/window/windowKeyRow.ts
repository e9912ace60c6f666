// What one row of the key table says of its number.
import type { Dimension } from "#foundation/dimension.ts";
import type { CommonProperty } from "#physics/materials/material.ts";

/** What replaces a number that is not given: a value, a property of the material, or a formula of other numbers. */
export type Substitute<Key extends string> = { readonly words: string; readonly reason: string } & (
  | { readonly value: number }
  | { readonly material: CommonProperty }
  | { readonly keys: readonly Key[]; readonly formula: (...values: readonly number[]) => number }
);

/** `Key` is the name of any row. */
export interface WindowKeyRow<Key extends string = string> {
  /** Numbers are in SI, temperatures in °C, pressures gauge, shares as fractions; a count has no unit. */
  readonly dimension: Dimension | "count";
  readonly above?: number;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** The section of a scenario that has this key needs it. */
  readonly required?: true;
  readonly meaning: string;
  /** As a scenario gives it; not set where that of the dimension will do. */
  readonly example?: string;
  /** Where it is missing, the window leaves out each row that needs the number. */
  readonly otherwise?: Substitute<Key>;
  /**
   * Not set for a plain quantity that a scenario gives at this path. `station`: from a key of another form, such as a
   * distribution. `cycle`: from the mean times of a cycle or from a run.
   */
  readonly from?: "station" | "cycle";
}

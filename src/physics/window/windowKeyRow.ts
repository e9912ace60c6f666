// The description of a number in the key table.
import type { Dimension } from "#foundation/dimension.ts";
import type { CommonProperty } from "#physics/materials/material.ts";

/** The substitute of a number that is not given: a value, a property of the material, or a formula of other numbers. */
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
  /** A share that a scenario may give as a plain number as well. */
  readonly isRatio?: true;
  /** What to do with a value outside its bounds, where there is more to say than to check it. */
  readonly remedy?: string;
  /** The section of a scenario that contains this key needs it. */
  readonly required?: true;
  readonly meaning: string;
  /** An example in a scenario; absent where the example of the dimension suffices. */
  readonly example?: string;
  /** Without a substitute, the window leaves out each row that needs the number. */
  readonly otherwise?: Substitute<Key>;
  /**
   * Absent for a plain quantity that a scenario gives at this path. `station`: from a key of another form, such as a
   * distribution. `cycle`: from the mean times of a cycle or from a run.
   */
  readonly from?: "station" | "cycle";
}

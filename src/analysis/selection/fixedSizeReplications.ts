// Replications that a selection of fixed size would need for the same guarantee.
import type { SelectionGoal } from "./kimNelson.ts";

/** Of each layout, from the first replications of all. */
export declare function fixedSizeReplications(
  values: readonly (readonly number[])[],
  goal: SelectionGoal,
  barred?: readonly number[],
): number;

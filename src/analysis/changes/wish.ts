// A change that is tried on a cell, before it is known whether the cell takes it.
import type { StepRole } from "#cell/words/stepNames.ts";
import type { LostKind } from "./lost.ts";

export interface Wish {
  /** In plain words, such as `cooling −5 %`. */
  readonly name: string;
  /** Settings of which the first that the reader takes makes the change; with `joins` all that it takes. */
  readonly alternatives: readonly (readonly string[])[];
  readonly joins?: true;
  /** The only stations that may change. */
  readonly only?: readonly string[];
  /** Stations that it adds. */
  readonly adds?: number;
  /** The cause of lost parts that is gone with this change; `all`: no change that is offered, but all causes gone. */
  readonly cause?: { readonly name: string; readonly kind: LostKind | "all" };
  readonly prospect: Prospect;
}

/** What the change shortens, and by which share of it. */
type Prospect =
  /** Steps on the critical path, of these resources where they are named. */
  | { readonly steps: readonly StepRole[]; readonly of?: readonly string[]; readonly share: number }
  /** The part of the critical path that belongs to these resources, or to the operators. */
  | { readonly resources: readonly string[]; readonly share: number }
  | { readonly isCrew: true; readonly share: number }
  /** The time of this stop. */
  | { readonly stop: string; readonly share: number }
  /** The run does not show it. */
  | { readonly unknown: true };

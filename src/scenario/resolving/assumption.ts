// What was taken for granted where a scenario is silent.

export interface Assumption {
  /** As in Issue. */
  readonly path: string;
  /** As it would be written. */
  readonly value: string;
  readonly reason: string;
}

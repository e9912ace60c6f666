// An assumption for an absent key.

export interface Assumption {
  /** As in Issue. */
  readonly path: string;
  /** As written in a scenario. */
  readonly value: string;
  readonly reason: string;
}

// The kinds of changes that may make an order fit, by the effort that they usually take.

/** The least effort first; common practice, no published source. */
export const efforts = ["later", "stop", "process", "overtime", "saturday", "operator", "shift", "station"] as const;
export type Effort = (typeof efforts)[number];

/** A change by name and as the values of `--set`. */
export interface NamedSettings {
  readonly name: string;
  readonly effort: Effort;
  readonly settings: readonly string[];
}

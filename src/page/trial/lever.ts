// A lever of a scenario: positions from low to high, each with the settings that a call would give.

export interface LeverPosition {
  /** What it is then, such as `7 s, −0.5 s`. */
  readonly words: string;
  /** None at the position of the scenario as it is. */
  readonly settings: readonly string[];
}

export interface Lever {
  /** The path that it moves. */
  readonly id: string;
  readonly name: string;
  /** As the scenario writes it. */
  readonly written: string;
  /** It adds or removes entries, so that its settings come last. */
  readonly isLast: boolean;
  /** From the lowest to the highest. */
  readonly positions: readonly LeverPosition[];
  /** The number of the position of the scenario as it is. */
  readonly present: number;
}

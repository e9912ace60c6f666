// A question with its choices, once the record has decided which one is right: what lessons, drills and the sheet show.

export interface Choice {
  readonly text: string;
  readonly isRight: boolean;
  /** Why it is right, or why it is wrong. */
  readonly because: string;
}

export interface Exercise {
  readonly ask: string;
  /** Exactly one is right. */
  readonly choices: readonly Choice[];
}

// What we got wrong: a claim about our own code that must hold whatever the user typed.

class BrokenInvariant extends Error {
  override readonly name = "BrokenInvariant";
  readonly facts: Readonly<Record<string, unknown>>;

  constructor(claim: string, facts: Readonly<Record<string, unknown>>) {
    super(`${claim} ${JSON.stringify(facts)}`);
    this.facts = facts;
  }
}

/** Throws BrokenInvariant, our bug and never the user's, unless the claim holds. */
export function invariant(holds: unknown, claim: string, facts: Readonly<Record<string, unknown>> = {}): asserts holds {
  if (!holds) throw new BrokenInvariant(claim, facts);
}

// Claims about the program's own code that hold for every input.

class BrokenInvariant extends Error {
  override readonly name = "BrokenInvariant";
  readonly facts: Readonly<Record<string, unknown>>;

  constructor(claim: string, facts: Readonly<Record<string, unknown>>) {
    super(`${claim} ${JSON.stringify(facts)}`);
    this.facts = facts;
  }
}

/** Throws BrokenInvariant, a bug of the program, unless the claim holds. */
export function invariant(holds: unknown, claim: string, facts: Readonly<Record<string, unknown>> = {}): asserts holds {
  if (!holds) throw new BrokenInvariant(claim, facts);
}

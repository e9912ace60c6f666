// Alternates several measurements in rounds, so that all of them meet the same state of the machine.

export type Rounds<Name extends string> = Readonly<Record<Name, readonly number[]>>;

/** Each round begins with another measurement. */
export function takeTurns<Name extends string>(
  measures: Readonly<Record<Name, () => number>>,
  rounds: number,
): Rounds<Name> {
  const names = Object.keys(measures) as Name[];
  const taken = Object.fromEntries(names.map((name) => [name, [] as number[]])) as unknown as Record<Name, number[]>;
  for (let round = 0; round < rounds; round++) {
    for (let i = 0; i < names.length; i++) {
      const name = names[(i + round) % names.length]!;
      taken[name].push(measures[name]());
    }
  }
  return taken;
}

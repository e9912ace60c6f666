// Types of the mutants of a source text.

export interface Mutant {
  readonly kind: string;
  /** The characters from `start` to `end` become `to`. */
  readonly start: number;
  readonly end: number;
  readonly to: string;
  /** Number of the innermost function, -1 outside of all. */
  readonly inside: number;
  readonly line: number;
  /** Ends of the expression or statement that is exchanged. */
  readonly around: readonly [number, number];
}

export function mutantsOf(text: string): readonly Mutant[];
export function mutated(text: string, mutant: Pick<Mutant, "start" | "end" | "to">): string;

// Types of a run of the tests with many mutants.
import type { Mutant } from "./mutants.mjs";

export interface FileMutant extends Mutant {
  readonly id: number;
  readonly file: string;
}

export interface TestTime {
  readonly file: string;
  readonly test: string;
  readonly time: number;
}

export interface Means {
  readonly files: readonly string[];
  readonly tests: readonly TestTime[];
  readonly cases: number;
  readonly seconds: number;
  readonly said: (line: string) => void;
}

export function tryTogether(mutants: readonly FileMutant[], means: Means): Promise<ReadonlyMap<number, string>>;

// The meaning of the exit codes.
import type { Issue } from "#foundation/issue.ts";

export const exitCode = {
  done: 0,
  /** Well-formed, but it cannot work; or the answer is no. */
  cannotWork: 1,
  /** The call, a file, the scenario or the log is wrong or contradicts itself. */
  wrongInput: 2,
  undecided: 3,
  ourFault: 70,
  machineFailed: 74,
  hungUp: 129,
  interrupted: 130,
  terminated: 143,
} as const;

interface ExitMeaning {
  readonly code: number;
  readonly meaning: string;
}

/** In the order of the help. */
export const exitMeanings: readonly ExitMeaning[] = [
  { code: exitCode.done, meaning: "done, or the answer is yes" },
  { code: exitCode.cannotWork, meaning: "well-formed but it cannot work, or the answer is no" },
  { code: exitCode.wrongInput, meaning: "the call, a file or what it says is wrong" },
  { code: exitCode.undecided, meaning: "undecided" },
  { code: exitCode.ourFault, meaning: "a fault of blowcell itself" },
  { code: exitCode.machineFailed, meaning: "the machine failed, as with a full disk" },
  { code: exitCode.hungUp, meaning: "the terminal was closed" },
  { code: exitCode.interrupted, meaning: "interrupted" },
  { code: exitCode.terminated, meaning: "terminated" },
];

/** With many files the largest code counts. */
export function worstOf(codes: readonly number[]): number {
  return Math.max(exitCode.done, ...codes);
}

/** Warnings and hints leave 0. */
export function exitCodeOf(issues: readonly Issue[]): number {
  const errors = issues.filter(({ severity }) => severity === "error");
  return worstOf(errors.map(({ fate }) => (fate === "file" ? exitCode.wrongInput : exitCode.cannotWork)));
}

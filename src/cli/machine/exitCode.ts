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

/** With many files the largest code counts. */
export function worstOf(codes: readonly number[]): number {
  return Math.max(exitCode.done, ...codes);
}

/** Warnings and hints leave 0. */
export function exitCodeOf(issues: readonly Issue[]): number {
  const errors = issues.filter(({ severity }) => severity === "error");
  return worstOf(errors.map(({ fate }) => (fate === "file" ? exitCode.wrongInput : exitCode.cannotWork)));
}

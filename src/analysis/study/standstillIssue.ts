// Tells a user that the cell came to rest for ever, and who waits for what.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export const standstillCodes = {
  deadlock: [
    "every part of the cell waits for another one, so that nothing can happen any more",
    "Give what is waited for, such as an operator or room.",
  ],
  "zero-time-loop": [
    "steps follow each other without taking any time, so that the clock stands still",
    "Give a step of the cycle some time.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export function standstillIssue(scenario: Scenario, { standstill, task }: ReplicationAnswer): Issue {
  const isDeadlock = standstill?.kind === "deadlock";
  const waits = (standstill?.waiting ?? [])
    .filter(({ lacks }) => lacks !== "")
    .map(({ process, step, lacks }) => `${process} cannot ${step} for want of: ${lacks}`);
  const at = `after ${standstill?.seconds ?? 0} s of replication ${task.replication}`;
  return {
    code: isDeadlock ? "deadlock" : "zero-time-loop",
    severity: "error",
    path: "",
    message: isDeadlock
      ? `${scenario.name} comes to rest for ever ${at}: ${waits.join("; ")}`
      : `${scenario.name} goes round without taking any time, ${at}`,
    remedy: isDeadlock ? "Give what is waited for, such as an operator." : "Give a step of the cycle some time.",
    fate: "cell",
  };
}

// The error for a deadlock or an endless loop in the cell, with every wait and its cause.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export const standstillCodes = {
  deadlock: [
    "every part of the cell waits for another part, so that no step can start",
    "Add the missing resource, such as an operator.",
  ],
  "zero-time-loop": [
    "steps follow each other without taking time, so that the clock does not advance",
    "Give a step of the cycle a time above 0.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

interface Stuck extends Pick<ReplicationAnswer, "standstill"> {
  readonly task: Pick<ReplicationAnswer["task"], "replication">;
}

export function standstillIssue(scenario: Scenario, { standstill, task }: Stuck): Issue {
  const isDeadlock = standstill?.kind === "deadlock";
  const waits = (standstill?.waiting ?? [])
    .filter(({ lacks }) => lacks !== "")
    .map(({ process, step, lacks }) => `${process} cannot ${step}, because it lacks: ${lacks}`);
  const at = `after ${standstill?.seconds ?? 0} s of replication ${task.replication}`;
  return {
    code: isDeadlock ? "deadlock" : "zero-time-loop",
    severity: "error",
    path: "",
    message: isDeadlock
      ? `${scenario.name} has a deadlock ${at}: ${waits.join("; ")}`
      : `${scenario.name} repeats steps without taking time, ${at}`,
    remedy: isDeadlock ? "Add the missing resource, such as an operator." : "Give a step of the cycle a time above 0.",
    fate: "cell",
  };
}

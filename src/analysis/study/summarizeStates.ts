// How each resource spends its time, state by state, over the replications.
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export interface StateSummary {
  readonly resource: string;
  readonly state: string;
  readonly kind: string;
  /** What a waiting resource lacks; null where the state is no wait. */
  readonly cause: string | null;
  readonly share: Interval;
}

/** What each waiting state waits for, in the words of the trade. */
const causes: Readonly<Record<string, string>> = {
  "holding a full shot": "no mold open and empty",
  "waiting for the mold to close": "the mold just filled is not closed yet",
  "awaiting melt": "the shot is not full yet",
  "awaiting turn": "the shot is full and another station's turn",
  "awaiting valve": "the valve is not back in neutral",
  "waiting for an empty chamber": "the head that is next still delivers",
  "waiting for melt": "the screw has not made its shot yet",
  "extruding to regrind": "no mold is under the die",
  "awaiting takeaway": "no room after the mold",
  blocked: "no room at the next server",
  "awaiting an operator": "no operator is free",
  starved: "no parts have come",
  "awaiting removal": "no operator is free",
  neutral: "no shot to deliver",
  free: "no parts to take out",
};

/** At a die that never stops the same words mean something else. */
const causesAtDie: Readonly<Record<string, string>> = {
  "awaiting melt": "the parison has not its full length yet",
  "awaiting turn": "another mold is at the die",
};

/** On a calendar the screw heats up and purges after a rest, and every station waits for that as well. */
const startUpCause = "the shot is not full yet, or the screw heats up or purges";

const maskCause = "the mask still holds the parts before";

/** Null for a state that is no wait. */
export function waitCause(
  state: string,
  kind: string,
  { delivery, calendar, startUp }: Pick<Scenario, "delivery" | "calendar" | "startUp">,
): string | null {
  if (kind !== "waiting") return null;
  if (state === "awaiting melt" && calendar && startUp) return startUpCause;
  if (delivery.kind !== "continuous") return causes[state] ?? null;
  if (state === "awaiting takeaway" && delivery.removal === "pin") return maskCause;
  return causesAtDie[state] ?? causes[state] ?? null;
}

/** In the order of the cell's resources and of their states. */
export function summarizeStates(scenario: Scenario, answers: readonly ReplicationAnswer[]): readonly StateSummary[] {
  const [first] = answers;
  return (first?.stateShares ?? []).map(({ resource, state, kind }, i) => ({
    resource,
    state,
    kind,
    cause: waitCause(state, kind, scenario),
    share: meanInterval(answers.map((answer) => answer.stateShares[i]?.share ?? 0)),
  }));
}

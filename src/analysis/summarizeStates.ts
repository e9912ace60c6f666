// How each resource spends its time, state by state, over the replications.
import { meanInterval, type Interval } from "./interval.ts";
import type { ReplicationAnswer } from "./replicationAnswer.ts";

export interface StateSummary {
  readonly resource: string;
  readonly state: string;
  readonly kind: string;
  /** What a waiting resource lacks; null where the state is no wait. */
  readonly cause: string | null;
  readonly share: Interval;
}

/** What each waiting state waits for, in the words of the trade. */
export const waitCauses: Readonly<Record<string, string>> = {
  "holding a full shot": "no mold open and empty",
  "waiting for the mold to close": "the mold just filled is not closed yet",
  "awaiting melt": "the shot is not full yet",
  "awaiting turn": "the shot is full and another station's turn",
  "awaiting valve": "the valve is not back in neutral",
  "waiting for an empty chamber": "the head that is next still delivers",
  "waiting for melt": "the screw fills another chamber, or its turn has not come",
  "waiting for the valve": "the valve is not open to a station",
  "extruding to regrind": "no mold is under the die",
  "awaiting takeaway": "no room after the mold",
  blocked: "no room at the next server",
  "awaiting an operator": "no operator is free",
  starved: "no parts have come",
  "awaiting removal": "no operator is free",
  neutral: "no shot to deliver",
  free: "no parts to take out",
};

/** In the order of the cell's resources and of their states. */
export function summarizeStates(answers: readonly ReplicationAnswer[]): readonly StateSummary[] {
  const [first] = answers;
  return (first?.stateShares ?? []).map(({ resource, state, kind }, i) => ({
    resource,
    state,
    kind,
    cause: kind === "waiting" ? (waitCauses[state] ?? null) : null,
    share: meanInterval(answers.map((answer) => answer.stateShares[i]?.share ?? 0)),
  }));
}

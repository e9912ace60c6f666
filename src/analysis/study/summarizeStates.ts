// The time of each resource by state over the replications.
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { stateMeanings, type StateMeaning } from "#cell/words/stateMeanings.ts";
import { stateNames, type StateKind } from "#cell/words/stateNames.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export interface StateSummary {
  readonly resource: string;
  readonly state: string;
  readonly kind: StateKind;
  /** What a waiting resource lacks; null where the state is not a wait. */
  readonly cause: string | null;
  readonly share: Interval;
}

/** An extra step has a state of its own without a meaning here. */
const meanings: ReadonlyMap<string, StateMeaning> = new Map(Object.entries(stateMeanings));

const maskCause = "the mask still holds the parts before";

/** Null for a state that is not a wait. */
export function waitCause(state: string, kind: StateKind, { delivery }: Pick<Scenario, "delivery">): string | null {
  if (kind !== "waiting" && kind !== "set-up") return null;
  const { cause = null, causeInContinuous = cause } = meanings.get(state) ?? {};
  if (delivery.kind !== "continuous") return cause;
  return state === stateNames.awaitingTakeaway && delivery.removal === "pin" ? maskCause : causeInContinuous;
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

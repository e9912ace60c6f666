// The time of each resource by state over the replications.
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { stateNames, type StateKind, type StateName } from "#cell/words/stateNames.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

export interface StateSummary {
  readonly resource: string;
  readonly state: string;
  readonly kind: StateKind;
  /** What a waiting resource lacks; null where the state is not a wait. */
  readonly cause: string | null;
  readonly share: Interval;
}

/** What each waiting state waits for. */
const causes: ReadonlyMap<string, string> = new Map<StateName, string>([
  [stateNames.holdingShot, "no mold open and empty"],
  [stateNames.awaitingClosedMold, "the mold just filled is not closed yet"],
  [stateNames.awaitingMelt, "the shot is not full yet"],
  [stateNames.awaitingTurn, "the shot is full and another station's turn"],
  [stateNames.awaitingValve, "the valve is not back in neutral"],
  [stateNames.awaitingEmptyChamber, "the head that is next still delivers"],
  [stateNames.awaitingShot, "the screw has not made its shot yet"],
  [stateNames.extrudingToRegrind, "no mold is under the die"],
  [stateNames.awaitingTakeaway, "no room after the mold"],
  [stateNames.blocked, "no room at the next server"],
  [stateNames.awaitingOperator, "no operator is free"],
  [stateNames.starved, "no parts have come"],
  [stateNames.awaitingRemoval, "no operator is free"],
  [stateNames.neutral, "no shot to deliver"],
  [stateNames.free, "no parts to remove"],
]);

/** In continuous extrusion these states have other causes. */
const causesAtDie: ReadonlyMap<string, string> = new Map<StateName, string>([
  [stateNames.awaitingMelt, "the parison has not its full length yet"],
  [stateNames.awaitingTurn, "another mold is at the die"],
]);

/** With a calendar the screw heats up and purges after a pause, and every station waits for that as well. */
const startUpCause = "the shot is not full yet, or the screw heats up or purges";

const maskCause = "the mask still holds the parts before";

/** Null for a state that is not a wait. */
export function waitCause(
  state: string,
  kind: StateKind,
  { delivery, calendar, startUp }: Pick<Scenario, "delivery" | "calendar" | "startUp">,
): string | null {
  if (kind !== "waiting") return null;
  if (state === stateNames.awaitingMelt && calendar && startUp) return startUpCause;
  if (delivery.kind !== "continuous") return causes.get(state) ?? null;
  if (state === stateNames.awaitingTakeaway && delivery.removal === "pin") return maskCause;
  return causesAtDie.get(state) ?? causes.get(state) ?? null;
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

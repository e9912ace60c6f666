// Which states count as active when a resource's utilization is judged.
import { stateNames, type StateKind } from "./stateNames.ts";

/** A station is active from the valve's shift to its port until it is ready again, so also while it waits for an operator. */
const activeWaits: readonly string[] = [stateNames.awaitingRemoval, stateNames.awaitingTakeaway];

/**
 * The plasticator is inactive only while it holds a full shot or waits for a mold to close; its valve shifts are active.
 * All other resources are active while they work.
 */
export function isActiveState(state: string, kind: StateKind): boolean {
  return kind === "working" || activeWaits.includes(state);
}

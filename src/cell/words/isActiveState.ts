// Which states count as active when a resource's utilization is judged.
import type { CellResource } from "./cellTable.ts";
import { stateNames, type StateName, type StateKind } from "./stateNames.ts";

const operatorWaits: readonly string[] = [stateNames.noOperatorFree, stateNames.operatorOnTheWay] satisfies StateName[];
const ownSetUps: readonly string[] = [
  stateNames.heating,
  stateNames.purging,
  stateNames.changeover,
] satisfies StateName[];

/**
 * The plasticator is inactive only while it holds a full shot or waits for a mold to close; its valve shifts are active. A station is
 * active from the valve's shift to its port until it is ready again, so also while it waits for an operator. All other resources
 * are active while they work or are set up.
 */
export function isActiveState(state: string, kind: StateKind, of: CellResource["kind"]): boolean {
  if (kind === "working" || state === stateNames.awaitingTakeaway) return true;
  return ownSetUps.includes(state) || (of === "station" && operatorWaits.includes(state));
}

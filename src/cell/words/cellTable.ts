// The step table of a cell: beside what runs, each step says what it is, each process and each resource what it is and for which station.
import type { ProcessSpec, ResourceSpec, StepSpec, StepTable } from "#engine/compiler/stepTable.ts";
import type { CrewTask } from "#scenario/scenario.ts";
import type { StepRole } from "./stepNames.ts";

export interface CellStep extends StepSpec {
  readonly role: StepRole;
  /** The task of an operator to which it belongs: the call, the walk and the work itself. */
  readonly task?: CrewTask;
}

interface Serving {
  /** The station whose shots it serves; absent where it serves all, or no shot. */
  readonly station?: string;
  /** The common name of several that are alike, such as the places of a server. */
  readonly group?: string;
}

export interface CellProcess extends ProcessSpec, Serving {
  readonly kind:
    | "screw"
    | "valve"
    | "ram"
    | "head"
    | "station"
    | "mask"
    | "server"
    | "age clock"
    | "mold clock"
    | "contact clock"
    | "idle clock"
    | "stop"
    | "repair"
    | "calendar"
    | "change";
  readonly steps: readonly CellStep[];
}

export interface CellResource extends ResourceSpec, Serving {
  readonly kind: "screw" | "valve" | "ram" | "station" | "mask" | "server" | "operator" | "shift";
}

export interface CellTable extends StepTable {
  readonly resources: readonly CellResource[];
  readonly processes: readonly CellProcess[];
}

export function hasRole({ role }: Pick<CellStep, "role">, ...roles: readonly StepRole[]): boolean {
  return roles.includes(role);
}

/** The place of the last step with one of these roles, -1 where there is none. */
export function lastWith(steps: readonly Pick<CellStep, "role">[], ...roles: readonly StepRole[]): number {
  return steps.findLastIndex((step) => hasRole(step, ...roles));
}

/** The step with which a shot is the mold's: a drop, or the cut in continuous extrusion. */
export const shotRoles: readonly StepRole[] = ["mold.drop", "mold.cut"];

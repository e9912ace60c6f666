// Why nothing can happen any more, or why time stands still, put into the names of the step table.
import { CARGO, DEADLOCK, NEEDING, NO_REGISTER } from "#core/border/numbers.ts";
import type { Core } from "./openCore.ts";
import type { Program } from "#engine/compiler/program.ts";
import type { Need } from "#engine/compiler/row.ts";

export interface Standstill {
  readonly kind: "deadlock" | "zero-time loop";
  readonly tick: number;
  /** Each waiting process, its step and the place, or the stopped resource, that it lacks; of a loop, every process. */
  readonly waiting: readonly { readonly process: string; readonly step: string; readonly lacks: string }[];
}

/** Nothing where the system can go on. */
export function standstillOf(core: Core, { table, rows }: Program): Standstill | undefined {
  if (core.standstill() === 0) return undefined;
  const kind = core.standstill() === DEADLOCK ? "deadlock" : "zero-time loop";
  const placeOf = (process: number, { place, by }: Need): number =>
    by === NO_REGISTER ? place : place + (by === CARGO ? core.cargoOf(process) : core.helperOf(process));
  const lacks = (process: number): string => {
    const step = rows[core.rowOf(process)]!;
    const lacking = step.needs.find((need) => core.tokensAt(placeOf(process, need)) < need.count);
    if (lacking) return table.places[placeOf(process, lacking)]!.name;
    const stopped = step.gates.find((resource) => core.stopsOf(resource) > 0);
    return stopped === undefined ? "" : table.resources[stopped]!.name;
  };
  const waiting = table.processes.flatMap(({ name }, process) =>
    kind === "zero-time loop" || core.phaseOf(process) === NEEDING
      ? [{ process: name, step: rows[core.rowOf(process)]!.name, lacks: lacks(process) }]
      : [],
  );
  return { kind, tick: core.standsSince(), waiting };
}

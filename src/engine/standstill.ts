// Why nothing can happen any more, or why time stands still, put into the names of the step table.
import { CARGO, NEEDING, NO_REGISTER } from "./core/numbers.ts";
import type { Program } from "./program.ts";
import type { Need } from "./row.ts";

export interface Standstill {
  readonly kind: "deadlock" | "zero-time loop";
  readonly tick: number;
  /** Each waiting process, its step and the place, or the stopped resource, that it lacks; of a loop, every process. */
  readonly waiting: readonly { readonly process: string; readonly step: string; readonly lacks: string }[];
}

/** Where everything stands: of each process what it does, its row and its registers; tokens by place, stops by resource. */
export interface Standing {
  readonly tick: number;
  readonly program: Program;
  readonly phase: Int32Array;
  readonly row: Int32Array;
  readonly registers: { readonly cargo: Int32Array; readonly hand: Int32Array };
  readonly tokens: Int32Array;
  readonly stopCount: Int32Array;
}

export function describeStandstill(kind: Standstill["kind"], standing: Standing): Standstill {
  const { tick, program, phase, row, registers, tokens, stopCount } = standing;
  const { table, rows } = program;
  const waiting = Array.from(phase.keys()).filter((p) => kind === "zero-time loop" || phase[p] === NEEDING);
  const placeOf = (process: number, { place, by }: Need): number =>
    by === NO_REGISTER ? place : place + (by === CARGO ? registers.cargo : registers.hand)[process]!;
  const lacks = (process: number): string => {
    const step = rows[row[process]!]!;
    const lacking = step.needs.find((need) => tokens[placeOf(process, need)]! < need.count);
    if (lacking) return table.places[placeOf(process, lacking)]!.name;
    const stopped = step.gates.find((resource) => stopCount[resource]! > 0);
    return stopped === undefined ? "" : table.resources[stopped]!.name;
  };
  return {
    kind,
    tick,
    waiting: waiting.map((process) => ({
      process: table.processes[process]!.name,
      step: rows[row[process]!]!.name,
      lacks: lacks(process),
    })),
  };
}

// Why nothing can happen any more, or why time stands still, put into the names of the step table.
import { NEEDING, type ProcessStates } from "./processStates.ts";
import type { Program } from "./program.ts";
import type { ResourceStates } from "./resourceStates.ts";
import type { WaitingLines } from "./waitingLines.ts";

export interface Standstill {
  readonly kind: "deadlock" | "zero-time loop";
  readonly tick: number;
  /** Each waiting process, its step and the place, or the stopped resource, that it lacks; of a loop, every process. */
  readonly waiting: readonly { readonly process: string; readonly step: string; readonly lacks: string }[];
}

export function describeStandstill(
  kind: Standstill["kind"],
  tick: number,
  {
    program,
    processes,
    resources,
    lines,
  }: Readonly<{
    program: Program;
    processes: ProcessStates;
    resources: ResourceStates;
    lines: WaitingLines;
  }>,
): Standstill {
  const { table, rows } = program;
  const waiting = Array.from(processes.phase.keys()).filter(
    (p) => kind === "zero-time loop" || processes.phase[p] === NEEDING,
  );
  const lacks = (process: number): string => {
    const step = rows[processes.row[process]!]!;
    const lacking = step.needs.find((need) => !lines.isMet(process, need));
    if (lacking) return table.places[lacking.place + processes.register(process, lacking.by)]!.name;
    const stopped = step.gates.find((resource) => resources.stopCount[resource]! > 0);
    return stopped === undefined ? "" : table.resources[stopped]!.name;
  };
  return {
    kind,
    tick,
    waiting: waiting.map((process) => ({
      process: table.processes[process]!.name,
      step: rows[processes.row[process]!]!.name,
      lacks: lacks(process),
    })),
  };
}

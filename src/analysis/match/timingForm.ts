// What to time at a cell by stopwatch: the waits and steps of each station in the order of its cycle.
import { waitCause } from "#analysis/study/summarizeStates.ts";
import { tracedSteps } from "#cell/layers/withTraces.ts";
import { planCell } from "#cell/layers/planCell.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface FormRow {
  readonly name: string;
  readonly kind: "step" | "wait";
  /** What a wait waits for; "" for a step. */
  readonly cause: string;
}

export interface StationForm {
  readonly station: string;
  readonly rows: readonly FormRow[];
}

export const timedCycles = 10;

export function timingForm(scenario: Scenario): readonly StationForm[] {
  const { processes, stationProcess } = planCell(scenario);
  return scenario.stations.map(({ name: station }, k) => {
    const process = processes[stationProcess[k]!]!;
    const timed = new Set(tracedSteps({ processes: [process] }, () => undefined).map(({ step }) => step));
    const rows = process.steps.flatMap(({ name, needs = [] }): readonly FormRow[] => [
      ...needs.flatMap(({ meanwhile }) => waitRow(meanwhile, scenario)),
      ...(timed.has(name) ? [{ name, kind: "step", cause: "" } as const] : []),
    ]);
    return { station, rows: [...new Map(rows.map((row) => [row.name, row])).values()] };
  });
}

function waitRow(state: string | undefined, scenario: Scenario): readonly FormRow[] {
  if (state === undefined) return [];
  const cause = waitCause(state, "waiting", scenario);
  return cause === null ? [] : [{ name: state, kind: "wait", cause }];
}

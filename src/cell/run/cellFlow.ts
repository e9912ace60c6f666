// Runs a cell at its mean times and writes down every step that started and every completion that it needed.
import { isPlainShow, type Row } from "#engine/compiler/row.ts";
import { Simulation, type FlowRecorder } from "#engine/run/simulation.ts";
import { hasRole, shotRoles, type CellProcess, type CellStep } from "#cell/words/cellTable.ts";
import { slowestTurn, type CellPlan } from "#cell/layers/planCell.ts";

/** A step that started, at mean times. */
export interface FlowNode extends Pick<CellStep, "role" | "task">, Pick<CellProcess, "kind" | "station"> {
  readonly resource: string;
  readonly step: string;
  /** The process that it belongs to, alike ones by their common name, and its place among the steps, counted from 0. */
  readonly process: string;
  readonly position: number;
  /** How many times this process had started this step before. */
  readonly occurrence: number;
  readonly start: number;
  readonly ticks: number;
  /** The resources whose state it shows, its own where it shows none. */
  readonly occupies: readonly string[];
  /** False for a step that takes no time whatever its distribution, since it has none. */
  readonly timed: boolean;
  /** Nodes whose completion this one needed. */
  readonly needed: readonly number[];
}

/** The nodes in the order in which they started, up to the instant at which `shots` drops had started or nothing happened any more. */
export function cellFlow(plan: CellPlan, shots: number): readonly FlowNode[] {
  const span = Math.max(1, Math.round(slowestTurn(plan) / plan.scenario.stations.length));
  for (let ticks = span * shots; ; ticks *= 2) {
    const nodes = flowUntil(plan, ticks);
    const drops = nodes.filter((node) => hasRole(node, ...shotRoles));
    const last = drops[shots - 1];
    if (last) return nodes.filter((node) => node.start <= last.start);
    if (drops.length === 0 || ticks > longestSpan) return nodes;
  }
}

/** Some thirty years: a cell that needs longer for its shots is not going to deliver them. */
const longestSpan = 1e15;

function flowUntil(plan: CellPlan, ticks: number): FlowNode[] {
  const { program } = plan;
  const nodes: FlowNode[] = [];
  const occurrences = new Int32Array(program.rows.length);
  let needed: number[] = [];
  const flow: FlowRecorder = {
    needed: (_, before) => void (before !== -1 && needed.push(before)),
    started: (_, rowNumber, tick, duration) => {
      const row = program.rows[rowNumber]!;
      const activity = program.activities[row.activity];
      const { name, kind, station, group, resource: own } = plan.processes[row.process]!;
      const { role, task } = plan.steps[rowNumber]!;
      const resource = activity?.resource ?? own;
      const shown = shownBy(row, plan);
      nodes.push({
        resource,
        occupies: shown.length > 0 ? shown : [resource],
        step: row.name,
        role,
        ...(task ? { task } : {}),
        process: group ?? name,
        kind,
        ...(station === undefined ? {} : { station }),
        position: rowNumber - program.firstRow[row.process]!,
        occurrence: occurrences[rowNumber]!++,
        start: tick,
        ticks: duration,
        timed: row.draw !== null,
        needed,
      });
      needed = [];
    },
  };
  new Simulation(program, { seed: "", replication: 0, atMeans: true, flow }).runUntil(ticks);
  return nodes;
}

/** Without operators, since which of them comes is known only in the run. */
function shownBy({ shows }: Row, { resources }: CellPlan): string[] {
  return shows.filter(isPlainShow).map(({ resource }) => resources[resource]!.name);
}

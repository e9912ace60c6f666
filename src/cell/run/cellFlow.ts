// Runs a cell at its mean times and writes down every step that started and every completion that it needed.
import { isPlainShow, type Row } from "#engine/compiler/row.ts";
import { Simulation, type FlowRecorder } from "#engine/run/simulation.ts";
import { hasRole, shotRoles, type CellProcess, type CellStep } from "#cell/words/cellTable.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";

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

/**
 * The nodes in the order in which they started, up to the instant at which `shots` drops had started or nothing happened any more.
 * The run goes on a little at a time, so that its work depends on the shots alone, even where one station is a thousand times
 * slower than another.
 */
export function cellFlow(plan: CellPlan, shots: number): readonly FlowNode[] {
  const nodes: FlowNode[] = [];
  const simulation = flowing(plan, nodes);
  const drops: FlowNode[] = [];
  for (let tick = 0, read = 0, slice = 1; drops.length < shots && tick < longestSpan && !simulation.standstill;) {
    tick += slice;
    simulation.runUntil(tick);
    if (nodes.length - read < usualNodes) slice *= 2;
    else slice = Math.max(1, Math.floor(slice / 2));
    for (; read < nodes.length; read++) if (hasRole(nodes[read]!, ...shotRoles)) drops.push(nodes[read]!);
  }
  const last = drops[shots - 1];
  return last ? nodes.filter((node) => node.start <= last.start) : nodes;
}

/**
 * Steps in one slice of the run: after fewer the next slice is twice as long, after more half as long. A cycle may take a day or a
 * microsecond.
 */
const usualNodes = 200;

/** Some thirty years: a cell that needs longer for its shots is not going to deliver them. */
const longestSpan = 1e15;

/** A run at mean times that adds every step that starts to `nodes`. */
function flowing(plan: CellPlan, nodes: FlowNode[]): Simulation {
  const { program } = plan;
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
  return new Simulation(program, { seed: "", replication: 0, atMeans: true, flow });
}

/** Without operators, since which of them comes is known only in the run. */
function shownBy({ shows }: Row, { resources }: CellPlan): string[] {
  return shows.filter(isPlainShow).map(({ resource }) => resources[resource]!.name);
}

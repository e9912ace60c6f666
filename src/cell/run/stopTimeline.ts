// A stretch of the first replication around a stop, from a turn of all stations before it to a turn after it.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import { slowestTurn, type CellPlan } from "#cell/layers/planCell.ts";
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import { stretchTimeline, type Stretch } from "./cycleTimeline.ts";

/** Beside a longer stop the cycles are too small to see; in turns of all stations. */
const longestShown = 10;
/** Pieces in which the run is searched. */
const pieces = 50;

/** The first stop after `begins` seconds that is short enough to be drawn; undefined where there is none. */
export function stopTimeline(plan: CellPlan, begins: number): TimelineRecord | undefined {
  const { scenario } = plan;
  if (!scenario.stops) return undefined;
  const options = { seed: scenario.run.seed, replication: 1 };
  const simulation = new Simulation(plan.program, options, plan.marked);
  const [first, end] = [begins, scenario.run.length].map((seconds) => Math.round(seconds * TICKS_PER_SECOND));
  simulation.runUntil(first!);
  simulation.restartObservation();
  const piece = Math.max(Math.ceil((end! - first!) / pieces), Math.ceil(slowestTurn(plan)));
  for (let tick = first!; tick < end! && !simulation.standstill;) {
    tick = Math.min(end!, tick + piece);
    simulation.runUntil(tick);
    const found = firstFitting(simulation, scenario.stations.length);
    if (found) return stretchTimeline(plan, found.shown, found.around);
  }
  return undefined;
}

interface Found {
  readonly shown: Stretch;
  /** With a turn more at both ends, since the critical path through the ends is known only there. */
  readonly around: Stretch;
}

function firstFitting({ marks: { ticks }, stops }: Simulation, count: number): Found | undefined {
  for (const { begin, end } of stops.records) {
    const next = ticks.findIndex((tick) => tick > begin);
    const after = ticks.findIndex((tick) => end !== null && tick > end);
    const [start, before] = [next - 2 * count - 1, next - count - 1];
    const [last, beyond] = [after + count, after + 2 * count];
    if (end === null || start < 0 || after < 0 || ticks[beyond] === undefined) continue;
    const turn = (ticks[before]! - ticks[start]!) * longestShown;
    const shown = { from: ticks[before]!, until: ticks[last]! };
    if (shown.until - shown.from <= turn) return { shown, around: { from: ticks[start]!, until: ticks[beyond]! } };
  }
  return undefined;
}

// A stretch of the first replication around a stop, from a turn of all stations before it to a turn after it.
import { bisectRight } from "d3-array";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import { slowestTurn, type CellPlan } from "#cell/layers/planCell.ts";
import type { TimelineRecord } from "#cell/records/timelineRecord.ts";
import { stretchTimeline, type Stretch } from "./cycleTimeline.ts";

/** Beside a longer stop the cycles are too small to see; in turns of all stations. */
const longestShown = 10;
/** A run is searched so far, in so many pieces; turns of all stations. */
const mostTurns = 10_000;
const pieces = 50;

/** The first stop after `begins` seconds that is short enough to be drawn; undefined where there is none. */
export function stopTimeline(plan: CellPlan, begins: number): TimelineRecord | undefined {
  const { scenario } = plan;
  if (!scenario.stops) return undefined;
  const options = { seed: scenario.run.seed, replication: 1 };
  const simulation = new Simulation(plan.program, options, plan.marked);
  const first = Math.round(begins * TICKS_PER_SECOND);
  const turn = Math.ceil(slowestTurn(plan));
  const end = Math.min(Math.round(scenario.run.length * TICKS_PER_SECOND), first + mostTurns * turn);
  simulation.runUntil(first);
  simulation.restartObservation();
  const piece = Math.max(Math.ceil((end - first) / pieces), turn);
  for (let tick = first; tick < end && !simulation.standstill;) {
    tick = Math.min(end, tick + piece);
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
    if (end === null) continue;
    const before = bisectRight(ticks, begin) - 1 - count;
    const after = bisectRight(ticks, end);
    const [first, from, until, last] = [before - count, before, after + count, after + 2 * count].map((i) => ticks[i]);
    if (first === undefined || from === undefined || until === undefined || last === undefined) continue;
    const isShort = until - from <= longestShown * (from - first);
    if (isShort) return { shown: { from, until }, around: { from: first, until: last } };
  }
  return undefined;
}

// The trace-driven run: the log's own step times through the model, held against the log shot by shot.
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { estimateOf, type Estimate } from "#analysis/statistics/equivalence.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { tracedSteps, type TracedStep, type Traces } from "#cell/layers/withTraces.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { allShots, gapsOf, type Anchor } from "./deliveries.ts";
import { doingKey, type Stretch } from "./lineLog.ts";
import { modelLine } from "./modelLine.ts";

/** What the log does not hold is drawn, anew in each; where it holds all, one run is enough. */
const RUNS = 3;
/** A model that is slower than the log runs at most for so much longer. */
const LONGER = 1.5;
const mostBatches = 20;
const leastShots = 5;

export interface TracedRun {
  /** Shots an hour of the model over those of the log, less 1. */
  readonly difference: Estimate | undefined;
  readonly runs: readonly Stretch[];
}

function tracesOf({ doings }: Stretch): Traces {
  return (resource, step) => {
    const doing = doings.get(doingKey(resource, step));
    return doing?.kind === "step" ? doing.times : undefined;
  };
}

export function stepsInLog(scenario: Scenario, log: readonly Stretch[]): readonly TracedStep[] {
  const traces: Traces = (resource, step) => log.map(tracesOf).flatMap((of) => of(resource, step) ?? []);
  return tracedSteps(planCell(scenario), traces);
}

/** Without any step time of the log it would be the drawn run once more. */
export function tracedRun(scenario: Scenario, log: readonly Stretch[], anchors: readonly Anchor[]): TracedRun {
  if (!stepsInLog(scenario, log).some(({ isTraced }) => isTraced)) return { difference: undefined, runs: [] };
  const parts = log.map((stretch) => tracedStretch(scenario, stretch, anchors));
  return {
    difference: estimateOf(batchDifferences(parts.flatMap(({ pairs }) => pairs))),
    runs: parts.flatMap(({ runs }) => runs),
  };
}

interface Pair {
  readonly log: number;
  readonly model: number;
}

/** Each time between two shots of the log, with the mean of those of the same number in the runs. */
function tracedStretch(scenario: Scenario, stretch: Stretch, anchors: readonly Anchor[]) {
  const plan = planCell(scenario, undefined, tracesOf(stretch));
  const until = LONGER * (stretch.until - stretch.from);
  const isWhole = tracedSteps(plan, tracesOf(stretch)).every(({ isTraced }) => isTraced);
  const isRandom = !isWhole || scenario.stops !== undefined || scenario.quality !== undefined;
  const shots = allShots(stretch, anchors, "inLog");
  const runs = Array.from({ length: isRandom ? RUNS : 1 }, (_, i) =>
    modelLine({ plan, replication: i + 1, from: 0, until, isEnough: shotCounter(shots.length, anchors) }),
  ).filter((run) => run !== undefined);
  const logged = gapsOf(shots);
  const modeled = runs.map((run) => gapsOf(allShots(run, anchors, "inModel")));
  if (runs.length === 0) return { runs, pairs: [] };
  const count = Math.min(logged.length, ...modeled.map((gaps) => gaps.length));
  const pairs = logged.slice(0, count).map(({ sum: log }, i): Pair => {
    return { log, model: modeled.reduce((sum, gaps) => sum + gaps[i]!.sum, 0) / modeled.length };
  });
  return { runs, pairs };
}

/** Shots are known in the order in which they end: as many again as there are stations, and none that began before is missing. */
function shotCounter(wanted: number, anchors: readonly Anchor[]): (record: StepRecord) => boolean {
  const steps = new Map(anchors.map(({ station, inModel }) => [station, inModel]));
  let left = wanted + anchors.length;
  return ({ station, step }) => {
    if (steps.get(station) === step) left -= 1;
    return left <= 0;
  };
}

/** By batches of shots: noise that both have in common is gone from the ratio. */
function batchDifferences(pairs: readonly Pair[]): readonly number[] {
  const count = Math.min(mostBatches, Math.floor(pairs.length / leastShots));
  return Array.from({ length: count }, (_, batch) => {
    const from = Math.floor((batch * pairs.length) / count);
    const until = Math.floor(((batch + 1) * pairs.length) / count);
    let [log, model] = [0, 0];
    for (const pair of pairs.slice(from, until)) {
      log += pair.log;
      model += pair.model;
    }
    return Math.abs(log - model) <= TICK * (until - from) ? 0 : log / model - 1;
  });
}

/** Times of a log are rounded to the microsecond. */
const TICK = 1e-6;

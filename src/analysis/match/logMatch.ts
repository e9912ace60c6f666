// Holds a model against a log, measure by measure.
import { differenceOfMeans, equivalence, type Equivalence, type Estimate } from "#analysis/statistics/equivalence.ts";
import { quantilesOfSorted, type Quantiles } from "#analysis/statistics/quantiles.ts";
import type { TracedStep } from "#cell/layers/withTraces.ts";
import { areSeenTogether, shotsOf, type Anchor } from "./deliveries.ts";
import type { Cell, Doing } from "./doing.ts";
import { doingKey, type Stretch } from "./lineLog.ts";
import { cycleTimes, meansOf, shares, throughput, type Measured } from "./measures.ts";
import type { TracedRun } from "./traced.ts";

export type MeasureKind = "throughput" | "cycle" | "step" | "time" | "wait";

export interface Comparison {
  readonly measure: MeasureKind;
  /** `cell` for the whole cell. */
  readonly resource: string;
  /** Of the step or state; "" where the measure has none. */
  readonly name: string;
  readonly log: Estimate | undefined;
  readonly model: Estimate | undefined;
  /** The model with the log's own step times, and the log over the part whose times they are. */
  readonly traced: Estimate | undefined;
  readonly tracedLog: Estimate | undefined;
  /** Model less log: as a share of the log's value, of shares of time in the same unit. */
  readonly result: Equivalence | undefined;
  readonly tracedResult: Equivalence | undefined;
}

export interface CycleSpread {
  readonly station: string;
  readonly log: Quantiles;
  readonly model: Quantiles;
}

export interface Lines {
  readonly log: readonly Stretch[];
  readonly model: readonly Stretch[];
  readonly tracedLog: readonly Stretch[];
  readonly isTracedWhole: boolean;
  readonly traced: TracedRun;
  readonly anchors: readonly Anchor[];
  readonly steps: readonly TracedStep[];
  readonly margin: number;
}

export interface LogMatch extends Pick<Lines, "margin" | "steps"> {
  readonly comparisons: readonly Comparison[];
  readonly spreads: readonly CycleSpread[];
  readonly tracedMargin: number;
  /** Throughput of the trace-driven run against the log. */
  readonly traced: Equivalence | undefined;
  /** The resource that works the largest share of the time. */
  readonly busiest: { readonly log: Busiest; readonly model: Busiest } | undefined;
  readonly shots: number;
  readonly hours: number;
  /** Of the part whose step times the trace-driven run takes; undefined where that is the whole log. */
  readonly tracedHours: number | undefined;
}

interface Busiest {
  readonly resource: string;
  readonly share: number;
}

/** The trace-driven run has no noise of step times: it is held to this part of the margin. */
const TRACED_PART = 0.2;

export function logMatch(lines: Lines): LogMatch {
  const { log, model, traced, tracedLog, isTracedWhole, anchors, margin, steps } = lines;
  const tracedMargin = margin * TRACED_PART;
  const together = areSeenTogether(tracedLog, anchors) || undefined;
  const shots = anchors.flatMap(({ station, inLog }) => log.map((each) => shotsOf(each, station, inLog)?.count ?? 0));
  return {
    margin,
    tracedMargin,
    steps,
    shots: shots.reduce((sum, count) => sum + count, 0),
    hours: hoursOf(log),
    tracedHours: isTracedWhole ? undefined : hoursOf(tracedLog),
    comparisons: [...outputs(lines), ...stepMeans(lines), ...timeShares(lines)],
    spreads: anchors.flatMap((anchor) => spreadOf(anchor, log, model)),
    traced: together && traced.difference && equivalence(traced.difference, tracedMargin),
    busiest: busiestOf(log, model),
  };
}

function hoursOf(log: readonly Stretch[]): number {
  return log.reduce((sum, { from, until }) => sum + until - from, 0) / 3600;
}

function outputs({ log, model, traced, tracedLog, anchors, margin }: Lines): readonly Comparison[] {
  const rate = throughput(log, model, anchors);
  const tracedRate = throughput(tracedLog, traced.runs, anchors);
  const cell = { measure: "throughput", resource: "cell", name: "" } as const;
  return [
    ...(areSeenTogether(log, anchors) ? [relative(cell, rate, tracedRate, margin)] : []),
    ...anchors.map((anchor) => {
      const series = cycleTimes(anchor);
      const tag = { measure: "cycle", resource: anchor.station, name: "" } as const;
      return relative(tag, meansOf(log, model, series), meansOf(tracedLog, traced.runs, series), margin);
    }),
  ];
}

/** Steps of which the log has times. */
function stepMeans({ log, model, traced, tracedLog, margin }: Lines): readonly Comparison[] {
  return keysOf(log, "step")
    .filter(({ station, name }) => model.some((run) => find(run, station, name)))
    .map(({ station, name }) => {
      const series = (stretch: Stretch): readonly Cell[] => find(stretch, station, name)?.durations() ?? [];
      const tag = { measure: "step", resource: station, name } as const;
      return relative(tag, meansOf(log, model, series), meansOf(tracedLog, traced.runs, series), margin);
    });
}

/** Shares of time of the resources that the log has, where it has more than one state of them. */
function timeShares({ log, model, traced, tracedLog, margin }: Lines): readonly Comparison[] {
  const resources = new Set(keysOf(log, "wait").map(({ station }) => station));
  const known = [...keysOf(log), ...keysOf(model)].filter(({ station }) => resources.has(station));
  const unique = new Map(known.map((doing) => [doingKey(doing.station, doing.name), doing]));
  return [...unique.values()].map(({ station, name, kind }) => {
    const isMeant = (doing: Doing): boolean => doing.station === station && doing.name === name;
    const measured = shares(log, model, isMeant);
    const own = shares(tracedLog, traced.runs, isMeant);
    const tag = { measure: kind === "wait" ? "wait" : "time", resource: station, name } as const;
    return { ...tag, ...withTraced(measured, own), ...resultsOf(measured, own, margin, 1) };
  });
}

function keysOf(stretches: readonly Stretch[], kind?: Doing["kind"]): readonly Doing[] {
  const all = stretches.flatMap(({ doings }) => [...doings]);
  return [...new Map(all).values()].filter((doing) => kind === undefined || doing.kind === kind);
}

function find({ doings }: Stretch, station: string, name: string): Doing | undefined {
  return doings.get(doingKey(station, name));
}

function relative(
  tag: Pick<Comparison, "measure" | "resource" | "name">,
  measured: Measured,
  traced: Measured,
  margin: number,
): Comparison {
  const unit = measured.log?.mean ?? 1;
  return { ...tag, ...withTraced(measured, traced), ...resultsOf(measured, traced, margin, unit) };
}

function withTraced(measured: Measured, traced: Measured) {
  return { ...measured, traced: traced.model, tracedLog: traced.log };
}

/** `unit`: what the differences are a share of. */
function resultsOf(measured: Measured, traced: Measured, margin: number, unit: number) {
  const of = ({ log, model }: Measured): Equivalence | undefined => {
    if (!log || !model) return undefined;
    const { mean, error, freedom } = differenceOfMeans(model, log);
    return equivalence({ mean: mean / unit, error: error / unit, freedom }, margin);
  };
  return { result: of(measured), tracedResult: of(traced) };
}

function spreadOf(anchor: Anchor, log: readonly Stretch[], model: readonly Stretch[]): readonly CycleSpread[] {
  const sorted = (stretches: readonly Stretch[], of: "inLog" | "inModel"): Float64Array =>
    Float64Array.from(
      stretches.flatMap((stretch) => shotsOf(stretch, anchor.station, anchor[of])?.gaps() ?? []),
    ).toSorted();
  const [logged, modeled] = [sorted(log, "inLog"), sorted(model, "inModel")];
  if (logged.length === 0 || modeled.length === 0) return [];
  return [{ station: anchor.station, log: quantilesOfSorted(logged), model: quantilesOfSorted(modeled) }];
}

function busiestOf(log: readonly Stretch[], model: readonly Stretch[]): LogMatch["busiest"] {
  const resources = [...new Set(keysOf(log, "step").map(({ station }) => station))];
  const worked = resources.map((resource) => ({
    resource,
    ...shares(log, model, ({ station, kind }) => station === resource && kind === "step"),
  }));
  const most = (of: "log" | "model"): Busiest | undefined =>
    worked
      .map((each) => ({ resource: each.resource, share: each[of]?.mean ?? 0 }))
      .toSorted((a, b) => b.share - a.share)[0];
  const [logged, modeled] = [most("log"), most("model")];
  return resources.length > 1 && logged && modeled ? { log: logged, model: modeled } : undefined;
}

// Compares a simulated cell with its recursion: the same draws for both, and the first step at which they differ.
import type { Distribution } from "#engine/distributions/distribution.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import type { Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { openStream, type Stream } from "../draws/openStream.ts";
import type { Durations } from "./shotRecursion.ts";
import { TableSampler } from "../draws/tableSampler.ts";

export interface Interval {
  readonly resource: string;
  readonly step: string;
  readonly start: number;
  readonly end: number;
}

export const until = 90e6;
export const replication = 3;
export const moldSteps = ["close", "blow", "cool", "vent", "open"] as const;

/** Extra steps come after the step that they name; the one listed last comes first. */
export function orderedMoldSteps(station: StationSpec): readonly string[] {
  const order: string[] = ["drop", ...moldSteps];
  for (const step of station.extra) order.splice(order.indexOf(step.after) + 1, 0, step.name);
  return order.slice(1);
}

export function massMilligrams(station: StationSpec): number {
  return station.cavities * (Math.round(station.partMass! * 1e6) + Math.round(station.flashMass! * 1e6));
}

function samplerOf(time: Distribution): TableSampler {
  return new TableSampler(time, { unit: 1e6 });
}

function samplerOfMelt(time: TimeOrRate, station: StationSpec): TableSampler {
  return time.by === "time" ? samplerOf(time.time) : TableSampler.ofRate(time.rate, massMilligrams(station));
}

/** The sampler of a step; the first charge of a cold start is that of the largest shot. */
function samplerFor(scenario: Scenario, step: string, station: number): TableSampler {
  if (step.startsWith("shift to")) return samplerOf(scenario.valve.shift);
  const masses = scenario.stations.map(massMilligrams);
  const spec = scenario.stations[station === -1 ? masses.indexOf(Math.max(...masses)) : station]!;
  if (step === "recharge") return samplerOfMelt(spec.recharge, spec);
  if (step === "drop") return samplerOfMelt(spec.drop, spec);
  if (step === "remove") return samplerOf(spec.remove.time);
  if (step === "parison") return samplerOfMelt(spec.recharge, spec);
  if (spec.travel && step === "travel in") return samplerOf(spec.travel.in);
  if (spec.travel && step === "travel out") return samplerOf(spec.travel.out);
  if (spec.travel && step === "cut") return samplerOf(spec.travel.cut);
  const mold = moldSteps.find((each) => each === step);
  return samplerOf(mold === undefined ? spec.extra.find((each) => each.name === step)!.time : spec[mold]);
}

/** The simulation's draws for the recursion: the n-th number of the stream of resource and step. */
export function sameDraws(scenario: Scenario): Durations {
  const streams = new Map<string, { readonly next: Stream; readonly drawn: number[] }>();
  const samplers = new Map<string, TableSampler>();
  return (resource, step, n, station) => {
    const key = `${resource}|${step}`;
    const stream = streams.get(key) ?? { next: openStream(scenario.run.seed, replication, resource, step), drawn: [] };
    streams.set(key, stream);
    while (stream.drawn.length <= n) stream.drawn.push(stream.next());
    const sampler = samplers.get(`${key}|${station}`) ?? samplerFor(scenario, step, station);
    samplers.set(`${key}|${station}`, sampler);
    return sampler.ticks(stream.drawn[n]!);
  };
}

/** Every timed step of the simulation that starts before `end`. */
export function simulatedSteps(plan: CellPlan, end = until): Interval[] {
  const steps: Interval[] = [];
  const { rows, activities } = plan.program;
  const flow = {
    needed: () => undefined,
    started: (_node: number, row: number, tick: number, ticks: number) => {
      const activity = activities[rows[row]!.activity];
      if (activity) steps.push({ resource: activity.resource, step: activity.step, start: tick, end: tick + ticks });
    },
  };
  new Simulation(plan.program, { seed: plan.scenario.run.seed, replication, flow }).runUntil(end - 1);
  return steps.toSorted(byStart);
}

export function byStart(one: Interval, other: Interval): number {
  const text = (a: string, b: string): number => (a === b ? 0 : a < b ? -1 : 1);
  return (
    one.start - other.start || text(one.resource, other.resource) || text(one.step, other.step) || one.end - other.end
  );
}

/** The first step at which simulation and recursion differ, to keep failure messages short. */
export function firstDifference(one: readonly Interval[], other: readonly Interval[]): unknown {
  const text = (step: Interval | undefined): string => JSON.stringify(step);
  const at = one.findIndex((step, i) => text(step) !== text(other[i]));
  if (at === -1) return one.length === other.length ? undefined : { lengths: [one.length, other.length] };
  return { simulated: one.slice(at, at + 3).map(text), recursed: other.slice(at, at + 3).map(text) };
}

// How much computing the changes may take: counted in shots and parts, never by a clock, so that every machine does the same.
import { settledWarmup } from "#cell/run/settledWarmup.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { meanOf, type Base } from "./base.ts";

/** `few`: within the effort that a run may take; `full`: every lever in all replications of the run. */
export type ChangesDepth = "few" | "full";

/** Measured means of one core. */
const secondsPerShot = 0.8e-6;
const secondsPerServedPart = 0.2e-6;
const secondsPerReplication = 0.5e-3;
const secondsPerHour = 3600;

/** The changes take at most this many times the computing of the run, or fill up the seconds that a short call may take. */
const mostTimes = 1.2;
const shortCall = 1.3;
/** What a short call needs for the run itself and its sensitivities, in times of the run. */
const ownTimes = 1.6;

/** Fewer pairs of replications give intervals that are too wide to rank anything. */
export const leastPairs = 4;
/** With room for fewer changes the runs become shorter, until there is room for so many. */
const fewChanges = 6;
const manyChanges = 14;

export interface Allowance {
  /** Of the changed cells and, where it is shorter than the run, of the cell itself. */
  readonly run: Scenario["run"];
  readonly isShort: boolean;
  /** Replications of all changed cells together. */
  readonly replications: number;
}

/** A week with a calendar cannot be cut. */
export function allowance(base: Base, depth: ChangesDepth): Allowance {
  const { run, calendar } = base.scenario;
  const own = { ...run, replications: base.replications };
  if (depth === "full") return { run: own, isShort: false, replications: Infinity };
  const afford = affordable(base);
  if (calendar !== undefined || afford >= leastPairs * fewChanges)
    return { run: own, isShort: false, replications: Math.floor(afford) };
  const warmup = settledWarmup(base.scenario);
  const length = warmup + Math.floor(((run.length - warmup) * afford) / (leastPairs * manyChanges));
  const replications = Math.floor((afford * run.length) / length);
  return { run: { ...own, length, replications: leastPairs }, isShort: true, replications };
}

/** Replications of the length of the run. */
function affordable(base: Base): number {
  const once = secondsOnce(base);
  const run = once * base.replications;
  return Math.max(mostTimes * run, shortCall - ownTimes * run) / once;
}

/** Approximate seconds of one replication. */
function secondsOnce(base: Base): number {
  const { scenario } = base;
  const hours = scenario.run.length / secondsPerHour;
  const shots = meanOf(base, "shots per hour") * hours;
  const served = meanOf(base, "parts per hour") * hours * (scenario.takeaway ?? []).length;
  return secondsPerReplication + shots * secondsPerShot + served * secondsPerServedPart;
}

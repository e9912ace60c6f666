// How much computing the changes may take: counted in shots and parts, never by a clock, so that every machine does the same.
import { meanOf, type Base } from "./base.ts";

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

/** Replications of all changed cells together. */
export function affordable(base: Base): number {
  const once = secondsOnce(base);
  const run = once * base.replications;
  return Math.floor(Math.max(mostTimes * run, shortCall - ownTimes * run) / once);
}

/** Approximate seconds of one replication. */
function secondsOnce(base: Base): number {
  const { scenario } = base;
  const hours = scenario.run.length / secondsPerHour;
  const shots = meanOf(base, "shots per hour") * hours;
  const served = meanOf(base, "parts per hour") * hours * (scenario.takeaway ?? []).length;
  return secondsPerReplication + shots * secondsPerShot + served * secondsPerServedPart;
}

// Phrases for the ideal cycle, each with the method behind it.
import { hasSlack } from "#analysis/ideal/idealCircuit.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { seconds } from "./digits.ts";

/** A run can be faster than a cycle whose order was found by running, so that cycle is not called ideal. */
export function idealName({ method }: Pick<IdealCycle, "method">): string {
  return method === "order found by running" ? "At mean times" : "Ideal cycle";
}

const remarks: Readonly<Record<IdealCycle["method"], string>> = {
  "fixed order": "",
  "order found by running": " (order found by running)",
  bound: " or more (bound: no repeating order of stations is found)",
};

/** "6.05 s a shot". */
export function idealWords({ method, secondsPerShot }: IdealCycle): string {
  return `${seconds(secondsPerShot)} a shot${remarks[method]}`;
}

/** "The ideal cycle is 6.05 s a shot". */
export function idealSentence(ideal: IdealCycle): string {
  const isBeatable = ideal.method === "order found by running";
  return isBeatable ? `At mean times the cell takes ${idealWords(ideal)}` : `The ideal cycle is ${idealWords(ideal)}`;
}

/** What slack is; nothing where no order is fixed. With a blank behind it. */
export function slackMeaning(ideal: IdealCycle): string {
  const meaning =
    "Slack is the time a shot by which the circuit of a resource may grow before it sets the ideal cycle. ";
  return hasSlack(ideal) ? meaning : "";
}

export function circuitWords(ideal: IdealCycle): string {
  const others = hasSlack(ideal) ? "; the others have slack" : "";
  return `A circuit is a ring of steps that wait for each other. The slowest circuit sets the pace${others}.`;
}

/** A smaller share of the cycle is the effect of cycles cut at the ends of the observed time. */
const leastShare = 0.002;
const leastSeconds = 0.005;

/** "; the run takes 0.04 s more", with a calendar on shift. */
export function runAgainstIdealWords({ measures, ideal, scenario }: Study): string {
  const found = measureOf(measures, CELL, "seconds per shot");
  if (!found) return "";
  const more = found.interval.mean - ideal.secondsPerShot;
  const run = scenario.calendar ? "the run on shift" : "the run";
  if (more >= leastSeconds) return `; ${run} takes ${seconds(more)} more`;
  if (-more <= leastShare * ideal.secondsPerShot) return `; ${run} takes the same`;
  return `; ${run} takes ${seconds(-more)} less${reasonWords({ measures, ideal, scenario })}`;
}

/** Why a run is faster than the number at mean times. */
function reasonWords({ measures, ideal, scenario }: Pick<Study, "measures" | "ideal" | "scenario">): string {
  const rejects = measureOf(measures, CELL, "reject share")?.interval.mean ?? 0;
  const reasons = [
    ...(ideal.method === "order found by running" ? ["its order of service varies"] : []),
    ...(rejects > 0 && scenario.takeaway ? ["rejects load no server after them"] : []),
  ];
  return reasons.length === 0 ? "" : `: ${reasons.join(", and ")}`;
}

// Phrases for the ideal cycle, each with the method behind it.
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { seconds } from "./digits.ts";

/** A run can be faster than a cycle whose order was found by running, so that cycle is not called ideal. */
export function idealName({ method }: Pick<IdealCycle, "method">): string {
  return method === "order found by running" ? "At mean times" : "Ideal cycle";
}

const remarks: Readonly<Record<IdealCycle["method"], string>> = {
  "fixed order": "",
  "order found by running": " (order found by running)",
  bound: " or more (bound: the order of stations does not repeat)",
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

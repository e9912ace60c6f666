// Says the ideal cycle in a few words, and by which right.
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { seconds } from "./digits.ts";

const methods: Readonly<Record<IdealCycle["method"], string>> = {
  "fixed order": "with all times at their means",
  "order found by running": "with all times at their means, in the order found by running",
  bound: "at best: no order of stations repeats, so this is a bound",
};

/** "6.05 s a shot with all times at their means". */
export function idealWords({ method, secondsPerShot }: IdealCycle): string {
  return `${seconds(secondsPerShot)} a shot ${methods[method]}`;
}

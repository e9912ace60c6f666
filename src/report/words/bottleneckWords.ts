// Says in a sentence what holds the cell back and what would be next.
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import type { Study } from "#analysis/study/study.ts";
import { seconds, withInterval } from "./digits.ts";
import { inHandWords } from "./extrusionWords.ts";
import { ownerName, stepOf } from "./tradeWords.ts";

/** "cooling, left and right: 63 ± 1 % of the binding path". */
export function bottleneckWords({ leading }: Pick<Study, "leading">): string {
  const [first] = leading;
  if (!first || first.share.mean <= 0) return "nothing was made, so nothing can be said";
  return `${bottleneckName(first)}: ${withInterval(first.share, 100)} % of the binding path`;
}

/** "cooling, left and right". */
export function bottleneckName(leading: Omit<Study["leading"][number], "share">): string {
  return stepOf(leading, leading.resources);
}

/** A matched screw is half a tick ahead of its molds. */
const leastSlack = 1e-5;

/** "the screw, 0.94 s a shot away in the ideal cycle". */
export function runnerUpWords({ runnerUp, scenario, ideal }: Pick<Study, "runnerUp" | "scenario" | "ideal">): string {
  if (!runnerUp) return "no other resource could bind";
  const { name, slackSeconds } = runnerUp;
  const inHand = name === PLASTICATOR ? inHandWords(scenario, ideal) : undefined;
  if (inHand !== undefined) return `${ownerName(name)}, ${inHand} in the ideal cycle`;
  if (slackSeconds < leastSlack) return `${ownerName(name)}, as tight in the ideal cycle`;
  return `${ownerName(name)}, ${seconds(slackSeconds)} away in the ideal cycle`;
}

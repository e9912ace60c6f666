// Says in a sentence what holds the cell back and what would be next.
import type { Study } from "#analysis/study.ts";
import { seconds, withInterval } from "./digits.ts";
import { namesOf, nounOf, ownerName } from "./tradeWords.ts";

/** "cooling, left and right: 63 ± 1 % of the time that binds the run". */
export function bottleneckWords({ leading }: Pick<Study, "leading">): string {
  const [first] = leading;
  if (!first || first.share.mean <= 0) return "nothing was made, so nothing can be said";
  return `${nounOf(first.step)}, ${namesOf(first.resources)}: ${withInterval(first.share, 100)} % of the time that binds the run`;
}

/** "the screw, 0.94 s a shot away in the ideal cycle". */
export function runnerUpWords({ runnerUp }: Pick<Study, "runnerUp">): string {
  if (!runnerUp) return "no other resource could bind";
  const { name, slackSeconds } = runnerUp;
  if (slackSeconds <= 0) return `${ownerName(name)}, as tight in the ideal cycle`;
  return `${ownerName(name)}, ${seconds(slackSeconds)} away in the ideal cycle`;
}
